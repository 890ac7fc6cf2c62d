package io.strapline.level.alarm;

import io.strapline.level.internal.Elapsed;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * Counts the announced alarms of one operator and holds them against {@link AlarmTargets}.
 * Stateful, one thread at a time. Suppressed alarms are announced to nobody and are not counted; a
 * stale alarm is stale though it be suppressed.
 *
 * <p>Times come in order; an earlier one counts as the latest seen.
 */
public final class AlarmStatistics {

  private static final Duration TEN_MINUTES = Duration.ofMinutes(10);

  private final AlarmTargets targets;
  private final Instant start;
  private final SlidingCount tenMinutes = new SlidingCount(TEN_MINUTES);
  private final SlidingCount hour = new SlidingCount(Duration.ofHours(1));
  private final SlidingCount day = new SlidingCount(Duration.ofDays(1));
  private final Map<String, Watched> alarms = new HashMap<>();
  private Instant now;
  private long total;
  private @Nullable Instant floodSince;
  private Duration flooded = Duration.ZERO;

  private AlarmStatistics(AlarmTargets targets, Instant start) {
    this.targets = targets;
    this.start = start;
    now = start;
  }

  /** Returns counters that have seen nothing yet. */
  public static AlarmStatistics of(AlarmTargets targets, Instant start) {
    return new AlarmStatistics(targets, start);
  }

  /**
   * Takes an alarm as it stands after a scan, and counts it when it is announced anew: a new
   * occurrence, or one that comes off the shelf or out of another suppression.
   *
   * @param name of the alarm, unique for this operator, such as {@code LT-101 HIGH}
   */
  public void observe(String name, AlarmSnapshot alarm, Instant time) {
    advance(time);
    Watched watched = watched(name);
    boolean anew = !watched.announced || alarm.occurrences() > watched.occurrences;
    boolean rises = alarm.isAnnounced() && anew;
    watched.announced = alarm.isAnnounced();
    watched.occurrences = alarm.occurrences();
    if (rises) {
      count(watched);
    }
    if (!alarm.state().isActive()) {
      watched.activeSince = null;
    } else if (watched.activeSince == null) {
      watched.activeSince = now;
    }
  }

  /** Counts one announced activation of an alarm. */
  public void activated(String name, Instant time) {
    advance(time);
    Watched watched = watched(name);
    count(watched);
    watched.activeSince = watched.activeSince == null ? now : watched.activeSince;
  }

  /** Tells that an alarm is no longer active. */
  public void returned(String name, Instant time) {
    advance(time);
    watched(name).activeSince = null;
  }

  private Watched watched(String name) {
    return alarms.computeIfAbsent(
        name, key -> new Watched(Elapsed.delay(targets.nuisance().chatterSeconds())));
  }

  private void count(Watched watched) {
    total++;
    tenMinutes.add(now);
    hour.add(now);
    day.add(now);
    watched.recent.advance(now);
    watched.recent.add(now);
    if (floodSince == null && tenMinutes.count() > targets.flood().above()) {
      floodSince = now;
    }
  }

  /** Returns how often an alarm was announced in the time that chattering is judged by. */
  public int recentActivations(String name, Instant time) {
    advance(time);
    Watched watched = alarms.get(name);
    if (watched == null) {
      return 0;
    }
    watched.recent.advance(now);
    return watched.recent.count();
  }

  private void advance(Instant time) {
    now = time.isAfter(now) ? time : now;
    // One by one, so that a flood ends at the very moment at which the count falls.
    while (!tenMinutes.nextExpiry().isAfter(now)) {
      Instant expiry = tenMinutes.nextExpiry();
      tenMinutes.advance(expiry);
      endFlood(expiry);
    }
    hour.advance(now);
    day.advance(now);
  }

  private void endFlood(Instant time) {
    if (floodSince != null && tenMinutes.count() < targets.flood().below()) {
      flooded = flooded.plus(Duration.between(floodSince, time));
      floodSince = null;
    }
  }

  /** Returns how the alarms perform at a time. */
  public AlarmPerformance at(Instant time) {
    advance(time);
    return new AlarmPerformance(
        load(tenMinutes, TEN_MINUTES, targets.perTenMinutes()),
        load(hour, Duration.ofHours(1), targets.perHour()),
        load(day, Duration.ofDays(1), targets.perDay()),
        floods(),
        nuisances());
  }

  private AlarmPerformance.Load load(
      SlidingCount latest, Duration stretch, AlarmTargets.Rate target) {
    double stretches = Elapsed.seconds(start, now) / stretch.toSeconds();
    if (stretches < 1) {
      AlarmTargets.Rating rating = target.rate(latest.count());
      return new AlarmPerformance.Load(latest.count(), OptionalDouble.empty(), rating);
    }
    double average = total / stretches;
    return new AlarmPerformance.Load(
        latest.count(), OptionalDouble.of(average), target.rate(average));
  }

  private AlarmPerformance.Floods floods() {
    Duration all = floodSince == null ? flooded : flooded.plus(Duration.between(floodSince, now));
    double elapsed = Elapsed.seconds(start, now);
    double percent = elapsed > 0 ? 100 * (all.toNanos() / 1e9) / elapsed : 0;
    return new AlarmPerformance.Floods(
        floodSince != null, percent, percent < targets.flood().percentOfTime());
  }

  private AlarmPerformance.Nuisances nuisances() {
    AlarmTargets.Nuisance limits = targets.nuisance();
    Set<String> chattering = names(one -> chatters(one, limits.chatterActivations()));
    Set<String> stale = names(one -> isStale(one, limits.staleSeconds()));
    boolean onTarget = chattering.isEmpty() && stale.size() < limits.staleFewerThan();
    return new AlarmPerformance.Nuisances(chattering, stale, onTarget);
  }

  private boolean chatters(Watched watched, int activations) {
    watched.recent.advance(now);
    return watched.recent.count() >= activations;
  }

  private boolean isStale(Watched watched, double seconds) {
    return watched.activeSince != null && Elapsed.seconds(watched.activeSince, now) > seconds;
  }

  private Set<String> names(Predicate<Watched> wanted) {
    Set<String> names = new HashSet<>();
    alarms.forEach(
        (name, watched) -> {
          if (wanted.test(watched)) {
            names.add(name);
          }
        });
    return names;
  }

  /** What is known of one alarm. */
  private static final class Watched {

    private final SlidingCount recent;
    private boolean announced;
    private long occurrences;
    private @Nullable Instant activeSince;

    private Watched(Duration chatterWindow) {
      recent = new SlidingCount(chatterWindow);
    }
  }
}
