package io.strapline.level.signal;

import io.strapline.level.internal.Check;

/**
 * Conditioning of one measuring point. Immutable.
 *
 * @param gates what counts as a measurement at all
 * @param noReturn what happens while there is none
 * @param medianSamples odd number of samples of the median, 1 to 99; 1 means no median
 * @param averageSamples samples of the moving average, 1 to 1000; 1 means no average
 * @param lagSeconds time constant of the first-order lag, finite, zero or more; zero means no lag
 * @param surface the stages that know how a surface can move
 */
public record SignalSettings(
    GateSettings gates,
    NoReturnPolicy noReturn,
    int medianSamples,
    int averageSamples,
    double lagSeconds,
    SurfaceChecks surface) {

  /** No gates but the finite-number one, no smoothing, no-return held for 10 s. */
  public static final SignalSettings PLAIN =
      new SignalSettings(GateSettings.OPEN, NoReturnPolicy.hold(10), 1, 1, 0);

  /**
   * Checks all settings.
   *
   * @throws IllegalArgumentException naming the setting that breaks its rule
   */
  public SignalSettings {
    Check.present("SignalSettings.gates", gates, "give GateSettings.OPEN for no gate");
    Check.present("SignalSettings.noReturn", noReturn, "give a no-return policy");
    medianSamples = Median.checkedSamples("SignalSettings.medianSamples", medianSamples);
    averageSamples = MovingAverage.checkedSamples("SignalSettings.averageSamples", averageSamples);
    lagSeconds = FirstOrderLag.checkedTimeConstant("SignalSettings.lag", lagSeconds);
    Check.present("SignalSettings.surface", surface, "give SurfaceChecks.NONE for no such stage");
  }

  /** Conditioning without the stages that know how a surface can move. */
  public SignalSettings(
      GateSettings gates,
      NoReturnPolicy noReturn,
      int medianSamples,
      int averageSamples,
      double lagSeconds) {
    this(gates, noReturn, medianSamples, averageSamples, lagSeconds, SurfaceChecks.NONE);
  }

  /** Returns these settings with other surface checks. */
  public SignalSettings with(SurfaceChecks newSurface) {
    return new SignalSettings(
        gates, noReturn, medianSamples, averageSamples, lagSeconds, newSurface);
  }
}
