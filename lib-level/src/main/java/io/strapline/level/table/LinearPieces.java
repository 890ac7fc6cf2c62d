package io.strapline.level.table;

/** Straight lines between the rows of a table. */
final class LinearPieces extends Pieces {

  private static final int STRIDE = 3;
  private static final int VOLUME = 1;
  private static final int SLOPE = 2;

  private final SegmentIndex index;

  /**
   * For each row height, volume and slope above it, side by side so that they share cache lines.
   */
  private final double[] rows;

  LinearPieces(double[] heights, double[] volumes) {
    index = SegmentIndex.of(heights);
    rows = new double[STRIDE * heights.length];
    for (int i = 0; i < heights.length; i++) {
      rows[STRIDE * i] = heights[i];
      rows[STRIDE * i + VOLUME] = volumes[i];
      if (i + 1 < heights.length) {
        rows[STRIDE * i + SLOPE] = (volumes[i + 1] - volumes[i]) / (heights[i + 1] - heights[i]);
      }
    }
  }

  @Override
  double volume(double height) {
    int at = STRIDE * index.startFor(height);
    while (height >= rows[at + STRIDE]) {
      at += STRIDE;
    }
    double volume = rows[at + VOLUME] + (height - rows[at]) * rows[at + SLOPE];
    // Rounding must not lift it above the next row.
    return Math.min(volume, rows[at + STRIDE + VOLUME]);
  }

  @Override
  double height(double volume, int row) {
    int upper = STRIDE * row;
    int lower = upper - STRIDE;
    double slope = (rows[upper] - rows[lower]) / (rows[upper + VOLUME] - rows[lower + VOLUME]);
    // One-sided, so that it never falls; rounding must not lift it above the next row.
    return Math.min(rows[lower] + (volume - rows[lower + VOLUME]) * slope, rows[upper]);
  }
}
