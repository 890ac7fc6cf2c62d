package io.strapline.level.table;

/** Cubic pieces between the rows of a table, given by the slopes at the rows. */
final class CubicPieces extends Pieces {

  private static final int STRIDE = 5;
  private static final int VOLUME = 1;
  private static final int FIRST_ORDER = 2;
  private static final int SECOND_ORDER = 3;
  private static final int THIRD_ORDER = 4;

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

  private double volume(double height, int at) {
    double x = height - rows[at];
    double rise =
        x * (rows[at + FIRST_ORDER] + x * (rows[at + SECOND_ORDER] + x * rows[at + THIRD_ORDER]));
    // Rounding must not take it out of the step between the two rows.
    double volume = rows[at + VOLUME] + Math.max(rise, 0);
    return Math.min(volume, rows[at + STRIDE + VOLUME]);
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
