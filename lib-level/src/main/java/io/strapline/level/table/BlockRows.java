package io.strapline.level.table;

import io.strapline.level.table.TableColumns.Column;
import io.strapline.level.table.TableLines.Line;
import io.strapline.level.units.Dimension;
import io.strapline.level.units.Quantities;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the rows of a block, in the units of its columns; the first pair of columns first. */
final class BlockRows {

  /** Inches with a fraction: 1/16 or 7 3/8. */
  private static final Pattern FRACTION =
      Pattern.compile("(?:(\\d{1,6})[ -])?(\\d{1,3})/(\\d{1,3})");

  private static final int FINEST = 128;

  private final TableColumns columns;
  private final TableDialect dialect;
  private final List<TableProblem> problems;

  BlockRows(TableColumns columns, TableDialect dialect, List<TableProblem> problems) {
    this.columns = columns;
    this.dialect = dialect;
    this.problems = problems;
  }

  List<Entry> read(List<Line> lines) {
    int pairs = columns.columns().size() / 2;
    List<List<Entry>> byPair = new ArrayList<>();
    for (int pair = 0; pair < pairs; pair++) {
      byPair.add(new ArrayList<>());
    }
    for (Line line : lines) {
      List<String> cells = columns.cells(line, dialect.separator());
      if (isWhole(line, cells)) {
        for (int pair = 0; pair < pairs; pair++) {
          readPair(line, cells, pair, byPair.get(pair));
        }
      }
    }
    return byPair.stream().flatMap(List::stream).toList();
  }

  private boolean isWhole(Line line, List<String> cells) {
    String outside = columns.outside(line);
    if (!outside.isEmpty()) {
      add(line, outside, "stands outside the columns", "correct # columns: or remove it");
      return false;
    }
    if (cells.size() != columns.columns().size()) {
      add(
          line,
          line.text().strip(),
          "has " + cells.size() + " cells where " + columns.columns().size() + " are needed",
          "divide them as declared; leave both cells of a pair empty where a column is shorter");
      return false;
    }
    return true;
  }

  /** A pair beside a longer one may be empty. */
  private void readPair(Line line, List<String> cells, int pair, List<Entry> entries) {
    String first = cells.get(2 * pair);
    String second = cells.get(2 * pair + 1);
    if (pair > 0 && first.isEmpty() && second.isEmpty()) {
      return;
    }
    OptionalDouble one = number(line, columns.columns().get(2 * pair), first);
    OptionalDouble two = number(line, columns.columns().get(2 * pair + 1), second);
    if (one.isPresent() && two.isPresent()) {
      boolean volumeFirst = columns.columns().get(2 * pair).isVolume();
      double length = volumeFirst ? two.getAsDouble() : one.getAsDouble();
      double volume = volumeFirst ? one.getAsDouble() : two.getAsDouble();
      entries.add(new Entry(line.number(), length, volume));
    }
  }

  private OptionalDouble number(Line line, Column column, String cell) {
    OptionalDouble number = column.dips() ? dip(cell) : plain(column, cell);
    if (number.isEmpty()) {
      String rule =
          column.dips()
              ? "is not a dip in feet and inches"
              : "is not a number with a decimal " + dialect.decimalName();
      add(
          line,
          column.name() + " \"" + cell + '"',
          cell.isEmpty() ? "is missing" : rule,
          "write it such as " + (column.dips() ? "7 ft 4 1/2 in" : dialect.example()));
    }
    return number;
  }

  private static OptionalDouble dip(String cell) {
    try {
      return OptionalDouble.of(Quantities.parse(cell, Dimension.LENGTH));
    } catch (IllegalArgumentException notOne) {
      return OptionalDouble.empty();
    }
  }

  private OptionalDouble plain(Column column, String cell) {
    Matcher fraction = FRACTION.matcher(cell);
    return column.isVolume() || !fraction.matches() ? dialect.number(cell) : fraction(fraction);
  }

  private static OptionalDouble fraction(Matcher parts) {
    int over = Integer.parseInt(parts.group(2));
    int under = Integer.parseInt(parts.group(3));
    boolean proper = under >= 2 && under <= FINEST && Integer.bitCount(under) == 1 && over < under;
    double whole = parts.group(1) == null ? 0 : Double.parseDouble(parts.group(1));
    return proper ? OptionalDouble.of(whole + (double) over / under) : OptionalDouble.empty();
  }

  private void add(Line line, String value, String rule, String fix) {
    problems.add(new TableProblem(line.number(), value, rule, fix));
  }
}
