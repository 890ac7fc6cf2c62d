package io.strapline.level.alarm;

import io.strapline.level.internal.Check;
import io.strapline.level.internal.Elapsed;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * The alarms of one measuring point: its limits and the bad-signal alarm, which stands in for them
 * while the signal is bad. Stateful, one thread at a time.
 *
 * <p>What a reading does:
 *
 * <ul>
 *   <li><b>A measurement</b>, GOOD or UNCERTAIN: the limits are judged, on state and not on change,
 *       and the bad-signal alarm returns. A level that is beyond a limit from the start raises the
 *       alarm at once or after its on-delay.
 *   <li><b>BAD or substituted</b> ({@link Cause#SUBSTITUTED}): the bad-signal alarm is judged. The
 *       limits are held back: they keep their state, and their delays start anew afterwards. So one
 *       fault raises one alarm, and an invented value neither raises nor clears a limit. Where the
 *       vessel may be over-full ({@link Cause#OVERFULL_SUSPECTED}), it stands at once, without its
 *       on-delay.
 *   <li><b>The last value again</b> ({@link Cause#isHeld()}): the limits are held back as well, and
 *       the bad-signal alarm keeps its state: nothing is known yet.
 *   <li><b>Waiting for the first sample</b>: nothing is judged.
 * </ul>
 *
 * <p>Acknowledge and reset act at once, that is, before the condition of the next scan.
 *
 * <p>A suppressed alarm is not announced but judged all the same. Shelving ends by itself, with the
 * first evaluation at or after its end; a held back alarm comes off the shelf like any other.
 */
public final class AlarmGroup {

  private final List<AlarmLimit> limits;
  private final List<Alarm> alarms;
  private final Alarm badSignal;
  private final double greatestShelveSeconds;
  private boolean heldBack = true;

  private AlarmGroup(AlarmSettings settings) {
    limits = settings.limits();
    alarms = limits.stream().map(Alarm::of).toList();
    badSignal = Alarm.badSignal(settings);
    greatestShelveSeconds = settings.greatestShelveSeconds();
  }

  /** Returns alarms that have seen nothing yet. */
  public static AlarmGroup of(AlarmSettings settings) {
    return new AlarmGroup(settings);
  }

  /**
   * Judges the next level at its own source time, in time order, and returns all alarms in the
   * order of {@link AlarmKind}.
   */
  public List<AlarmSnapshot> judge(Reading level) {
    return judge(level, level.time());
  }

  /**
   * Judges a level at a time that may lie after its source time, so that delays run on while no
   * sample comes; returns all alarms in the order of {@link AlarmKind}.
   *
   * @param time of evaluation, in time order
   */
  public List<AlarmSnapshot> judge(Reading level, Instant time) {
    OptionalDouble measured = Measurement.of(level);
    heldBack = measured.isEmpty();
    judgeSignal(level.quality(), time);
    if (measured.isPresent()) {
      judgeLimits(measured.getAsDouble(), time);
    } else {
      alarms.forEach(alarm -> alarm.holdBack(time));
    }
    return snapshot();
  }

  private void judgeSignal(Quality quality, Instant time) {
    if (quality.cause().isHeld() || quality.cause() == Cause.WAITING_FOR_FIRST_SAMPLE) {
      badSignal.holdBack(time);
    } else if (quality.cause() == Cause.OVERFULL_SUSPECTED) {
      badSignal.setAtOnce(time);
    } else {
      boolean bad = Measurement.isBadSignal(quality);
      badSignal.scan(bad, !bad, time);
    }
  }

  private void judgeLimits(double levelMetres, Instant time) {
    for (int i = 0; i < alarms.size(); i++) {
      AlarmLimit limit = limits.get(i);
      alarms.get(i).scan(limit.isSetBy(levelMetres), limit.isClearedBy(levelMetres), time);
    }
  }

  /** Acknowledges one alarm; returns false when there is nothing to acknowledge. */
  public boolean acknowledge(AlarmKind kind, Instant time) {
    Alarm alarm = find(kind);
    return alarm != null && alarm.acknowledge(time);
  }

  /**
   * Resets one latched alarm; returns false when there is nothing to reset: it is not latched, not
   * acknowledged, its condition still stands, or it is held back, so that nobody can tell whether
   * the condition has gone.
   */
  public boolean reset(AlarmKind kind, Instant time) {
    Alarm alarm = find(kind);
    return alarm != null && !isHeldBack(alarm) && alarm.reset(time);
  }

  /**
   * Shelves one alarm for a time, also if it is shelved already; returns false when there is no
   * such alarm.
   *
   * @param seconds in (0, greatest time of the settings]
   * @throws IllegalArgumentException if {@code seconds} is out of its range
   */
  public boolean shelve(AlarmKind kind, double seconds, Instant time) {
    if (!(seconds > 0 && seconds <= greatestShelveSeconds)) {
      throw Check.error(
          "AlarmGroup.shelve",
          seconds,
          "s",
          "must be greater than zero and at most " + greatestShelveSeconds + " s",
          "shelve for less, or allow more in the settings");
    }
    Alarm alarm = find(kind);
    if (alarm != null) {
      alarm.shelve(time, Elapsed.delay(seconds), false);
    }
    return alarm != null;
  }

  /**
   * Shelves one alarm until its condition goes, at most for the greatest time of the settings;
   * returns false when there is no such alarm or nothing may be shelved.
   */
  public boolean shelveOnce(AlarmKind kind, Instant time) {
    Alarm alarm = find(kind);
    boolean can = alarm != null && greatestShelveSeconds > 0;
    if (alarm != null && can) {
      alarm.shelve(time, Elapsed.delay(greatestShelveSeconds), true);
    }
    return can;
  }

  /** Takes one alarm off the shelf; returns false when it is not there. */
  public boolean unshelve(AlarmKind kind, Instant time) {
    Alarm alarm = find(kind);
    return alarm != null && alarm.unshelve(time);
  }

  /** Suppresses or releases one alarm by the plant's logic; returns false when nothing changes. */
  public boolean suppressByDesign(AlarmKind kind, boolean on) {
    Alarm alarm = find(kind);
    return alarm != null && alarm.suppressByDesign(on);
  }

  /** Takes one alarm out of service or puts it back; returns false when nothing changes. */
  public boolean outOfService(AlarmKind kind, boolean on) {
    Alarm alarm = find(kind);
    return alarm != null && alarm.outOfService(on);
  }

  private @Nullable Alarm find(AlarmKind kind) {
    if (kind == AlarmKind.BAD_SIGNAL) {
      return badSignal;
    }
    for (Alarm alarm : alarms) {
      if (alarm.kind() == kind) {
        return alarm;
      }
    }
    return null;
  }

  private boolean isHeldBack(Alarm alarm) {
    return heldBack && alarm != badSignal;
  }

  /** Returns all alarms as they stand, in the order of {@link AlarmKind}. */
  public List<AlarmSnapshot> snapshot() {
    List<AlarmSnapshot> all = new ArrayList<>(alarms.size() + 1);
    for (Alarm alarm : alarms) {
      all.add(alarm.snapshot(isHeldBack(alarm)));
    }
    all.add(badSignal.snapshot(isHeldBack(badSignal)));
    return List.copyOf(all);
  }
}
