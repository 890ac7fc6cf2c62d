package io.strapline.level.table;

/** Cubic pieces between the rows of a table, given by the slopes at the rows. */
final class CubicPieces extends Pieces {

  private static final int STRIDE = 5;
  private static final int VOLUME = 1;
  private static final int FIRST_ORDER = 2;
  private static final int SECOND_ORDER = 3;
  private static final int THIRD_ORDER = 4;

  /** 2^27 + 1: halves the 53 binary digits of a double. */
  private static final double SPLITTER = 134_217_729;

  private final SegmentIndex index;

  /** For each row height, volume and the coefficients of the piece above it. */
  private final double[] rows;

  CubicPieces(double[] heights, double[] volumes, double[] slopes) {
    index = SegmentIndex.of(heights);
    rows = new double[STRIDE * heights.length];
    for (int i = 0; i < heights.length; i++) {
      rows[STRIDE * i] = heights[i];
      rows[STRIDE * i + VOLUME] = volumes[i];
      if (i + 1 < heights.length) {
        double step = heights[i + 1] - heights[i];
        setPiece(STRIDE * i, step, (volumes[i + 1] - volumes[i]) / step, slopes[i], slopes[i + 1]);
      }
    }
  }

  /** The cubic with the given secant and the slopes at its ends (Hermite form, collected). */
  private void setPiece(int at, double step, double secant, double slope, double nextSlope) {
    rows[at + FIRST_ORDER] = slope;
    rows[at + SECOND_ORDER] = (3 * secant - 2 * slope - nextSlope) / step;
    rows[at + THIRD_ORDER] = (slope + nextSlope - 2 * secant) / (step * step);
  }

  @Override
  double volume(double height) {
    int at = STRIDE * index.startFor(height);
    while (height >= rows[at + STRIDE]) {
      at += STRIDE;
    }
    return volume(height, at);
  }

  /**
   * Compensated Horner scheme (S. Graillat, P. Langlois, N. Louvet, "Compensated Horner Scheme",
   * 2005): as exact as with twice the digits. The plain scheme falls by a last digit here and there
   * where the curve is nearly flat.
   */
  private double volume(double height, int at) {
    double x = height - rows[at];
    double value = rows[at + THIRD_ORDER];
    double error = 0;
    for (int order = SECOND_ORDER; order >= VOLUME; order--) {
      double coefficient = rows[at + order];
      double product = value * x;
      double sum = product + coefficient;
      error = error * x + (productError(value, x, product) + sumError(product, coefficient, sum));
      value = sum;
    }
    // Rounding must not take it out of the step between the two rows.
    return Math.min(Math.max(value + error, rows[at + VOLUME]), rows[at + STRIDE + VOLUME]);
  }

  /** What rounding took from {@code product = a * b} (Dekker 1971). */
  private static double productError(double a, double b, double product) {
    double bigA = SPLITTER * a;
    double highA = bigA - (bigA - a);
    double lowA = a - highA;
    double bigB = SPLITTER * b;
    double highB = bigB - (bigB - b);
    double lowB = b - highB;
    return lowA * lowB - (((product - highA * highB) - lowA * highB) - highA * lowB);
  }

  /** What rounding took from {@code sum = a + b} (Knuth). */
  private static double sumError(double a, double b, double sum) {
    double partB = sum - a;
    return (a - (sum - partB)) + (b - partB);
  }

  /** Bisection down to neighbouring doubles: at most 64 halvings of what a double can tell. */
  @Override
  double height(double volume, int row) {
    int at = STRIDE * (row - 1);
    double low = rows[at];
    double high = rows[at + STRIDE];
    double middle = low + (high - low) / 2;
    while (middle > low && middle < high) {
      if (volume(middle, at) >= volume) {
        high = middle;
      } else {
        low = middle;
      }
      middle = low + (high - low) / 2;
    }
    return high;
  }
}
