package io.strapline.level.loop;

import java.time.Instant;

/** Judges loop currents in time order: band, confirmation and recovery. */
public final class LoopMonitor {

  private final LoopLimits limits;

  private LoopMonitor(LoopLimits limits) {
    this.limits = limits;
  }

  /** Returns a monitor that has seen nothing yet. */
  public static LoopMonitor of(LoopLimits limits) {
    return new LoopMonitor(limits);
  }

  /** Judges the next current, in mA (any double), measured at {@code time}. */
  public LoopSignal accept(double currentMilliamps, Instant time) {
    throw new UnsupportedOperationException(limits.toString());
  }

  /** Forgets everything. */
  public void reset() {
    throw new UnsupportedOperationException(limits.toString());
  }
}
