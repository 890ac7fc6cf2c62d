package io.strapline.level.surface;

import java.util.function.DoubleUnaryOperator;

/**
 * Integral by halving intervals until the 15-point Kronrod rule agrees with the 7-point Gauss rule
 * in each (nodes and weights: Piessens and others, QUADPACK, 1983, routine QK15). The ends of an
 * interval are never evaluated, so that kinks and jumps may stand there. Not for more than one
 * thread: it counts its work.
 *
 * <p>The error stated is the sum of the differences between the two rules over the pieces kept,
 * which is far more than the true error where the function is smooth. Halving stops at a depth and
 * at a count of evaluations; what is left there is in the stated error.
 */
final class Quadrature {

  private static final double[] NODES = {
    0.9914553711208126, 0.9491079123427585,
    0.8648644233597691, 0.7415311855993945,
    0.5860872354676911, 0.4058451513773972,
    0.20778495500789848
  };

  private static final double[] KRONROD = {
    0.022935322010529224, 0.06309209262997856,
    0.10479001032225019, 0.14065325971552592,
    0.1690047266392679, 0.19035057806478542,
    0.20443294007529889
  };

  private static final double KRONROD_MIDDLE = 0.20948214108472782;

  private static final double[] GAUSS = {
    0.1294849661688697, 0.27970539148927664, 0.3818300505051189
  };

  private static final double GAUSS_MIDDLE = 0.4179591836734694;

  private static final int DEEPEST = 30;

  private final DoubleUnaryOperator function;
  private final double allowed;
  private int left;
  private double error;

  /**
   * Makes an integrator.
   *
   * @param allowed error allowed in each interval, absolute
   * @param most evaluations after which intervals are no longer halved
   */
  Quadrature(DoubleUnaryOperator function, double allowed, int most) {
    this.function = function;
    this.allowed = allowed;
    left = most;
  }

  /** Returns the integral from the first to the last of the rising breaks. */
  double over(double... breaks) {
    double sum = 0;
    for (int i = 1; i < breaks.length; i++) {
      if (breaks[i] > breaks[i - 1]) {
        sum += piece(breaks[i - 1], breaks[i], 0);
      }
    }
    return sum;
  }

  /** Returns the error of all integrals so far, zero or greater. */
  double error() {
    return error;
  }

  private double piece(double from, double to, int depth) {
    double middle = (from + to) / 2;
    double half = (to - from) / 2;
    double centre = function.applyAsDouble(middle);
    double kronrod = KRONROD_MIDDLE * centre;
    double gauss = GAUSS_MIDDLE * centre;
    for (int i = 0; i < NODES.length; i++) {
      double pair =
          function.applyAsDouble(middle - half * NODES[i])
              + function.applyAsDouble(middle + half * NODES[i]);
      kronrod += KRONROD[i] * pair;
      gauss += i % 2 == 1 ? GAUSS[i / 2] * pair : 0;
    }
    left -= 2 * NODES.length + 1;
    double difference = Math.abs(kronrod - gauss) * half;
    if (difference <= allowed || depth == DEEPEST || left <= 0) {
      error += difference;
      return kronrod * half;
    }
    return piece(from, middle, depth + 1) + piece(middle, to, depth + 1);
  }
}
