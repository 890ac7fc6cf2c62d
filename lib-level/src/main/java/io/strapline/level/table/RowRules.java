package io.strapline.level.table;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Judges the rows of a table: each by itself, their order, and jumps out of line. */
final class RowRules {

  private static final int MOST_ROWS = 50_000;
  private static final double GREATEST_METRES = 1e4;
  private static final double GREATEST_CUBIC_METRES = 1e9;

  private final TableUnits units;
  private final List<TableProblem> problems = new ArrayList<>();

  private RowRules(TableUnits units) {
    this.units = units;
  }

  /** Returns every problem of the rows, by line; empty when they make a table. */
  static List<TableProblem> check(List<Entry> rows, TableUnits units) {
    RowRules rules = new RowRules(units);
    rules.checkAll(rows);
    rules.problems.sort(Comparator.comparingInt(TableProblem::line));
    return List.copyOf(rules.problems);
  }

  private void checkAll(List<Entry> rows) {
    int lastLine = rows.isEmpty() ? 1 : rows.get(rows.size() - 1).line();
    if (rows.size() > MOST_ROWS) {
      add(lastLine, rows.size() + " rows", "at most " + MOST_ROWS + " are allowed", "thin it out");
      return;
    }
    List<Entry> sound = rows.stream().filter(this::isSound).toList();
    List<Entry> rising = RowOrder.longestRising(sound, units);
    problems.addAll(RowOrder.problems(sound, rising, units));
    problems.addAll(RowJumps.problems(rising, units));
    if (problems.isEmpty()) {
      checkExtent(rising, lastLine);
    }
  }

  private void checkExtent(List<Entry> rising, int lastLine) {
    if (rising.size() < 2) {
      add(lastLine, rising.size() + " rows", "a table needs two", "add the missing rows");
    } else if (!(rising.get(rising.size() - 1).volume() > 0)) {
      add(lastLine, units.volumeText(0), "the vessel has no volume", "enter the volumes");
    }
  }

  private boolean isSound(Entry row) {
    boolean height =
        isSound(row.line(), row.height(), units.height().toSi(row.height()), GREATEST_METRES, true);
    boolean volume =
        isSound(
            row.line(),
            row.volume(),
            units.volume().toSi(row.volume()),
            GREATEST_CUBIC_METRES,
            false);
    return height && volume;
  }

  private boolean isSound(int line, double value, double si, double most, boolean isHeight) {
    String text = isHeight ? units.heightText(value) : units.volumeText(value);
    if (!Double.isFinite(value)) {
      add(line, text, "is not a finite number", "enter the value or remove the row");
      return false;
    }
    if (value < 0) {
      add(line, text, "is negative", "heights count from the datum, volumes from empty");
      return false;
    }
    if (si > most) {
      String unit = isHeight ? " m" : " m3";
      add(line, text, "is above " + most + unit, "check the unit and the decimal mark");
      return false;
    }
    return true;
  }

  private void add(int line, String value, String rule, String fix) {
    problems.add(new TableProblem(line, value, rule, fix));
  }
}
