package io.strapline.level.table;

import io.strapline.level.table.TableLines.Line;
import io.strapline.level.units.Dimension;
import io.strapline.level.units.Quantities;
import io.strapline.level.units.Unit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The header of a table's text: which column is which, and in what units. Immutable. */
record TableHeader(boolean volumeFirst, TableUnits units) {

  private static final String EXAMPLE = "write a header such as height [m];volume [m3]";
  private static final int COLUMNS = 2;

  private static final Pattern COLUMN =
      Pattern.compile("(height|volume)\\s*\\[([^\\]]*)\\]", Pattern.CASE_INSENSITIVE);

  /** Returns the header; empty, with the reasons among the problems, when it is wrong. */
  static Optional<TableHeader> of(
      TableLines lines, TableDialect dialect, List<TableProblem> problems) {
    Line line = lines.header().orElseThrow();
    List<String> cells = dialect.cells(line.text());
    if (cells.size() != COLUMNS) {
      problems.add(
          new TableProblem(
              line.number(),
              line.text().strip(),
              "has " + cells.size() + " columns where two are needed",
              EXAMPLE));
      return Optional.empty();
    }
    boolean volumeFirst = cells.get(0).toLowerCase(Locale.ROOT).startsWith("volume");
    String height = cells.get(volumeFirst ? 1 : 0);
    String volume = cells.get(volumeFirst ? 0 : 1);
    Optional<Unit> heightUnit = unit(line, "height", height, Dimension.LENGTH, problems);
    Optional<Unit> volumeUnit = unit(line, "volume", volume, Dimension.VOLUME, problems);
    return heightUnit.flatMap(
        h -> volumeUnit.map(v -> new TableHeader(volumeFirst, new TableUnits(h, v))));
  }

  private static Optional<Unit> unit(
      Line line, String name, String cell, Dimension dimension, List<TableProblem> problems) {
    Matcher matcher = COLUMN.matcher(cell);
    if (!matcher.matches() || !name.equalsIgnoreCase(matcher.group(1))) {
      String rule = "is not the column " + name + " with its unit in square brackets";
      problems.add(new TableProblem(line.number(), quoted(cell), rule, EXAMPLE));
      return Optional.empty();
    }
    try {
      return Optional.of(Quantities.unit(matcher.group(2), dimension));
    } catch (IllegalArgumentException unknown) {
      problems.add(
          new TableProblem(
              line.number(), quoted(cell), "has no known unit: " + unknown.getMessage(), EXAMPLE));
      return Optional.empty();
    }
  }

  /** Returns the row on a line; empty, with the reasons among the problems, when it is wrong. */
  Optional<Entry> entry(Line line, TableDialect dialect, List<TableProblem> problems) {
    List<String> cells = dialect.cells(line.text());
    if (cells.size() != COLUMNS) {
      problems.add(
          new TableProblem(
              line.number(),
              quoted(line.text().strip()),
              "has " + cells.size() + " cells where two are needed",
              "enter height and volume, divided as in the header"));
      return Optional.empty();
    }
    OptionalDouble height =
        number(line, "height", cells.get(volumeFirst ? 1 : 0), dialect, problems);
    OptionalDouble volume =
        number(line, "volume", cells.get(volumeFirst ? 0 : 1), dialect, problems);
    return height.isPresent() && volume.isPresent()
        ? Optional.of(new Entry(line.number(), height.getAsDouble(), volume.getAsDouble()))
        : Optional.empty();
  }

  private static OptionalDouble number(
      Line line, String name, String cell, TableDialect dialect, List<TableProblem> problems) {
    OptionalDouble number = dialect.number(cell);
    if (number.isEmpty()) {
      problems.add(
          new TableProblem(
              line.number(),
              name + " " + quoted(cell),
              cell.isEmpty()
                  ? "is missing"
                  : "is not a number with a decimal " + dialect.decimalName(),
              "write digits such as " + dialect.example()));
    }
    return number;
  }

  private static String quoted(String text) {
    return '"' + text + '"';
  }
}
