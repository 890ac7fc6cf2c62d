package io.strapline.level.vessel;

import io.strapline.level.internal.Check;

/**
 * A cylindrical tank on its side that is tilted: one end lies lower than the other, as most lying
 * tanks do to drain. Heads: flat, hemispherical, ellipsoidal. Immutable and safe for any thread.
 *
 * <p><b>What height means here.</b> As for every vessel the height of {@link #volumeCubicMetres} is
 * the plumb height of the level surface above the lowest inside point of the tank, which lies in
 * the head at the low end. A beam or dipstick somewhere along the tank sees another figure, the
 * depth at its own place: {@link #heightAtGaugeDepth} and {@link #gaugeDepth} convert. Gauge depth
 * is measured square to the axis from the bottom line of the shell at the gauge; the plumb depth
 * there is gauge depth x cos(tilt). At gauge depth 0 the tank is not empty unless the gauge stands
 * at the low end, and it may be full before the gauge depth is the diameter.
 *
 * <p>Formulas: {@link TiltedShell} and {@link TiltedEnd}. The upper half is the whole less the same
 * tank turned over, filled to what is empty.
 */
public final class TiltedTank implements Vessel {

  private static final double GREATEST_TILT = 30;

  /** A tilt below this is no tilt. */
  private static final double LEVEL = 1e-9;

  private final Shell shell;
  private final Head low;
  private final Head high;
  private final double tiltDegrees;
  private final double gauge;
  private final double slope;
  private final double cosine;
  private final TiltedShell straight;
  private final TiltedEnd lowEnd;
  private final TiltedEnd highEnd;
  private final double full;
  private final double capacity;
  private final double half;

  private TiltedTank(Shell shell, Head low, Head high, double tiltDegrees, double gauge) {
    this.shell = shell;
    this.low = low;
    this.high = high;
    this.tiltDegrees = tiltDegrees;
    this.gauge = gauge;
    double radius = shell.diameterMetres() / 2;
    slope = Math.tan(Math.toRadians(tiltDegrees));
    cosine = Math.cos(Math.toRadians(tiltDegrees));
    straight = new TiltedShell(radius, shell.lengthMetres(), slope);
    lowEnd = new TiltedEnd(radius, depth(low, 2 * radius), slope);
    highEnd = new TiltedEnd(radius, depth(high, 2 * radius), slope);
    double drop = shell.lengthMetres() * slope + 2 * radius;
    full = (lowEnd.below() + drop + highEnd.below()) * cosine;
    capacity =
        Math.PI * radius * radius * shell.lengthMetres() + lowEnd.volume() + highEnd.volume();
    half = lower(full / 2, lowEnd, highEnd);
  }

  /**
   * Returns the tank.
   *
   * @param shell tangent line to tangent line
   * @param low head at the low end: flat, hemispherical or ellipsoidal
   * @param high head at the high end: flat, hemispherical or ellipsoidal
   * @param tiltDegrees angle between axis and horizontal, in [0, 30]; below 1e-9 it counts as 0
   * @param gaugeMetres where the gauge stands, along the bottom line from the tangent line of the
   *     low end, in [0, shell length]
   * @throws IllegalArgumentException if the gauge stands off the shell, the tilt is out of range or
   *     a head is of another kind or cannot have the diameter of the shell
   */
  public static TiltedTank of(
      Shell shell, Head low, Head high, double tiltDegrees, double gaugeMetres) {
    Check.between(
        "TiltedTank.tilt",
        tiltDegrees,
        "deg",
        0,
        GREATEST_TILT,
        "give the angle between axis and horizontal, rise / length = tan(tilt)");
    Check.between(
        "TiltedTank.gauge",
        gaugeMetres,
        "m",
        0,
        shell.lengthMetres(),
        "give where the gauge stands on the shell, from the tangent line of the low end");
    double tilt = tiltDegrees < LEVEL ? 0 : tiltDegrees;
    return new TiltedTank(shell, low, high, tilt, gaugeMetres + 0.0);
  }

  private static double depth(Head head, double diameter) {
    if (HeadForm.of(head, diameter) instanceof SpheroidForm form) {
      return form.depth();
    }
    throw Check.error(
        "TiltedTank.head",
        head.describe(),
        "",
        "must be flat, hemispherical or ellipsoidal",
        "take a capacity table for a tilted tank with other heads");
  }

  @Override
  public double maxHeightMetres() {
    return full;
  }

  @Override
  public double capacityCubicMetres() {
    return capacity;
  }

  /** Returns the angle between axis and horizontal in degrees, in [0, 30]. */
  public double tiltDegrees() {
    return tiltDegrees;
  }

  /**
   * Returns the height above the lowest inside point for a depth at the gauge.
   *
   * @param gaugeDepthMetres square to the axis, above the bottom line at the gauge; any finite
   *     value
   * @return metres, plumb; outside [0, full height] where no surface in the tank gives this depth
   * @throws IllegalArgumentException if the depth is not finite
   */
  public double heightAtGaugeDepth(double gaugeDepthMetres) {
    String fix = "do not pass on a bad reading";
    Check.finite("TiltedTank.gaugeDepth", gaugeDepthMetres, "m", fix);
    return (gaugeDepthMetres + gauge * slope + lowEnd.below()) * cosine;
  }

  /**
   * Returns the depth at the gauge for a height above the lowest inside point, the inverse of
   * {@link #heightAtGaugeDepth}. It is negative while the surface has not reached the gauge and
   * greater than the diameter where the shell is full there.
   *
   * @param heightMetres plumb; any finite value
   * @throws IllegalArgumentException if the height is not finite
   */
  public double gaugeDepth(double heightMetres) {
    Check.finite("TiltedTank.height", heightMetres, "m", "do not pass on a bad reading");
    return heightMetres / cosine - lowEnd.below() - gauge * slope;
  }

  @Override
  public double volumeCubicMetres(double heightMetres) {
    double height = Dimensions.clamp("TiltedTank.height", heightMetres, "m", full);
    if (height == 0 || height == full) {
      return height == 0 ? 0 : capacity;
    }
    if (height <= full / 2) {
      return Math.min(lower(onGrid(height), lowEnd, highEnd), half);
    }
    double empty = full - height;
    return Math.max(capacity - lower(onGrid(empty), highEnd, lowEnd), half);
  }

  private double onGrid(double height) {
    return Math.min(Grid.coarse(height), full / 2);
  }

  private double lower(double height, TiltedEnd bottom, TiltedEnd top) {
    double depth = height / cosine - bottom.below();
    double far = depth - shell.lengthMetres() * slope;
    return bottom.filledLow(height / cosine * bottom.pace())
        + straight.filled(depth)
        + top.filledHigh(capAtTop(far, top));
  }

  /** Height of the surface above the lowest point of the ball of which the high head is a part. */
  private double capAtTop(double far, TiltedEnd top) {
    return (far + top.below()) * top.pace();
  }

  @Override
  public double surfaceSquareMetres(double heightMetres) {
    double height = Dimensions.clamp("TiltedTank.height", heightMetres, "m", full);
    double depth = height / cosine - lowEnd.below();
    double far = depth - shell.lengthMetres() * slope;
    double heads =
        lowEnd.areaLow(height / cosine * lowEnd.pace()) * lowEnd.pace()
            + highEnd.areaHigh(capAtTop(far, highEnd)) * highEnd.pace();
    return (straight.surface(depth) + heads) / cosine;
  }

  @Override
  public double heightMetres(double volumeCubicMetres) {
    double volume = Dimensions.clamp("TiltedTank.volume", volumeCubicMetres, "m3", capacity);
    if (volume == 0 || volume == capacity) {
      return volume == 0 ? 0 : full;
    }
    HeightSearch search =
        new HeightSearch(this::volumeCubicMetres, this::surfaceSquareMetres, full, Grid.STEP);
    return search.lowest(volume, full * LyingCylinder.about(volume / capacity));
  }

  @Override
  public String describe() {
    return LyingTank.of(shell, low, high).describe()
        + ", tilted by "
        + Dimensions.ratio(tiltDegrees)
        + " deg";
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof TiltedTank that
        && shell.equals(that.shell)
        && low.equals(that.low)
        && high.equals(that.high)
        && tiltDegrees == that.tiltDegrees
        && gauge == that.gauge;
  }

  @Override
  public int hashCode() {
    int heads = 31 * low.hashCode() + high.hashCode();
    return 31 * (31 * shell.hashCode() + heads) + Double.hashCode(tiltDegrees + 100 * gauge);
  }

  @Override
  public String toString() {
    return describe();
  }
}
