package io.strapline.level.signal;

import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.time.Instant;
import java.util.OptionalDouble;

/**
 * Runs gates, no-return policy, median, average and lag over the distances of one measuring point,
 * in this order.
 */
public final class SignalChain {

  private final SignalSettings settings;

  private SignalChain(SignalSettings settings) {
    this.settings = settings;
  }

  /** Returns a chain that has seen nothing yet. */
  public static SignalChain of(SignalSettings settings) {
    return new SignalChain(settings);
  }

  /**
   * Takes the next distance. A reading that is BAD stands for a sample without a measurement (no
   * return, loop fault).
   *
   * @param distance along the beam, in metres
   * @param strength of the return in the device's unit, if known
   */
  public Conditioned accept(Reading distance, OptionalDouble strength) {
    throw new UnsupportedOperationException(settings.toString());
  }

  /** Returns the output at a time without a sample: holds run out, nothing else changes. */
  public Conditioned tick(Instant time) {
    throw new UnsupportedOperationException(settings.toString());
  }

  /** Returns the delay of the smooth branch on a slow ramp, in seconds. */
  public double delaySeconds(double sampleIntervalSeconds) {
    throw new UnsupportedOperationException(settings.toString());
  }

  /** Returns the delay of the early branch on a slow ramp, in seconds. */
  public double earlyDelaySeconds(double sampleIntervalSeconds) {
    throw new UnsupportedOperationException(settings.toString());
  }

  /** Forgets everything. */
  public void reset() {
    throw new UnsupportedOperationException(settings.toString());
  }

  /**
   * Output of the chain. Immutable.
   *
   * @param early distance after gates, no-return policy and median, for alarms
   * @param smooth distance after all stages, for display and control
   * @param gate what the gates said of this sample; GOOD when it passed
   */
  public record Conditioned(Reading early, Reading smooth, Quality gate) {}
}
