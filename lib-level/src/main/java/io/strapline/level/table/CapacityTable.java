package io.strapline.level.table;

import io.strapline.level.internal.Check;
import io.strapline.level.vessel.CapacityCurve;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A capacity (strapping) table: volume against height by interpolation, never beyond its ends.
 * Immutable.
 *
 * <p>Heights rise from row to row; volumes do not fall. A flat step (the same volume at two
 * heights) is allowed, and its volume gives the lower height.
 *
 * <p>At both ends the end value is held, never extrapolated: below the first row its volume, above
 * the last row the capacity. Neither is a measurement of the table, so {@link #covers} is false
 * there. The first row need not lie at height zero nor hold volume zero: what lies below it is the
 * heel, whose division by height the table does not tell. A volume of the heel or less gives the
 * height of the first row.
 */
public final class CapacityTable implements CapacityCurve {

  private final String name;
  private final Interpolation interpolation;
  private final double[] heights;
  private final double[] volumes;
  private final Pieces pieces;

  private CapacityTable(String name, List<CapacityRow> rows, Interpolation interpolation) {
    this.name = name;
    this.interpolation = interpolation;
    // Adding zero makes a negative zero a plain one.
    heights = rows.stream().mapToDouble(row -> row.heightMetres() + 0.0).toArray();
    volumes = rows.stream().mapToDouble(row -> row.volumeCubicMetres() + 0.0).toArray();
    pieces = Pieces.of(heights, volumes, interpolation);
  }

  /**
   * Returns the table of these rows.
   *
   * @param name for messages, such as the file's name
   * @param rows in order of height
   * @param interpolation between the rows
   * @throws CapacityTableException listing every problem that {@link #check} finds
   */
  public static CapacityTable of(String name, List<CapacityRow> rows, Interpolation interpolation) {
    Check.text("CapacityTable.name", name, "give the table a name, such as that of its file");
    Check.present("CapacityTable.interpolation", interpolation, "give LINEAR");
    List<TableProblem> problems = check(rows);
    if (!problems.isEmpty()) {
      throw new CapacityTableException(name, problems);
    }
    return new CapacityTable(name, rows, interpolation);
  }

  /**
   * Returns the table of rows that follow from a table already checked, as when it is thinned.
   * Their order is not checked again, and neither are jumps: rows that were left out may be what
   * made a bend plain.
   */
  static CapacityTable derived(String name, List<CapacityRow> rows) {
    return new CapacityTable(name, rows, Interpolation.LINEAR);
  }

  /**
   * Returns every problem of these rows, by line; empty when they make a table: at least two rows
   * and at most 50,000; heights in [0, 10,000] m, each at least a nanometre above the one before;
   * volumes in [0, 1e9] m3, none below the one before, the last above zero; no row out of line with
   * its neighbours (as when 20,33 was read as 2033).
   */
  public static List<TableProblem> check(List<CapacityRow> rows) {
    Check.present("CapacityTable.rows", rows, "pass the rows in order of height");
    List<Entry> entries =
        rows.stream()
            .map(row -> new Entry(row.line(), row.heightMetres(), row.volumeCubicMetres()))
            .toList();
    return RowRules.check(entries, TableUnits.SI);
  }

  /**
   * Reads a table from text in the form that {@link CapacityTableReader} describes, with straight
   * lines between the rows.
   *
   * @throws CapacityTableException listing every problem
   */
  public static CapacityTable read(String csvText, String name) {
    return read(csvText, name, Interpolation.LINEAR);
  }

  /**
   * Reads a table from text in the form that {@link CapacityTableReader} describes.
   *
   * @throws CapacityTableException listing every problem
   */
  public static CapacityTable read(String csvText, String name, Interpolation interpolation) {
    CapacityTableReader reader = CapacityTableReader.of(csvText);
    if (!reader.problems().isEmpty()) {
      throw new CapacityTableException(name, reader.problems());
    }
    return of(name, reader.rows(), interpolation);
  }

  /** Returns the name. */
  public String name() {
    return name;
  }

  /** Returns the number of rows, at least two. */
  public int size() {
    return heights.length;
  }

  /** Returns the rows, in order of height, with their number from 1 as their line. */
  public List<CapacityRow> rows() {
    return IntStream.range(0, size())
        .mapToObj(i -> new CapacityRow(i + 1, heights[i], volumes[i]))
        .toList();
  }

  /** Returns how volumes between the rows are found. */
  public Interpolation interpolation() {
    return interpolation;
  }

  /** Returns the height of the first row above the datum, in metres, zero or more. */
  public double minHeightMetres() {
    return heights[0];
  }

  @Override
  public double maxHeightMetres() {
    return heights[heights.length - 1];
  }

  /** Returns the volume at the first row, in cubic metres, zero or more. */
  public double heelCubicMetres() {
    return volumes[0];
  }

  @Override
  public double capacityCubicMetres() {
    return volumes[volumes.length - 1];
  }

  /** {@inheritDoc} Below the first row the volume of the first row. */
  @Override
  public double volumeCubicMetres(double heightMetres) {
    if (heightMetres > heights[0] && heightMetres < heights[heights.length - 1]) {
      return pieces.volume(heightMetres);
    }
    return atEnd(heightMetres);
  }

  private double atEnd(double heightMetres) {
    refuseNaN("CapacityTable.height", heightMetres, "m");
    return heightMetres <= heights[0] ? heelCubicMetres() : capacityCubicMetres();
  }

  /** {@inheritDoc} A volume of the first row or less gives the height of the first row. */
  @Override
  public double heightMetres(double volumeCubicMetres) {
    refuseNaN("CapacityTable.volume", volumeCubicMetres, "m3");
    int row = firstRowHolding(Math.min(volumeCubicMetres, capacityCubicMetres()));
    boolean atRow = row == 0 || volumes[row] <= volumeCubicMetres;
    return atRow ? heights[row] : pieces.height(volumeCubicMetres, row);
  }

  /** The first row whose volume is not below this one. */
  private int firstRowHolding(double volume) {
    int row = Arrays.binarySearch(volumes, volume);
    if (row < 0) {
      return -row - 1;
    }
    while (row > 0 && volumes[row - 1] == volume) {
      row--;
    }
    return row;
  }

  /** Returns whether the height lies between the first and the last row, with the usual snap. */
  @Override
  public boolean covers(double heightMetres) {
    double slack = SNAP * maxHeightMetres();
    return heightMetres >= minHeightMetres() - slack && heightMetres <= maxHeightMetres() + slack;
  }

  @Override
  public String toString() {
    return "CapacityTable[" + name + ", " + size() + " rows, " + interpolation + "]";
  }

  private static void refuseNaN(String field, double value, String unit) {
    if (Double.isNaN(value)) {
      throw Check.error(
          field, value, unit, "must be a number", "judge the reading's quality first");
    }
  }
}
