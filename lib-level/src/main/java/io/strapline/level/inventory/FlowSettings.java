package io.strapline.level.inventory;

import io.strapline.level.internal.Check;

/**
 * How flow is told from levels. Immutable.
 *
 * <p>The window decides how small a flow can be seen and how late it is seen. A change of one
 * resolution step over the window is the limit of what the signal can tell: {@code resolution /
 * window}. Between two neighbouring steps the fitted slope reaches at most 1.5 times that, however
 * the samples lie (see {@link FlowEstimator}), so that no dead zone below 1.5 limits is accepted.
 *
 * @param windowSeconds time over which flow is taken, in [{@value #SHORTEST}, {@value #LONGEST}] s
 * @param resolutionMetres smallest step of the level signal, in (0, 10] m: the device's own step,
 *     or that of the card or register on the way, whichever is coarser
 * @param deadZoneMetresPerSecond speed of the surface at or below which flow is zero; at least 1.5
 *     times {@code resolution / window}; choose it above three times {@link #noise}
 */
public record FlowSettings(
    double windowSeconds, double resolutionMetres, double deadZoneMetresPerSecond) {

  /** Shortest window, in seconds. */
  public static final double SHORTEST = 0.1;

  /** Longest window, in seconds: 31 days. */
  public static final double LONGEST = 2_678_400;

  private static final double STEP_GAIN = 1.5;

  /** Refuses windows and dead zones that would show flow where there is none. */
  public FlowSettings {
    Check.between(
        "FlowSettings.window",
        windowSeconds,
        "s",
        SHORTEST,
        LONGEST,
        "give the time over which flow is taken");
    Check.positive(
        "FlowSettings.resolution", resolutionMetres, "m", "give the step of the level signal");
    Check.between(
        "FlowSettings.resolution",
        resolutionMetres,
        "m",
        0,
        10,
        "give the step in metres (1 mm is 0.001 m)");
    double least = STEP_GAIN * resolutionMetres / windowSeconds;
    if (!(Double.isFinite(deadZoneMetresPerSecond) && deadZoneMetresPerSecond >= least)) {
      throw Check.error(
          "FlowSettings.deadZone",
          deadZoneMetresPerSecond,
          "m/s",
          "must be at least 1.5 x resolution / window (" + least + " m/s)",
          "lengthen the window or raise the dead zone");
    }
  }

  /** Returns settings with the smallest dead zone that this window and resolution allow. */
  public static FlowSettings of(double windowSeconds, double resolutionMetres) {
    Check.between(
        "FlowSettings.window",
        windowSeconds,
        "s",
        SHORTEST,
        LONGEST,
        "give the time over which flow is taken");
    return new FlowSettings(
        windowSeconds, resolutionMetres, STEP_GAIN * resolutionMetres / windowSeconds);
  }

  /** Returns the speed of the surface that one resolution step over the window makes, in m/s. */
  public double limitMetresPerSecond() {
    return resolutionMetres / windowSeconds;
  }

  /**
   * Returns the standard deviation of the surface's speed that independent noise of the level
   * makes: {@code sigma / window x sqrt(12 / n)} for n evenly spaced samples in the window (derived
   * here; the limit for many samples, within 4 % from n = 20 on).
   *
   * @param sigmaMetres standard deviation of one level sample, finite, zero or more
   * @param samples samples per window, 2 or more
   */
  public double noise(double sigmaMetres, int samples) {
    Check.notNegative(
        "FlowSettings.sigma", sigmaMetres, "m", "give the standard deviation of the level");
    Check.between(
        "FlowSettings.samples", samples, "", 2, Integer.MAX_VALUE, "give the samples per window");
    return sigmaMetres / windowSeconds * Math.sqrt(12.0 / samples);
  }
}
