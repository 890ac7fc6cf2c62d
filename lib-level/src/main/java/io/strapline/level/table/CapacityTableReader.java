package io.strapline.level.table;

import io.strapline.level.internal.Check;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Reads a capacity table from text. Immutable once read.
 *
 * <pre>
 * # Slurry sump LT-202
 * # decimal: point
 * height [m];volume [m3]
 * 0.00;0.000
 * 0.10;0.350
 * </pre>
 *
 * <ul>
 *   <li>Lines that begin with {@code #} are comments; blank lines are skipped.
 *   <li>The first other line is the header. It names the two columns, {@code height} and {@code
 *       volume}, in either order, each with its unit in square brackets.
 *   <li>Every further line is a row of two numbers, digits with at most one decimal mark.
 *   <li>Three comments above the header say how to read on: {@code # separator:} with {@code
 *       semicolon}, {@code tab} or {@code comma}; {@code # decimal:} with {@code point} or {@code
 *       comma}; {@code # grouping:} with {@code none}, {@code point}, {@code comma} or {@code
 *       blank}, for marks between thousands.
 *   <li>Without them the separator is the one that divides the header, and the decimal mark is the
 *       one mark that the rows use. A file that uses both marks, or whose marks may all stand
 *       between thousands (1.355), is refused: nothing is guessed.
 * </ul>
 *
 * <p>Text never throws: all that is wrong is in {@link #problems()}.
 */
public final class CapacityTableReader {

  private final List<TableProblem> problems;
  private final List<CapacityRow> rows;

  private CapacityTableReader(List<TableProblem> problems, List<CapacityRow> rows) {
    this.problems = List.copyOf(problems);
    this.rows = List.copyOf(rows);
  }

  /** Reads a text, right or wrong. */
  public static CapacityTableReader of(String csvText) {
    Check.present("CapacityTableReader.text", csvText, "pass the text of the table's file");
    TableLines lines = TableLines.of(csvText);
    List<TableProblem> problems = new ArrayList<>();
    Optional<TableDialect> dialect = TableDialect.of(lines, problems);
    Optional<TableHeader> header = dialect.flatMap(found -> TableHeader.of(lines, found, problems));
    if (dialect.isEmpty() || header.isEmpty()) {
      return new CapacityTableReader(problems, List.of());
    }
    return rows(lines, dialect.get(), header.get(), problems);
  }

  private static CapacityTableReader rows(
      TableLines lines, TableDialect dialect, TableHeader header, List<TableProblem> problems) {
    List<Entry> entries = new ArrayList<>();
    for (TableLines.Line line : lines.rows()) {
      header.entry(line, dialect, problems).ifPresent(entries::add);
    }
    problems.addAll(RowRules.check(entries, header.units()));
    problems.sort(Comparator.comparingInt(TableProblem::line));
    List<CapacityRow> rows = entries.stream().map(header.units()::toSi).toList();
    return new CapacityTableReader(problems, rows);
  }

  /** Returns everything that is wrong with the text, by line; empty when it makes a table. */
  public List<TableProblem> problems() {
    return problems;
  }

  /** Returns the rows that could be read, in metres and cubic metres, in the order of the file. */
  public List<CapacityRow> rows() {
    return rows;
  }
}
