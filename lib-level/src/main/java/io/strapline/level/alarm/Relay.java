package io.strapline.level.alarm;

import io.strapline.level.internal.Elapsed;
import io.strapline.level.reading.Reading;
import java.time.Duration;
import java.time.Instant;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * State machine of one relay, by time. Stateful, one thread at a time.
 *
 * <p>It takes readings as the {@linkplain AlarmGroup alarms} do: a measurement is judged; a BAD or
 * substituted one leads to the fallback after its delay; one that only repeats the last value keeps
 * the position and starts the delays anew. Before the first measurement the relay stays at its
 * start position, which is the normal one with {@link RelaySettings.Fallback#NORMAL} and the alarm
 * one otherwise.
 *
 * <p>After a start or a fault the relay leaves the alarm position only by the drop-out point: a
 * level between the points proves nothing.
 *
 * <p>The coil and its contact are outside the program. A program that has stopped drives no coil:
 * wire it so that this means alarm.
 */
public final class Relay {

  private final RelaySettings settings;
  private final Duration onDelay;
  private final Duration offDelay;
  private final Duration badSignalDelay;

  private boolean alarm;
  private RelaySnapshot.Reason reason = RelaySnapshot.Reason.START;
  private Instant since;
  private @Nullable Instant changingSince;
  private @Nullable Instant badSince;
  private long changes;

  private Relay(RelaySettings settings, Instant start) {
    this.settings = settings;
    onDelay = Elapsed.delay(settings.delays().onSeconds());
    offDelay = Elapsed.delay(settings.delays().offSeconds());
    badSignalDelay = Elapsed.delay(settings.delays().badSignalSeconds());
    alarm = settings.fallback() != RelaySettings.Fallback.NORMAL;
    since = start;
  }

  /** Returns a relay that waits for its first measurement since {@code start}. */
  public static Relay of(RelaySettings settings, Instant start) {
    return new Relay(settings, start);
  }

  /**
   * Judges a level, in time order.
   *
   * @param time of evaluation, which may lie after the level's source time
   */
  public RelaySnapshot judge(Reading level, Instant time) {
    OptionalDouble measured = Measurement.of(level);
    if (measured.isPresent()) {
      badSince = null;
      judgeLevel(measured.getAsDouble(), time);
    } else {
      changingSince = null;
      judgeSignal(level, time);
    }
    return snapshot();
  }

  private void judgeLevel(double levelMetres, Instant time) {
    boolean changes = alarm ? settings.dropsOutAt(levelMetres) : settings.picksUpAt(levelMetres);
    if (!changes) {
      changingSince = null;
      reason = reasonInPlace(levelMetres);
      return;
    }
    if (changingSince == null || time.isBefore(changingSince)) {
      changingSince = time;
    }
    if (Elapsed.reached(changingSince, time, alarm ? offDelay : onDelay)) {
      changingSince = null;
      move(!alarm, RelaySnapshot.Reason.LEVEL, time);
    }
  }

  // Between the points the level explains the position only if it led there.
  private RelaySnapshot.Reason reasonInPlace(double levelMetres) {
    boolean proven = alarm ? settings.picksUpAt(levelMetres) : settings.dropsOutAt(levelMetres);
    return proven ? RelaySnapshot.Reason.LEVEL : reason;
  }

  private void judgeSignal(Reading level, Instant time) {
    if (!Measurement.isBadSignal(level.quality())) {
      badSince = null;
      return;
    }
    if (badSince == null || time.isBefore(badSince)) {
      badSince = time;
    }
    if (Elapsed.reached(badSince, time, badSignalDelay)) {
      fallBack(time);
    }
  }

  private void fallBack(Instant time) {
    if (reason == RelaySnapshot.Reason.START) {
      return;
    }
    switch (settings.fallback()) {
      case ALARM -> move(true, RelaySnapshot.Reason.BAD_SIGNAL, time);
      case HOLD -> reason = RelaySnapshot.Reason.BAD_SIGNAL;
      case NORMAL -> move(false, RelaySnapshot.Reason.BAD_SIGNAL, time);
    }
  }

  private void move(boolean toAlarm, RelaySnapshot.Reason because, Instant time) {
    reason = because;
    if (alarm != toAlarm) {
      alarm = toAlarm;
      since = time;
      changes++;
    }
  }

  /** Returns the relay as it stands. */
  public RelaySnapshot snapshot() {
    boolean energised = alarm == (settings.coil() == RelaySettings.Coil.ENERGISED_IN_ALARM);
    return new RelaySnapshot(alarm, energised, reason, since, changes);
  }
}
