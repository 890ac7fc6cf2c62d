package io.strapline.level.table;

import io.strapline.level.internal.Check;
import java.util.Arrays;
import java.util.List;

/**
 * Thins a capacity table for a controller that holds few rows, with the greatest error in volume
 * known. Stateless.
 *
 * <p>The kept rows are rows of the table, the first and the last among them; between them the
 * controller draws straight lines. No polynomial is fitted. Volumes of kept rows never fall, so a
 * thinned table never falls either.
 *
 * <p>Both directions give the best choice of rows, not merely a good one: among all choices that
 * keep the error, {@link #toError} has the fewest rows. The method (derived here): a line from one
 * row to a later one is allowed when it passes every row between within the error, which holds
 * exactly when its slope lies in the range of slopes that pass them all; that range only shrinks
 * from row to row, so a row's look-ahead ends once it is empty. The fewest allowed lines from the
 * first row to the last are found from the top down, as the shortest path. Since table and thinned
 * table are straight between rows, their difference is greatest at a row, so the error at the rows
 * is the error everywhere.
 *
 * <p>The work of one try grows with rows times look-ahead, and a search for the least error makes
 * some twenty tries: thousands of rows take seconds, 50,000 rows thinned to a handful minutes. It
 * belongs to engineering, not to a running point.
 */
public final class TableThinning {

  /** The least error is found to one part in this many. */
  private static final double SEARCH = 1e-6;

  private static final int MOST_STEPS = 80;

  /** Errors below this many last digits of the capacity are rounding, and nothing is thinned. */
  private static final double ROUNDING = 32;

  private TableThinning() {}

  /**
   * Returns the table with the fewest rows whose volume differs nowhere by more than an error.
   *
   * @param table with straight lines between its rows
   * @param greatestErrorCubicMetres zero or more; zero keeps every row
   * @throws IllegalArgumentException if the table is not interpolated by straight lines or the
   *     error is negative or not finite
   */
  public static ThinnedTable toError(CapacityTable table, double greatestErrorCubicMetres) {
    requireStraight(table);
    Check.notNegative(
        "TableThinning.greatestError",
        greatestErrorCubicMetres,
        "m3",
        "give the volume by which the thinned table may differ");
    return ThinnedTable.of(
        table, RowChoice.fewest(table, working(table, greatestErrorCubicMetres)));
  }

  /**
   * Returns the table of at most so many rows whose greatest error is the least possible, to one
   * part in a million; {@link ThinnedTable#greatestErrorCubicMetres} is the error reached.
   *
   * @param table with straight lines between its rows
   * @param mostRows 2 or more; as many as the table has, or more, return it unchanged
   * @throws IllegalArgumentException if the table is not interpolated by straight lines or fewer
   *     than two rows are allowed
   */
  public static ThinnedTable toRows(CapacityTable table, int mostRows) {
    requireStraight(table);
    Check.between(
        "TableThinning.mostRows", mostRows, "rows", 2, Integer.MAX_VALUE, "a table needs two rows");
    if (mostRows >= table.size()) {
      return ThinnedTable.of(table, RowChoice.all(table));
    }
    return search(table, mostRows);
  }

  /** Halves the error between one that needs too many rows and one that was reached. */
  private static ThinnedTable search(CapacityTable table, int mostRows) {
    ThinnedTable best = ThinnedTable.of(table, new int[] {0, table.size() - 1});
    double tooSmall = 0;
    for (int i = 0; i < MOST_STEPS && mostRows > 2 && best.greatestErrorCubicMetres() > 0; i++) {
      double reached = best.greatestErrorCubicMetres();
      if (tooSmall >= reached * (1 - SEARCH)) {
        break;
      }
      double error = Math.max(tooSmall + (reached - tooSmall) / 2, reached * SEARCH);
      int[] rows = RowChoice.fewest(table, working(table, error));
      if (rows.length > mostRows) {
        tooSmall = error;
      } else {
        best = ThinnedTable.of(table, rows);
      }
    }
    return best;
  }

  /** What is left of an error once rounding has its part; negative when nothing is. */
  private static double working(CapacityTable table, double error) {
    return error - ROUNDING * Math.ulp(table.capacityCubicMetres());
  }

  private static void requireStraight(CapacityTable table) {
    Check.present("TableThinning.table", table, "pass the table to thin");
    if (table.interpolation() != Interpolation.LINEAR) {
      throw Check.error(
          "TableThinning.table",
          table.interpolation().toString(),
          "",
          "must be interpolated by straight lines, as the controller will do",
          "read the table with LINEAR; add rows first where lines are too coarse");
    }
  }

  /** Returns the rows of the numbers, counted from 0. */
  static List<CapacityRow> pick(CapacityTable table, int[] numbers) {
    List<CapacityRow> rows = table.rows();
    return Arrays.stream(numbers).mapToObj(rows::get).toList();
  }
}
