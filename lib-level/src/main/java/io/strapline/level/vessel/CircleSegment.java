package io.strapline.level.vessel;

/**
 * The part of a circle below a chord. Stateless.
 *
 * <p>With t = depth / diameter and the central angle u = 2 acos(1 - 2t) = 4 asin(sqrt t), the part
 * is (u - sin u) / (2 pi) (standard mensuration). The usual form with acos and a root loses ten
 * digits at t = 1e-6; here u comes from the arc sine, u - sin u from its series while u is small,
 * and beyond the middle the part is one less the empty segment.
 */
final class CircleSegment {

  /** Bits dropped from the angle, see {@link #part}. */
  private static final int DROPPED_BITS = 7;

  private static final double SERIES_LIMIT = 1;

  private CircleSegment() {}

  /**
   * Returns the filled part of the circle. It never falls with t, to the last bit: the angle is
   * rounded to 46 bits (7e-15 of itself), so two different angles lie further apart than all
   * rounding errors of the formula.
   *
   * @param t depth / diameter, in [0, 1]
   * @return in [0, 1], exact at 0, one half and 1
   */
  static double part(double t) {
    // 1 - t is exact from one half on; the lower half is held at one half where both meet.
    return t <= 0.5 ? lower(t) : 1 - lower(1 - t);
  }

  private static double lower(double t) {
    double angle = coarse(4 * Math.asin(Math.sqrt(t)));
    return t == 0.5 ? 0.5 : Math.min(angleLessSine(angle) / (2 * Math.PI), 0.5);
  }

  private static double coarse(double angle) {
    long half = 1L << (DROPPED_BITS - 1);
    long bits = Double.doubleToRawLongBits(angle) + half;
    return Double.longBitsToDouble(bits >> DROPPED_BITS << DROPPED_BITS);
  }

  /** Returns u - sin u; the series ends where its next term is under 1e-17 of the first. */
  static double angleLessSine(double u) {
    if (u > SERIES_LIMIT) {
      return u - Math.sin(u);
    }
    double square = u * u;
    double sum = 1;
    for (int n = 16; n >= 4; n -= 2) {
      sum = 1 - square / (n * (n + 1)) * sum;
    }
    return u * square / 6 * sum;
  }
}
