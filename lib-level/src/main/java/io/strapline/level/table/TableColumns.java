package io.strapline.level.table;

import io.strapline.level.table.DeliveredText.Declared;
import io.strapline.level.table.TableLines.Line;
import io.strapline.level.units.Dimension;
import io.strapline.level.units.LengthUnit;
import io.strapline.level.units.Quantities;
import io.strapline.level.units.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The columns of a block: pairs of a length and a volume, one or more pairs side by side.
 * Immutable.
 */
record TableColumns(List<Column> columns) {

  static final String BLANKS = "blanks";

  private static final String EXAMPLE = "write columns such as height [m] and volume [m3]";

  /** A dip in feet and inches, such as 7 ft 4 1/2 in, has no one unit. */
  private static final String FEET_AND_INCHES = "ft in";

  private static final Pattern COLUMN =
      Pattern.compile(
          "(height|innage|ullage|part|volume)\\s*\\[([^\\]]*)\\](?:\\s*(\\d{1,4})\\s*-\\s*(\\d{1,4}))?",
          Pattern.CASE_INSENSITIVE);

  /**
   * A column.
   *
   * @param name in lower case
   * @param unit of its cells; metres where they are dips in feet and inches
   * @param dips whether the cells are dips in feet and inches
   * @param from first place on the line from 1, or 0 when the text is not of fixed width
   * @param to last place
   */
  record Column(String name, Unit unit, boolean dips, int from, int to) {

    boolean isVolume() {
      return name.equals("volume");
    }
  }

  /** Reads a header line; what stands between the columns is left to the separator. */
  static Optional<TableColumns> ofHeader(Line line, boolean fraction, List<TableProblem> problems) {
    return read(line.number(), line.text().strip(), fraction, false, problems);
  }

  static Optional<TableColumns> declared(
      Declared declared, boolean fraction, List<TableProblem> problems) {
    return read(declared.line(), declared.text(), fraction, true, problems);
  }

  private static Optional<TableColumns> read(
      int line, String text, boolean fraction, boolean places, List<TableProblem> problems) {
    int before = problems.size();
    List<Column> columns = new ArrayList<>();
    Matcher matcher = COLUMN.matcher(text);
    while (matcher.find()) {
      unit(line, matcher, problems).ifPresent(unit -> columns.add(column(matcher, unit)));
    }
    boolean foreign = !matcher.reset().replaceAll("").matches("[\\s;,]*");
    check(columns, fraction, foreign, places)
        .ifPresent(rule -> problems.add(new TableProblem(line, text, rule, EXAMPLE)));
    return problems.size() > before ? Optional.empty() : Optional.of(new TableColumns(columns));
  }

  private static Column column(Matcher matcher, Unit unit) {
    boolean placed = matcher.group(3) != null;
    return new Column(
        matcher.group(1).toLowerCase(Locale.ROOT),
        unit,
        matcher.group(2).strip().equalsIgnoreCase(FEET_AND_INCHES),
        placed ? Integer.parseInt(matcher.group(3)) : 0,
        placed ? Integer.parseInt(matcher.group(4)) : 0);
  }

  private static Optional<Unit> unit(int line, Matcher matcher, List<TableProblem> problems) {
    boolean volume = matcher.group(1).equalsIgnoreCase("volume");
    String symbol = matcher.group(2).strip();
    if (!volume && symbol.equalsIgnoreCase(FEET_AND_INCHES)) {
      return Optional.of(LengthUnit.METRE);
    }
    try {
      Dimension dimension = volume ? Dimension.VOLUME : Dimension.LENGTH;
      return Optional.of(Quantities.unit(symbol, dimension));
    } catch (IllegalArgumentException unknown) {
      problems.add(
          new TableProblem(
              line, matcher.group(), "has no known unit: " + unknown.getMessage(), EXAMPLE));
      return Optional.empty();
    }
  }

  /** Returns the rule that the columns break. */
  private static Optional<String> check(
      List<Column> columns, boolean fraction, boolean foreign, boolean places) {
    if (columns.isEmpty() || foreign) {
      return Optional.of("is not a list of columns with their units in square brackets");
    }
    List<Column> lengths = columns.stream().filter(column -> !column.isVolume()).toList();
    if (lengths.size() * 2 != columns.size()
        || columns.stream()
            .skip(2)
            .anyMatch(
                column ->
                    !columns.subList(0, 2).stream()
                        .anyMatch(
                            first ->
                                first.name().equals(column.name())
                                    && first.unit().equals(column.unit())))
        || lengths.stream().map(Column::name).distinct().count() != 1) {
      return Optional.of("is not made of pairs of one length and one volume, all pairs alike");
    }
    if (fraction != lengths.get(0).name().equals("part")) {
      return Optional.of(
          fraction ? "has no column part, as a fraction block needs" : "has parts in a main block");
    }
    return checkPlaces(columns, places);
  }

  private static Optional<String> checkPlaces(List<Column> columns, boolean allowed) {
    long placed = columns.stream().filter(column -> column.from() > 0).count();
    if (placed == 0 && columns.stream().allMatch(column -> column.to() == 0)) {
      return Optional.empty();
    }
    if (!allowed) {
      return Optional.of("has places on the line, which belong into # columns:");
    }
    boolean wrong =
        columns.stream().anyMatch(column -> column.from() < 1 || column.to() < column.from());
    for (int i = 1; i < columns.size(); i++) {
      wrong |= columns.get(i).from() <= columns.get(i - 1).to();
    }
    return placed == columns.size() && !wrong
        ? Optional.empty()
        : Optional.of("needs places for all columns, from 1, rising and not overlapping");
  }

  boolean isFixedWidth() {
    return columns.get(0).from() > 0;
  }

  /** Returns the length column of the first pair. */
  Column length() {
    return columns.get(0).isVolume() ? columns.get(1) : columns.get(0);
  }

  Column volume() {
    return columns.get(0).isVolume() ? columns.get(0) : columns.get(1);
  }

  /** Returns the cells of a line, without blanks around them; the separator 0 stands for none. */
  List<String> cells(Line line, char separator) {
    if (isFixedWidth()) {
      return columns.stream().map(column -> cut(line.text(), column)).toList();
    }
    if (separator == ' ') {
      return List.of(line.text().strip().split("\\s+"));
    }
    return TableDialect.cells(line.text(), separator);
  }

  private static String cut(String text, Column column) {
    int from = Math.min(column.from() - 1, text.length());
    return text.substring(from, Math.min(column.to(), text.length())).strip();
  }

  /** Returns what stands on a line of fixed width outside all columns; empty when nothing. */
  String outside(Line line) {
    if (!isFixedWidth()) {
      return "";
    }
    StringBuilder rest = new StringBuilder(line.text());
    for (Column column : columns) {
      for (int i = column.from() - 1; i < Math.min(column.to(), rest.length()); i++) {
        rest.setCharAt(i, ' ');
      }
    }
    return rest.toString().strip();
  }
}
