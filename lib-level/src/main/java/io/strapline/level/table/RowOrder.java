package io.strapline.level.table;

import java.util.ArrayList;
import java.util.List;

/**
 * The order of a table's rows: heights rise, volumes do not fall. Rows that break it are named by
 * leaving out as few as possible, so that one misread row does not put all after it in the wrong.
 */
final class RowOrder {

  /** Two heights closer than this are the same height. */
  private static final double LEAST_STEP_METRES = 1e-9;

  private RowOrder() {}

  /** Returns the longest run of rows in order; of equally long ones, that with the earlier rows. */
  static List<Entry> longestRising(List<Entry> rows, TableUnits units) {
    double step = units.height().fromSi(LEAST_STEP_METRES);
    return isRising(rows, step) ? rows : walk(rows, lengths(rows, step), step);
  }

  /** Returns a problem for each row that is not in the run. */
  static List<TableProblem> problems(List<Entry> rows, List<Entry> rising, TableUnits units) {
    List<TableProblem> problems = new ArrayList<>();
    int next = 0;
    for (Entry row : rows) {
      if (next < rising.size() && rising.get(next).equals(row)) {
        next++;
      } else if (next > 0 && !isAbove(row, rising.get(next - 1), units)) {
        problems.add(againstEarlier(row, rising.get(next - 1), units));
      } else {
        problems.add(againstLater(row, rising.get(next), units));
      }
    }
    return problems;
  }

  private static boolean isRising(List<Entry> rows, double step) {
    for (int i = 1; i < rows.size(); i++) {
      if (!follows(rows.get(i), rows.get(i - 1), step)) {
        return false;
      }
    }
    return true;
  }

  private static boolean follows(Entry row, Entry earlier, double step) {
    return row.height() - earlier.height() >= step && row.volume() >= earlier.volume();
  }

  private static boolean isAbove(Entry row, Entry earlier, TableUnits units) {
    return follows(row, earlier, units.height().fromSi(LEAST_STEP_METRES));
  }

  /** Length of the longest run that starts at each row. */
  private static int[] lengths(List<Entry> rows, double step) {
    int[] lengths = new int[rows.size()];
    for (int i = rows.size() - 1; i >= 0; i--) {
      int longest = 0;
      for (int j = i + 1; j < lengths.length; j++) {
        if (lengths[j] > longest && follows(rows.get(j), rows.get(i), step)) {
          longest = lengths[j];
        }
      }
      lengths[i] = longest + 1;
    }
    return lengths;
  }

  private static List<Entry> walk(List<Entry> rows, int[] lengths, double step) {
    int wanted = 0;
    for (int length : lengths) {
      wanted = Math.max(wanted, length);
    }
    List<Entry> run = new ArrayList<>();
    for (int i = 0; i < lengths.length; i++) {
      boolean fits = run.isEmpty() || follows(rows.get(i), run.get(run.size() - 1), step);
      if (lengths[i] == wanted && fits) {
        run.add(rows.get(i));
        wanted--;
      }
    }
    return run;
  }

  private static TableProblem againstEarlier(Entry row, Entry earlier, TableUnits units) {
    String there = " of line " + earlier.line();
    if (row.height() < earlier.height()) {
      return new TableProblem(
          row.line(),
          units.heightText(row.height()),
          "falls below the height" + there + " (" + earlier.height() + ")",
          "correct the height or move the row to its place");
    }
    if (row.volume() < earlier.volume()) {
      return new TableProblem(
          row.line(),
          units.volumeText(row.volume()),
          "falls below the volume" + there + " (" + earlier.volume() + ")",
          "correct the volume");
    }
    return new TableProblem(
        row.line(),
        units.heightText(row.height()),
        "repeats the height" + there,
        "remove one of the two rows");
  }

  private static TableProblem againstLater(Entry row, Entry later, TableUnits units) {
    String there = " of line " + later.line() + ", which follows";
    if (row.volume() > later.volume()) {
      return new TableProblem(
          row.line(),
          units.volumeText(row.volume()),
          "exceeds the volume (" + later.volume() + ")" + there,
          "correct the volume; check its decimal mark");
    }
    return new TableProblem(
        row.line(),
        units.heightText(row.height()),
        "is not below the height (" + later.height() + ")" + there,
        "correct the height or move the row to its place");
  }
}
