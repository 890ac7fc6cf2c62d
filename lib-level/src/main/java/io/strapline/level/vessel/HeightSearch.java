package io.strapline.level.vessel;

import java.util.function.DoubleUnaryOperator;

/**
 * Finds the lowest height that holds a volume. Stateless.
 *
 * <p>A Newton iteration kept inside its bracket (Press et al., Numerical Recipes, section 9.4)
 * comes near; then the search goes over neighbouring doubles, in growing steps and by halving, to
 * the very lowest one whose volume is not less than asked. Since the volume never falls, neither
 * does this height, and the way height to volume and back is exact. At most 30 + 2 x 64 volumes are
 * computed.
 */
final class HeightSearch {

  private static final int NEWTON_STEPS = 30;

  private final DoubleUnaryOperator volume;
  private final DoubleUnaryOperator area;
  private final double full;
  private final long grain;

  /**
   * Prepares a search over a volume that may change at every double.
   *
   * @param volume of a height in [0, full], never falling, to the last bit
   * @param area its slope
   * @param full the full height
   */
  HeightSearch(DoubleUnaryOperator volume, DoubleUnaryOperator area, double full) {
    this(volume, area, full, 1);
  }

  /**
   * Prepares a search.
   *
   * @param volume of a height in [0, full], never falling, to the last bit
   * @param area its slope
   * @param full the full height
   * @param grain about how many neighbouring doubles share a volume
   */
  HeightSearch(DoubleUnaryOperator volume, DoubleUnaryOperator area, double full, long grain) {
    this.volume = volume;
    this.area = area;
    this.full = full;
    this.grain = grain;
  }

  /**
   * Returns the lowest height whose volume is {@code wanted} or more.
   *
   * @param wanted greater than the volume at 0, at most that at the full height
   * @param start where to begin
   */
  double lowest(double wanted, double start) {
    double near = newton(wanted, Math.min(Math.max(start, 0.0), full));
    // The bits of doubles that are not negative are ordered as the doubles are.
    long bits = Double.doubleToRawLongBits(near);
    return volume.applyAsDouble(near) < wanted ? upwards(bits, wanted) : downwards(bits, wanted);
  }

  private double newton(double wanted, double start) {
    double low = 0;
    double high = full;
    double height = start;
    for (int i = 0; i < NEWTON_STEPS; i++) {
      double excess = volume.applyAsDouble(height) - wanted;
      if (excess < 0) {
        low = height;
      } else {
        high = height;
      }
      double next = height - excess / area.applyAsDouble(height);
      // Written so that an area of zero, which gives NaN or infinity, halves the bracket too.
      next = next > low && next < high ? next : (low + high) / 2;
      if (Math.abs(next - height) <= 2 * grain * Math.ulp(height)) {
        return height;
      }
      height = next;
    }
    return height;
  }

  private double upwards(long below, double wanted) {
    long low = below;
    long step = grain;
    long top = Double.doubleToRawLongBits(full);
    while (low + step < top && !holds(low + step, wanted)) {
      low += step;
      step *= 2;
    }
    return halve(low, Math.min(low + step, top), wanted);
  }

  private double downwards(long enough, double wanted) {
    long high = enough;
    long step = grain;
    while (high - step > 0 && holds(high - step, wanted)) {
      high -= step;
      step *= 2;
    }
    return halve(Math.max(high - step, 0), high, wanted);
  }

  private double halve(long tooLow, long enough, double wanted) {
    long low = tooLow;
    long high = enough;
    while (high - low > 1) {
      long middle = low + (high - low) / 2;
      if (holds(middle, wanted)) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return Double.longBitsToDouble(high);
  }

  private boolean holds(long bits, double wanted) {
    return volume.applyAsDouble(Double.longBitsToDouble(bits)) >= wanted;
  }
}
