package io.strapline.level.alarm;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Whether an alarm is shelved, and until when. Stateful, one thread at a time. */
final class Shelf {

  private @Nullable Instant from;
  private @Nullable Instant until;
  private boolean oneShot;

  void put(Instant time, Duration length, boolean untilReturn) {
    from = time;
    until = time.plus(length);
    oneShot = untilReturn;
  }

  /** Takes the alarm off the shelf; returns false when it was not there. */
  boolean take() {
    boolean was = until != null;
    from = null;
    until = null;
    oneShot = false;
    return was;
  }

  /**
   * Takes the alarm off the shelf when its time is over; returns whether that happened now. A clock
   * that was set back to before the shelving ends it too: nobody can tell how long it has lasted.
   */
  boolean expire(Instant time) {
    boolean over = until != null && from != null && (!time.isBefore(until) || time.isBefore(from));
    return over && take();
  }

  boolean isOneShot() {
    return oneShot;
  }

  Optional<Instant> until() {
    return Optional.ofNullable(until);
  }
}
