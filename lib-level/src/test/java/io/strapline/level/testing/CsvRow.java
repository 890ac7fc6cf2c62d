package io.strapline.level.testing;

import java.util.Map;

/**
 * One row of check values, read by column name.
 *
 * @param cells cell by column
 */
public record CsvRow(Map<String, String> cells) {

  /** Copies the cells. */
  public CsvRow {
    cells = Map.copyOf(cells);
  }

  /** Returns the cell, empty if it holds nothing. */
  public String text(String column) {
    String cell = cells.get(column);
    if (cell == null) {
      throw new IllegalArgumentException("no column " + column + " in " + cells.keySet());
    }
    return cell;
  }

  /** Returns the cell as a number. */
  public double number(String column) {
    return Double.parseDouble(text(column));
  }

  /** Returns the greatest allowed difference from {@code expected} by the row's own tolerances. */
  public double tolerance(double expected) {
    return Math.max(number("rel_tol") * Math.abs(expected), number("abs_tol_m3"));
  }
}
