package io.strapline.level.plan;

import io.strapline.level.internal.Check;
import io.strapline.level.signal.SignalChain;
import io.strapline.level.signal.SignalSettings;
import io.strapline.level.signal.SpeedLimits;

/**
 * How long the surface may stand beyond a set point before the alarm comes, while the transmitter
 * measures. Immutable. All times in seconds, finite, zero or more.
 *
 * <p>Not in it: the time without a measurement. While the last value is held, and while a failure
 * current is confirmed, no limit is judged; the bad-signal alarm follows afterwards.
 *
 * @param samplingSeconds from the passing of the set point to the next sample, at most one interval
 * @param filterSeconds delay of the early branch, which feeds the alarms
 * @param onDelaySeconds until the sample at which the on-delay has run out
 * @param otherSeconds what the program cannot know: damping in the transmitter, filter of the input
 *     card, network, scan of the control system
 */
public record DetectionDelay(
    double samplingSeconds, double filterSeconds, double onDelaySeconds, double otherSeconds) {

  /** No delay: an ideal alarm, or one whose delay is already in the response time. */
  public static final DetectionDelay NONE = new DetectionDelay(0, 0, 0, 0);

  private static final double NANOS_PER_SECOND = 1e9;

  /** Checks all times. */
  public DetectionDelay {
    samplingSeconds = checked("sampling", samplingSeconds);
    filterSeconds = checked("filter", filterSeconds);
    onDelaySeconds = checked("onDelay", onDelaySeconds);
    otherSeconds = checked("other", otherSeconds);
  }

  private static double checked(String name, double seconds) {
    return Check.notNegative("DetectionDelay." + name, seconds, "s", "enter 0 for no delay");
  }

  /**
   * Returns the longest delay of an alarm on a surface that goes on in one direction: one sample
   * interval, the longest delay of the branch that feeds the alarms, and the on-delay rounded up to
   * whole samples (derived here).
   *
   * @param signal conditioning of the measuring point
   * @param sampleIntervalSeconds longest time between samples, greater than zero
   * @param onDelaySeconds of the alarm, zero or more
   * @param otherSeconds delays outside the library, zero or more
   */
  public static DetectionDelay of(
      SignalSettings signal,
      double sampleIntervalSeconds,
      double onDelaySeconds,
      double otherSeconds) {
    Check.positive(
        "DetectionDelay.sampleInterval",
        sampleIntervalSeconds,
        "s",
        "enter the longest time between samples");
    checked("onDelay", onDelaySeconds);
    return new DetectionDelay(
        sampleIntervalSeconds,
        SignalChain.of(signal, SpeedLimits.NONE).longestAlarmDelaySeconds(sampleIntervalSeconds),
        wholeSamples(onDelaySeconds, sampleIntervalSeconds),
        otherSeconds);
  }

  private static double wholeSamples(double seconds, double intervalSeconds) {
    // In nanoseconds, as the alarms count: 0.3 s are three samples of 0.1 s and not four.
    double interval = Math.max(1, Math.rint(intervalSeconds * NANOS_PER_SECOND));
    double samples = Math.ceil(Math.rint(seconds * NANOS_PER_SECOND) / interval);
    return samples * intervalSeconds;
  }

  /** Returns the sum of all parts in seconds. */
  public double totalSeconds() {
    return samplingSeconds + filterSeconds + onDelaySeconds + otherSeconds;
  }
}
