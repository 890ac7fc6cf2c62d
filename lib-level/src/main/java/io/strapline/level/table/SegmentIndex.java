package io.strapline.level.table;

/**
 * Finds the pair of rows around a height without a search: the range is cut into equal cells, and
 * each cell knows the pair at which to begin. As many cells are made as the shortest step needs, so
 * that most hold one row at most, but no more than eight for each pair. Immutable.
 */
final class SegmentIndex {

  private static final int MOST_CELLS_PER_SEGMENT = 8;

  private final double first;
  private final double cellsPerMetre;
  private final int[] start;

  private SegmentIndex(double first, double cellsPerMetre, int[] start) {
    this.first = first;
    this.cellsPerMetre = cellsPerMetre;
    this.start = start;
  }

  /** Builds the index of strictly rising heights, at least two. */
  static SegmentIndex of(double[] heights) {
    int segments = heights.length - 1;
    double range = heights[segments] - heights[0];
    double shortest = range;
    for (int i = 0; i < segments; i++) {
      shortest = Math.min(shortest, heights[i + 1] - heights[i]);
    }
    int most = MOST_CELLS_PER_SEGMENT * segments;
    int cells = (int) Math.max(segments, Math.min(Math.rint(range / shortest), most));
    SegmentIndex index = new SegmentIndex(heights[0], cells / range, new int[cells + 1]);
    index.fill(heights);
    return index;
  }

  /**
   * A cell begins at the last row that lies in an earlier cell. Cells rise with the height,
   * rounding included, so that row lies below every height in the cell.
   */
  private void fill(double[] heights) {
    int segment = 0;
    for (int cell = 0; cell < start.length; cell++) {
      while (segment + 2 < heights.length && cell(heights[segment + 1]) < cell) {
        segment++;
      }
      start[cell] = segment;
    }
  }

  private int cell(double height) {
    return Math.min((int) ((height - first) * cellsPerMetre), start.length - 1);
  }

  /** Returns a segment at or below the one that holds a height in [first row, last row]. */
  int startFor(double height) {
    return start[cell(height)];
  }
}
