package io.strapline.level.table;

import io.strapline.level.table.TableLines.Line;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Finds the decimal mark of a text that declares none, if its rows leave no doubt. */
final class DecimalMarks {

  /** Looks like a whole number with marks between thousands: 1.355 or 1,355,900. */
  private static final Pattern MAYBE_GROUPED = Pattern.compile("[+-]?[1-9]\\d{0,2}([.,]\\d{3})+");

  private @Nullable Line point;
  private @Nullable Line comma;
  private boolean clear;

  private DecimalMarks() {}

  static DecimalMarks of(TableLines lines, char separator) {
    return of(lines.rows(), line -> TableDialect.cells(line.text(), separator));
  }

  static DecimalMarks of(List<Line> rows, Function<Line, List<String>> cells) {
    DecimalMarks marks = new DecimalMarks();
    for (Line line : rows) {
      for (String cell : cells.apply(line)) {
        marks.take(line, cell);
      }
    }
    return marks;
  }

  private void take(Line line, String cell) {
    boolean hasPoint = cell.indexOf('.') >= 0;
    boolean hasComma = cell.indexOf(',') >= 0;
    if (hasPoint && point == null) {
      point = line;
    }
    if (hasComma && comma == null) {
      comma = line;
    }
    clear |= (hasPoint || hasComma) && !MAYBE_GROUPED.matcher(cell).matches();
  }

  boolean usesComma() {
    return comma != null;
  }

  /** Returns why the mark is not clear; empty when it is, or when there is none at all. */
  Optional<TableProblem> doubt() {
    if (point != null && comma != null) {
      Line second = point.number() > comma.number() ? point : comma;
      return Optional.of(doubt(second, "the rows use points and commas"));
    }
    Line marked = point == null ? comma : point;
    return marked == null || clear
        ? Optional.empty()
        : Optional.of(doubt(marked, "the marks may stand before decimals or between thousands"));
  }

  private static TableProblem doubt(Line line, String why) {
    return new TableProblem(
        line.number(),
        '"' + line.text().strip() + '"',
        why + ", and none is declared",
        "write # decimal: point or # decimal: comma above the header");
  }
}
