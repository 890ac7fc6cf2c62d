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
  private static final int BISECTIONS = 60;

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
      for (int j = 1; j <= SAMPLES; j++) {
        double high = known[i - 1] + step * (j == SAMPLES ? SAMPLES - Plan.SNAP : j);
        addSignChange(function, low, high);
        low = high;
      }
    }
  }

  private void addSignChange(DoubleUnaryOperator function, double low, double high) {
    double sign = Math.signum(function.applyAsDouble(low));
    if (sign == Math.signum(function.applyAsDouble(high))) {
      return;
    }
    double below = low;
    double above = high;
    for (int i = 0; i < BISECTIONS; i++) {
      double middle = (below + above) / 2;
      if (Math.signum(function.applyAsDouble(middle)) == sign) {
        below = middle;
      } else {
        above = middle;
      }
    }
    add((below + above) / 2);
  }
}
