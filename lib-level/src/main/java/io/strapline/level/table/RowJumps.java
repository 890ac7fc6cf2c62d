package io.strapline.level.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Finds rows that are in order but out of line with their neighbours, as when 20,33 was read as
 * 2033. Rules of this project, no source:
 *
 * <ul>
 *   <li>Volume: between two rows the volume per height is more than 5 times that of the nearest
 *       pairs of rows below and above that differ in volume, though the step in height is at most
 *       twice the steps beside it.
 *   <li>Height: the step in height is more than 5 times the steps below and above, though the
 *       volume per height is less than a fifth of that on both sides.
 *   <li>The last row has rows on one side only. It is judged by that side when at least four rows
 *       stand before it, with a factor of 50 for the step in height, since a neck on top makes a
 *       long flat last step.
 * </ul>
 *
 * <p>Marks that are lost from a row on to the end of the table are seen from about the sixth row
 * on; lower down the jump is no greater than that of a sump into its tank.
 *
 * <p>The first row is not judged, since what lies below it is not known; flat steps are never out
 * of line. A vessel that truly is so passes once the step is divided by a row between.
 */
final class RowJumps {

  private static final double OUT_OF_LINE = 5;
  private static final double LONG_LAST_STEP = 50;
  private static final double LIKE_STEP = 2;
  private static final int LEAST_ROWS_BEFORE_LAST = 4;

  private final List<Entry> rows;
  private final TableUnits units;

  private RowJumps(List<Entry> rows, TableUnits units) {
    this.rows = rows;
    this.units = units;
  }

  /** Returns the problems of rows that are in order. */
  static List<TableProblem> problems(List<Entry> rows, TableUnits units) {
    return new RowJumps(rows, units).find();
  }

  private List<TableProblem> find() {
    List<TableProblem> problems = new ArrayList<>();
    int last = rows.size() - 1;
    for (int i = 2; i <= last; i++) {
      boolean judged = i < last || i >= LEAST_ROWS_BEFORE_LAST;
      if (judged && volumeJumps(i)) {
        problems.add(volumeProblem(i));
      } else if (judged && heightJumps(i)) {
        problems.add(heightProblem(i));
      }
    }
    return problems;
  }

  private boolean volumeJumps(int row) {
    double below = slopeBelow(row);
    double above = slopeAbove(row);
    boolean alone = below > 0 && (above > 0 || row == rows.size() - 1);
    return alone
        && slope(row) > OUT_OF_LINE * Math.max(below, above)
        && step(row) <= LIKE_STEP * leastStepBeside(row);
  }

  private boolean heightJumps(int row) {
    boolean isLast = row == rows.size() - 1;
    double below = slope(row - 1);
    double leastSlope = isLast ? below : Math.min(below, slope(row + 1));
    double greatestStep = isLast ? step(row - 1) : Math.max(step(row - 1), step(row + 1));
    return slope(row) > 0
        && slope(row) * OUT_OF_LINE < leastSlope
        && step(row) > (isLast ? LONG_LAST_STEP : OUT_OF_LINE) * greatestStep;
  }

  /** Slope of the nearest pair below that differs in volume; zero when there is none. */
  private double slopeBelow(int row) {
    for (int i = row - 1; i > 0; i--) {
      if (slope(i) > 0) {
        return slope(i);
      }
    }
    return 0;
  }

  private double slopeAbove(int row) {
    for (int i = row + 1; i < rows.size(); i++) {
      if (slope(i) > 0) {
        return slope(i);
      }
    }
    return 0;
  }

  private double leastStepBeside(int row) {
    double below = step(row - 1);
    return row == rows.size() - 1 ? below : Math.min(below, step(row + 1));
  }

  /** Height from the row before to this one. */
  private double step(int row) {
    return rows.get(row).height() - rows.get(row - 1).height();
  }

  /** Volume per height from the row before to this one. */
  private double slope(int row) {
    return (rows.get(row).volume() - rows.get(row - 1).volume()) / step(row);
  }

  private TableProblem volumeProblem(int row) {
    return problem(
        row,
        units.volumeText(rows.get(row).volume()),
        "rises more than 5 times as fast from line %d on as the rows below and above");
  }

  private TableProblem heightProblem(int row) {
    return problem(
        row,
        units.heightText(rows.get(row).height()),
        "lies far further above line %d than the rows beside lie apart, for hardly any volume");
  }

  private TableProblem problem(int row, String value, String rule) {
    return new TableProblem(
        rows.get(row).line(),
        value,
        String.format(Locale.ROOT, rule, rows.get(row - 1).line()),
        "check the decimal mark; if the vessel is so, enter a row between the two");
  }
}
