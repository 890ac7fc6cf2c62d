package io.strapline.level.table;

import io.strapline.level.table.TableLines.Line;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * How the cells of a table's text are divided and its numbers written. Immutable.
 *
 * @param separator between cells
 * @param decimal mark before the decimals
 * @param grouping mark between thousands, or {@link #NONE}
 */
record TableDialect(char separator, char decimal, char grouping) {

  /** Stands for no mark. */
  static final char NONE = 0;

  private static final String SEPARATORS = ";\t,";

  /** Returns the dialect; empty, with the reason among the problems, when it is not clear. */
  static Optional<TableDialect> of(TableLines lines, List<TableProblem> problems) {
    int before = problems.size();
    Declarations declared = Declarations.of(lines, problems);
    if (lines.header().isEmpty()) {
      problems.add(new TableProblem(1, "the text", "holds no header", "enter header and rows"));
    }
    if (problems.size() > before) {
      return Optional.empty();
    }
    char separator = declared.separator().orElseGet(() -> separator(lines, problems));
    char decimal = declared.decimal().orElseGet(() -> decimal(lines, separator, problems));
    char grouping = declared.grouping().orElse(NONE);
    requireDifferent(separator, decimal, grouping, problems);
    return problems.size() > before
        ? Optional.empty()
        : Optional.of(new TableDialect(separator, decimal, grouping));
  }

  private static char separator(TableLines lines, List<TableProblem> problems) {
    Line header = lines.header().orElseThrow();
    List<Character> found = new ArrayList<>();
    for (int i = 0; i < SEPARATORS.length(); i++) {
      if (header.text().indexOf(SEPARATORS.charAt(i)) >= 0) {
        found.add(SEPARATORS.charAt(i));
      }
    }
    if (found.size() == 1) {
      return found.get(0);
    }
    problems.add(
        new TableProblem(
            header.number(),
            header.text().strip(),
            "does not show one separator between its two columns",
            "write height [m];volume [m3], or declare # separator: semicolon, tab or comma"));
    return NONE;
  }

  private static char decimal(TableLines lines, char separator, List<TableProblem> problems) {
    if (separator == ',' || separator == NONE) {
      return '.';
    }
    DecimalMarks marks = DecimalMarks.of(lines, separator);
    marks.doubt().ifPresent(problems::add);
    return marks.usesComma() ? ',' : '.';
  }

  static void requireDifferent(
      char separator, char decimal, char grouping, List<TableProblem> problems) {
    if (separator == decimal
        || (grouping != NONE && (separator == grouping || decimal == grouping))) {
      problems.add(
          new TableProblem(
              1,
              "the declarations",
              "give one mark two meanings among separator, decimal and grouping",
              "use semicolons between the columns and declare # separator: semicolon"));
    }
  }

  /** Returns the cells of a line, without the blanks around them. */
  List<String> cells(String line) {
    return cells(line, separator);
  }

  static List<String> cells(String line, char separator) {
    List<String> cells = new ArrayList<>();
    int from = 0;
    for (int at = line.indexOf(separator); at >= 0; at = line.indexOf(separator, from)) {
      cells.add(line.substring(from, at).strip());
      from = at + 1;
    }
    cells.add(line.substring(from).strip());
    return cells;
  }

  /** Returns the number in a cell; empty when it is not written in this dialect. */
  OptionalDouble number(String cell) {
    String plain = cell;
    if (grouping != NONE && cell.indexOf(grouping) >= 0) {
      if (!isGroupedWell(cell)) {
        return OptionalDouble.empty();
      }
      plain = cell.replace(String.valueOf(grouping), "");
    }
    String mark = Pattern.quote(String.valueOf(decimal));
    if (!plain.matches("[+-]?\\d+(" + mark + "\\d+)?")) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(Double.parseDouble(plain.replace(decimal, '.')));
  }

  private boolean isGroupedWell(String cell) {
    String group = Pattern.quote(String.valueOf(grouping));
    String mark = Pattern.quote(String.valueOf(decimal));
    return cell.matches("[+-]?[1-9]\\d{0,2}(" + group + "\\d{3})+(" + mark + "\\d+)?");
  }

  /** Returns the decimal mark by its name. */
  String decimalName() {
    return decimal == ',' ? "comma" : "point";
  }

  /** Returns a number as this dialect writes it. */
  String example() {
    return "20" + decimal + "33";
  }
}
