package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import java.util.List;

/**
 * Bulk density by depth below the surface, from weighings or a packing test: linear between the
 * rows, constant below the last. Immutable.
 *
 * @param rows one to {@value #MOST_ROWS} rows; the first has the depth zero, depths rise strictly,
 *     densities never fall
 */
public record TabulatedDensity(List<Row> rows) implements BulkDensity {

  /** Most rows of a table. */
  public static final int MOST_ROWS = 1000;

  /**
   * One row of the table.
   *
   * @param depthMetres depth below the surface in metres, finite, zero or more
   * @param kilogramsPerCubicMetre in [{@link BulkDensity#LEAST}, {@link BulkDensity#GREATEST}]
   */
  public record Row(double depthMetres, double kilogramsPerCubicMetre) {

    /** Refuses what cannot be a depth or a density. */
    public Row {
      depthMetres =
          Check.notNegative(
              "TabulatedDensity.depth", depthMetres, "m", "give the depth below the surface");
      kilogramsPerCubicMetre =
          BulkDensity.checked("TabulatedDensity.density", kilogramsPerCubicMetre);
    }
  }

  /** Refuses a table out of order, naming the row. */
  public TabulatedDensity {
    rows = List.copyOf(Check.present("TabulatedDensity.rows", rows, "give the rows"));
    Check.between(
        "TabulatedDensity.rows",
        rows.size(),
        "rows",
        1,
        MOST_ROWS,
        "give at least the density at the surface");
    checkFirst(rows.get(0));
    for (int i = 1; i < rows.size(); i++) {
      checkOrder(i + 1, rows.get(i - 1), rows.get(i));
    }
  }

  private static void checkFirst(Row first) {
    if (first.depthMetres != 0) {
      throw Check.error(
          "TabulatedDensity.row 1 depth",
          first.depthMetres,
          "m",
          "must be zero",
          "start with the density at the surface");
    }
  }

  private static void checkOrder(int number, Row above, Row row) {
    if (!(row.depthMetres > above.depthMetres)) {
      throw Check.error(
          "TabulatedDensity.row " + number + " depth",
          row.depthMetres,
          "m",
          "must be greater than the depth of the row before (" + above.depthMetres + " m)",
          "sort the rows by depth and leave out the duplicate");
    }
    if (row.kilogramsPerCubicMetre < above.kilogramsPerCubicMetre) {
      throw Check.error(
          "TabulatedDensity.row " + number + " density",
          row.kilogramsPerCubicMetre,
          "kg/m3",
          "must not be below that of the row before (" + above.kilogramsPerCubicMetre + " kg/m3)",
          "check the row: the weight above packs the material");
    }
  }

  @Override
  public double atDepth(double depthMetres) {
    int below = rowBelow(BulkDensity.checkedDepth(depthMetres));
    if (below == rows.size()) {
      return rows.get(below - 1).kilogramsPerCubicMetre;
    }
    Row upper = rows.get(below - 1);
    return upper.kilogramsPerCubicMetre + slope(below) * (depthMetres - upper.depthMetres);
  }

  @Override
  public double gradientAtDepth(double depthMetres) {
    int below = rowBelow(BulkDensity.checkedDepth(depthMetres));
    return below == rows.size() ? 0 : slope(below);
  }

  @Override
  public List<Double> breakDepthsMetres() {
    return rows.stream().skip(1).map(Row::depthMetres).toList();
  }

  private double slope(int below) {
    Row upper = rows.get(below - 1);
    Row lower = rows.get(below);
    return (lower.kilogramsPerCubicMetre - upper.kilogramsPerCubicMetre)
        / (lower.depthMetres - upper.depthMetres);
  }

  // Index of the first row deeper than the depth; the number of rows below the last.
  private int rowBelow(double depthMetres) {
    int low = 1;
    int high = rows.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (rows.get(middle).depthMetres > depthMetres) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return low;
  }
}
