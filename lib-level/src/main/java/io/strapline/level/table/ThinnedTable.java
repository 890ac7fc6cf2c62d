package io.strapline.level.table;

import java.util.List;

/**
 * A thinned capacity table with the error it costs. Immutable.
 *
 * @param table the rows kept, with straight lines between them
 * @param originalRows rows of the table that was thinned
 * @param greatestErrorCubicMetres greatest difference from that table at any height, zero or more
 * @param atHeightMetres the lowest height at which it is reached
 */
public record ThinnedTable(
    CapacityTable table, int originalRows, double greatestErrorCubicMetres, double atHeightMetres) {

  static ThinnedTable of(CapacityTable full, int[] numbers) {
    CapacityTable thin =
        CapacityTable.derived(
            full.name() + ", thinned to " + numbers.length + " rows",
            TableThinning.pick(full, numbers));
    double greatest = 0;
    double at = full.minHeightMetres();
    for (CapacityRow row : full.rows()) {
      double error = Math.abs(thin.volumeCubicMetres(row.heightMetres()) - row.volumeCubicMetres());
      if (error > greatest) {
        greatest = error;
        at = row.heightMetres();
      }
    }
    return new ThinnedTable(thin, full.size(), greatest, at);
  }

  /** Returns the greatest error in percent of the capacity. */
  public double greatestErrorPercent() {
    return 100 * greatestErrorCubicMetres / table.capacityCubicMetres();
  }

  /**
   * Returns what {@link CapacityTable#check} says of the kept rows, were they entered anew: a bend
   * that the full table showed in many rows may look like a slip in few. Empty in most cases.
   */
  public List<TableProblem> problemsWhenEnteredAnew() {
    return CapacityTable.check(table.rows());
  }
}
