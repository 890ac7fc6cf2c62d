package io.strapline.level.loop;

import io.strapline.level.internal.Check;
import io.strapline.level.loop.LoopSignal.State;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Judges loop currents in time order: band, confirmation of a failure and recovery from it.
 * Stateful, one thread at a time.
 *
 * <ul>
 *   <li>{@code OK} to {@code SUSPECT} at the first current in a failure band. The last current that
 *       was OK is held, UNCERTAIN with {@link Cause#LOOP_FAULT_CONFIRMING}.
 *   <li>{@code SUSPECT} to {@code OK} at the first current outside the failure bands.
 *   <li>{@code SUSPECT} to {@code FAULT} at the first failing sample that lies at least the
 *       confirmation time after the first one. The held current is now BAD, with the cause of the
 *       present failure band.
 *   <li>{@code FAULT} to {@code OK} when every sample for the recovery time was inside the failure
 *       limits by the hysteresis. One that was not starts the recovery time anew. Until then the
 *       value stays BAD with the cause of the last failing sample.
 * </ul>
 *
 * <p>A failure that changes sides goes on being the same failure: the time runs on and the cause
 * follows the present band. A current that is not a finite number is a failure. Before the first OK
 * current nothing can be held: a failure is BAD at once, and the current is given as 4 mA.
 *
 * <p>Only samples confirm or end a fault. Time without samples does neither: a silent source is
 * judged by its age. A sample whose time lies before the beginning of the running confirmation or
 * recovery starts that time anew; other samples out of order count at their own time. So time that
 * goes back never shortens a confirmation or a recovery.
 */
public final class LoopMonitor {

  private final LoopLimits limits;
  private final Duration confirmation;
  private final Duration recovery;

  private State state = State.OK;
  private Cause failure = Cause.NONE;

  /** Beginning of the running confirmation or recovery. */
  private @Nullable Instant since;

  private @Nullable Double held;

  private LoopMonitor(LoopLimits limits) {
    this.limits = limits;
    confirmation = duration(limits.confirmationSeconds());
    recovery = duration(limits.recovery().seconds());
  }

  /** Returns a monitor that has seen nothing yet. */
  public static LoopMonitor of(LoopLimits limits) {
    return new LoopMonitor(Check.present("LoopMonitor.limits", limits, "pass LoopLimits.NE43"));
  }

  /**
   * Judges the next current.
   *
   * @param currentMilliamps mA as measured, any double; NaN and infinities are judged as failures
   * @param time when it was measured
   */
  public LoopSignal accept(double currentMilliamps, Instant time) {
    Check.present("LoopMonitor.time", time, "pass the source time of the sample");
    LoopBand band = limits.classify(currentMilliamps);
    if (band.isFailure()) {
      fail(band, time);
    } else if (state == State.FAULT) {
      recover(currentMilliamps, time);
    } else {
      state = State.OK;
    }
    return state == State.OK ? measured(band, currentMilliamps) : holding(band);
  }

  /** Forgets everything; the next sample counts as the first one. */
  public void reset() {
    state = State.OK;
    failure = Cause.NONE;
    since = null;
    held = null;
  }

  private void fail(LoopBand band, Instant time) {
    failure = band.quality().cause();
    if (state == State.FAULT) {
      since = null;
      return;
    }
    if (state == State.OK) {
      since = null;
      state = State.SUSPECT;
    }
    if (hasLasted(confirmation, time)) {
      state = State.FAULT;
      since = null;
    }
  }

  private void recover(double currentMilliamps, Instant time) {
    if (!limits.recovers(currentMilliamps)) {
      since = null;
    } else if (hasLasted(recovery, time)) {
      state = State.OK;
      since = null;
    }
  }

  private boolean hasLasted(Duration needed, Instant time) {
    if (since == null || time.isBefore(since)) {
      since = time;
    }
    return Duration.between(since, time).compareTo(needed) >= 0;
  }

  private LoopSignal measured(LoopBand band, double currentMilliamps) {
    held = currentMilliamps;
    return new LoopSignal(band, state, currentMilliamps, band.quality());
  }

  private LoopSignal holding(LoopBand band) {
    boolean confirming = state == State.SUSPECT && held != null;
    Quality quality =
        confirming ? Quality.uncertain(Cause.LOOP_FAULT_CONFIRMING) : Quality.bad(failure);
    double current = held == null ? LoopRange.LIVE_ZERO_MILLIAMPS : held;
    return new LoopSignal(band, state, current, quality);
  }

  private static Duration duration(double seconds) {
    // Math.round saturates, at 292 years.
    return Duration.ofNanos(Math.round(seconds * 1e9));
  }
}
