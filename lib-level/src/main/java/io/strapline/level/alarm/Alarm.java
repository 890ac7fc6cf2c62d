package io.strapline.level.alarm;

import io.strapline.level.internal.Elapsed;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * State machine of one alarm on the ISA-18.2 model. Stateful, one thread at a time.
 *
 * <p>Two independent memories, active and acknowledged; the state follows from them and, for a
 * latching alarm, from whether the condition still stands (open PLC engineering course, module on
 * alarms and diagnostics, section 3.1). Suppression stands beside the state: a suppressed alarm is
 * evaluated all the same. Coming off the shelf, an alarm whose condition stands is unacknowledged
 * anew, so that it is announced; the other suppressions leave the state as evaluated (ISA-18.2
 * behaviour from memory).
 */
final class Alarm {

  private final AlarmKind kind;
  private final boolean latching;
  private final Duration onDelay;
  private final Duration offDelay;

  private boolean condition;
  private boolean active;
  private boolean acknowledged = true;
  private @Nullable Instant changingSince;
  private @Nullable Instant since;
  private long occurrences;

  private final Shelf shelf = new Shelf();
  private boolean byDesign;
  private boolean outOfService;

  private Alarm(AlarmKind kind, boolean latching, Duration onDelay, Duration offDelay) {
    this.kind = kind;
    this.latching = latching;
    this.onDelay = onDelay;
    this.offDelay = offDelay;
  }

  static Alarm of(AlarmLimit limit) {
    return new Alarm(
        limit.kind(),
        limit.handling().latching(),
        Elapsed.delay(limit.onDelaySeconds()),
        Elapsed.delay(limit.offDelaySeconds()));
  }

  static Alarm badSignal(AlarmSettings settings) {
    return new Alarm(
        AlarmKind.BAD_SIGNAL,
        settings.badSignalHandling().latching(),
        Elapsed.delay(settings.badSignalOnDelaySeconds()),
        Duration.ZERO);
  }

  AlarmKind kind() {
    return kind;
  }

  /**
   * Judges one scan.
   *
   * @param sets whether the condition that sets the alarm is there
   * @param clears whether the condition that clears it is there; between the two the deadband lies
   */
  void scan(boolean sets, boolean clears, Instant time) {
    start(time);
    boolean changes = condition ? clears : sets;
    if (!changes) {
      changingSince = null;
      return;
    }
    if (changingSince == null || time.isBefore(changingSince)) {
      changingSince = time;
    }
    if (Elapsed.reached(changingSince, time, condition ? offDelay : onDelay)) {
      changingSince = null;
      turn(time);
    }
  }

  /** Sets the alarm without waiting for its on-delay. */
  void setAtOnce(Instant time) {
    start(time);
    changingSince = null;
    if (!condition) {
      turn(time);
    }
  }

  /** Keeps the state and starts the delays anew. */
  void holdBack(Instant time) {
    start(time);
    changingSince = null;
  }

  private void start(Instant time) {
    if (since == null) {
      since = time;
    }
    if (shelf.expire(time)) {
      announceAnew(time);
    }
  }

  private void announceAnew(Instant time) {
    if (condition && active) {
      AlarmState before = state();
      acknowledged = false;
      mark(before, time);
    }
  }

  private void turn(Instant time) {
    AlarmState before = state();
    condition = !condition;
    if (condition && !active) {
      active = true;
      acknowledged = false;
      occurrences++;
    } else if (!condition && !latching) {
      active = false;
    }
    if (!condition && shelf.isOneShot()) {
      shelf.take();
    }
    mark(before, time);
  }

  private void mark(AlarmState before, Instant time) {
    if (state() != before) {
      since = time;
    }
  }

  boolean acknowledge(Instant time) {
    if (acknowledged) {
      return false;
    }
    AlarmState before = state();
    acknowledged = true;
    mark(before, time);
    return true;
  }

  boolean reset(Instant time) {
    if (state() != AlarmState.LATCHED_ACKNOWLEDGED) {
      return false;
    }
    active = false;
    since = time;
    return true;
  }

  void shelve(Instant time, Duration length, boolean oneShot) {
    shelf.put(time, length, oneShot);
  }

  boolean unshelve(Instant time) {
    boolean was = shelf.take();
    if (was) {
      announceAnew(time);
    }
    return was;
  }

  boolean suppressByDesign(boolean on) {
    boolean changes = byDesign != on;
    byDesign = on;
    return changes;
  }

  boolean outOfService(boolean on) {
    boolean changes = outOfService != on;
    outOfService = on;
    return changes;
  }

  AlarmState state() {
    if (!active) {
      return acknowledged ? AlarmState.NORMAL : AlarmState.RETURNED_UNACKNOWLEDGED;
    }
    if (condition) {
      return acknowledged ? AlarmState.ACKNOWLEDGED : AlarmState.UNACKNOWLEDGED;
    }
    return acknowledged ? AlarmState.LATCHED_ACKNOWLEDGED : AlarmState.LATCHED_UNACKNOWLEDGED;
  }

  AlarmSnapshot snapshot(boolean heldBack) {
    return new AlarmSnapshot(
        kind,
        state(),
        heldBack,
        since == null ? Instant.EPOCH : since,
        occurrences,
        suppressedBy());
  }

  private AlarmSuppression suppressedBy() {
    boolean none = shelf.until().isEmpty() && !byDesign && !outOfService;
    return none
        ? AlarmSuppression.NONE
        : new AlarmSuppression(shelf.until(), shelf.isOneShot(), byDesign, outOfService);
  }
}
