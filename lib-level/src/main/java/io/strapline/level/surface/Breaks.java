package io.strapline.level.surface;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * Places on a line at which a function has a kink or a jump, so that an integral is taken between
 * them. Rules that sample an interval see nothing of a kink close to its end, hence the breaks are
 * found first. Not for more than one thread.
 */
final class Breaks {

  private static final int SAMPLES = 6;
  private static final int MOST_STEPS = 60;

  private final double from;
  private final double to;
  private double[] places;
  private int count;

  Breaks(double from, double to) {
    this.from = from;
    this.to = to;
    places = new double[16];
    places[0] = from;
    places[1] = to;
    count = 2;
  }

  /** Adds a place if it lies between the ends. */
  void add(double place) {
    if (place > from && place < to) {
      places = count < places.length ? places : Arrays.copyOf(places, 2 * count);
      places[count++] = place;
    }
  }

  /** Returns all places, rising. */
  double[] rising() {
    double[] all = Arrays.copyOf(places, count);
    Arrays.sort(all);
    return all;
  }

  /**
   * Adds the places where the function changes its sign, found by sampling between the places so
   * far. The function is never evaluated at a place, where it may jump.
   */
  void addSignChanges(DoubleUnaryOperator function) {
    double[] known = rising();
    for (int i = 1; i < known.length; i++) {
      double step = (known[i] - known[i - 1]) / SAMPLES;
      double low = known[i - 1] + step * Plan.SNAP;
      double atLow = function.applyAsDouble(low);
      for (int j = 1; j <= SAMPLES; j++) {
        double high = known[i - 1] + step * (j == SAMPLES ? SAMPLES - Plan.SNAP : j);
        double atHigh = function.applyAsDouble(high);
        if (Math.signum(atLow) != Math.signum(atHigh)) {
          add(root(function, low, atLow, high, atHigh));
        }
        low = high;
        atLow = atHigh;
      }
    }
  }

  /**
   * Returns the root between two places of different sign: false position with the Illinois rule
   * (Dowell and Jarratt, BIT 11, 1971), which halves the value at an end that stays.
   */
  private static double root(
      DoubleUnaryOperator function, double from, double atFrom, double to, double atTo) {
    double low = from;
    double atLow = atFrom;
    double high = to;
    double atHigh = atTo;
    double before = Double.NaN;
    for (int i = 0; i < MOST_STEPS && atLow != atHigh; i++) {
      double falsePosition = high - atHigh * (high - low) / (atHigh - atLow);
      double middle = Math.min(Math.max(falsePosition, low), high);
      double at = function.applyAsDouble(middle);
      if (at == 0 || Math.abs(middle - before) <= 2 * Math.ulp(middle)) {
        return middle;
      }
      before = middle;
      if (Math.signum(at) == Math.signum(atHigh)) {
        high = middle;
        atHigh = at;
        atLow /= 2;
      } else {
        low = middle;
        atLow = at;
        atHigh /= 2;
      }
    }
    return (low + high) / 2;
  }
}
