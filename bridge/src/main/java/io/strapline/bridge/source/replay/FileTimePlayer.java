package io.strapline.bridge.source.replay;

import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.alarm.AlarmSettings;
import io.strapline.level.loop.LoopLimits;
import io.strapline.level.point.PointSettings;
import java.time.Duration;
import java.time.Instant;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Plays as fast as possible, in the time of the file. Between two entries time passes at every
 * moment at which silence can change the point: when an age limit, a hold or an alarm delay of the
 * point runs out. So a gap in the file shows as it would have shown on the day: last usable value,
 * then BAD. Not thread-safe.
 */
final class FileTimePlayer implements Player {

  /** A limit is passed when the age is greater, not when it is equal. */
  private static final Duration PAST = Duration.ofMillis(1);

  private final BiConsumer<Instant, Double> deliver;
  private final Consumer<Instant> elapse;
  private final NavigableSet<Duration> deadlines;
  private @Nullable Instant latest;

  FileTimePlayer(
      PointSettings point, BiConsumer<Instant, Double> deliver, Consumer<Instant> elapse) {
    this.deliver = deliver;
    this.elapse = elapse;
    deadlines = deadlines(point);
  }

  /** Returns the ages after which silence may change something. */
  private static NavigableSet<Duration> deadlines(PointSettings point) {
    NavigableSet<Duration> ages = new TreeSet<>();
    AlarmSettings alarms = point.alarms();
    LoopLimits loop = point.loopLimits();
    double bad = point.ages().badSeconds();
    add(ages, point.ages().lastUsableSeconds());
    add(ages, bad);
    add(ages, bad + alarms.badSignalOnDelaySeconds());
    add(ages, alarms.badSignalOnDelaySeconds());
    add(ages, point.signal().noReturn().holdSeconds());
    add(ages, point.signal().noReturn().holdSeconds() + alarms.badSignalOnDelaySeconds());
    add(ages, loop.confirmationSeconds());
    add(ages, loop.recovery().seconds());
    for (AlarmLimit limit : alarms.limits()) {
      add(ages, limit.onDelaySeconds());
      add(ages, limit.offDelaySeconds());
    }
    return ages;
  }

  private static void add(NavigableSet<Duration> ages, double seconds) {
    if (seconds > 0 && seconds < Duration.ofDays(36_500).toSeconds()) {
      ages.add(Duration.ofNanos((long) (seconds * 1e9)).plus(PAST));
    }
  }

  @Override
  public void play(SeriesReader.Entry entry) throws InterruptedException {
    if (Thread.interrupted()) {
      throw new InterruptedException("replay closed");
    }
    if (latest != null) {
      passUntil(latest, entry.time());
    }
    deliver.accept(entry.time(), entry.value());
    latest = latest == null || entry.time().isAfter(latest) ? entry.time() : latest;
  }

  private void passUntil(Instant from, Instant until) {
    Duration gap = Duration.between(from, until);
    deadlines.headSet(gap, false).forEach(age -> elapse.accept(from.plus(age)));
  }

  @Override
  public void end() {
    if (latest != null) {
      Instant last = latest;
      deadlines.forEach(age -> elapse.accept(last.plus(age)));
    }
  }
}
