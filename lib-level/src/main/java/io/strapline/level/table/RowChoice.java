package io.strapline.level.table;

import java.util.stream.IntStream;

/** Chooses the fewest rows of a table that keep an error; see {@link TableThinning}. */
final class RowChoice {

  private final double[] heights;
  private final double[] volumes;
  private final double error;

  /** The row that follows each row on the shortest way to the last, and the rows from there on. */
  private final int[] next;

  private final int[] count;

  private RowChoice(CapacityTable table, double error) {
    heights = table.rows().stream().mapToDouble(CapacityRow::heightMetres).toArray();
    volumes = table.rows().stream().mapToDouble(CapacityRow::volumeCubicMetres).toArray();
    this.error = error;
    next = new int[heights.length];
    count = new int[heights.length];
  }

  /** Returns the numbers of all rows. */
  static int[] all(CapacityTable table) {
    return IntStream.range(0, table.size()).toArray();
  }

  /**
   * Returns the numbers of the fewest rows.
   *
   * @param error greatest difference at a row left out; below zero all rows are kept
   */
  static int[] fewest(CapacityTable table, double error) {
    return error < 0 ? all(table) : new RowChoice(table, error).choose();
  }

  private int[] choose() {
    int last = heights.length - 1;
    count[last] = 1;
    for (int row = last - 1; row >= 0; row--) {
      lookAhead(row);
    }
    int[] rows = new int[count[0]];
    for (int i = 0, row = 0; i < rows.length; i++, row = next[row]) {
      rows[i] = row;
    }
    return rows;
  }

  /** Of equally short ways the one with the longest line is taken. */
  private void lookAhead(int row) {
    double least = Double.NEGATIVE_INFINITY;
    double most = Double.POSITIVE_INFINITY;
    count[row] = Integer.MAX_VALUE;
    for (int to = row + 1; to < heights.length && least <= most; to++) {
      double perMetre = 1 / (heights[to] - heights[row]);
      double slope = (volumes[to] - volumes[row]) * perMetre;
      if (slope >= least && slope <= most && count[to] + 1 <= count[row]) {
        count[row] = count[to] + 1;
        next[row] = to;
      }
      least = Math.max(least, slope - error * perMetre);
      most = Math.min(most, slope + error * perMetre);
    }
  }
}
