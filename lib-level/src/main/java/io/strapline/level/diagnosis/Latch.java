package io.strapline.level.diagnosis;

import io.strapline.level.internal.Elapsed;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Diagnostic;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** One symptom behind its hold-off. Stateful, one thread at a time. */
final class Latch {

  private final Cause cause;
  private final Duration on;
  private final Duration off;
  private @Nullable Instant changingSince;
  private @Nullable Instant since;

  Latch(Cause cause, HoldOff holdOff) {
    this.cause = cause;
    on = Elapsed.delay(holdOff.onSeconds());
    off = Elapsed.delay(holdOff.offSeconds());
  }

  /** Takes whether the symptom is there now, in time order. */
  void update(boolean symptom, Instant time) {
    if (symptom == isActive()) {
      changingSince = null;
      return;
    }
    if (changingSince == null || time.isBefore(changingSince)) {
      changingSince = time;
    }
    if (Elapsed.reached(changingSince, time, symptom ? on : off)) {
      changingSince = null;
      since = symptom ? time : null;
    }
  }

  boolean isActive() {
    return since != null;
  }

  /** Returns whether the symptom is active or waits for its hold-off. */
  boolean isSuspicious() {
    return isActive() || changingSince != null;
  }

  Optional<Diagnostic> diagnostic() {
    return Optional.ofNullable(since).map(time -> new Diagnostic(cause.status(), cause, time));
  }
}
