package io.strapline.level.table;

import io.strapline.level.internal.Check;
import io.strapline.level.table.DeliveredText.Block;
import io.strapline.level.table.DeliveredText.Table;
import io.strapline.level.table.TableLines.Line;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads capacity tables as calibration companies deliver them: one or more tables in a plain text,
 * each of one or more blocks. Immutable once read.
 *
 * <pre>
 * # table: LT-201 bitumen tank
 * # reference height: 2.950 m
 * # datum offset: 12 mm
 * # decimal: comma
 * ullage [cm];volume [L]
 * 0;47120
 * 10;46240,5
 *
 * # block: fraction
 * # from: 0 cm
 * # to: 50 cm
 * part [mm];volume [L]
 * 1;8,8
 * 2;17,6
 * </pre>
 *
 * <ul>
 *   <li>A block begins with a header: {@code height} (or {@code innage}), or {@code ullage}, and
 *       {@code volume}, each with its unit in square brackets; {@code part} in place of the height
 *       in a fraction block. Several such pairs may stand side by side: the first pair is read to
 *       its end, then the next. {@code # columns:} stands in for a header that is not there, and
 *       gives the places of text of fixed width.
 *   <li>Lengths are decimal numbers, fractions of their unit ({@code 7 3/8}), or in a column {@code
 *       [ft in]} dips such as {@code 7 ft 4 1/2 in}.
 *   <li>Rows may rise or fall. An ullage becomes a height by the reference height. Datum offset and
 *       heel are added to every height and volume.
 *   <li>The parts of a fraction block are added to the main rows from {@code # from:} to below
 *       {@code # to:} (both as written in the rows), as far as the next main row: height plus part
 *       holds volume plus part; ullage plus part holds volume less part.
 *   <li>All declarations: {@link TableDeclaration}. What the file does not say, {@link
 *       DeliveryOptions} may. Other comments are free, but one that looks like a mistyped
 *       declaration is a problem.
 * </ul>
 *
 * <p>Text never throws: all that is wrong is in {@link #problems()}, and a table without problems
 * is read even when others have some. The form is this project's own.
 */
public final class DeliveredTables {

  private final List<DeliveredTable> tables;
  private final List<TableProblem> problems;

  private DeliveredTables(List<DeliveredTable> tables, List<TableProblem> problems) {
    this.tables = List.copyOf(tables);
    this.problems = List.copyOf(problems);
  }

  /**
   * Reads a text, right or wrong.
   *
   * @param text of the file
   * @param fileName names a table that has no name of its own
   * @param options what the file does not say
   */
  public static DeliveredTables read(String text, String fileName, DeliveryOptions options) {
    Check.present("DeliveredTables.text", text, "pass the text of the file");
    Check.text("DeliveredTables.fileName", fileName, "give the file's name");
    Check.present("DeliveredTables.options", options, "pass DeliveryOptions.none()");
    return new Reading(DeliveredText.of(text, fileName, options)).read();
  }

  /** Returns the tables in the order of the file, those with problems too. */
  public List<DeliveredTable> tables() {
    return tables;
  }

  /** Returns everything that is wrong with the file and its tables, by line. */
  public List<TableProblem> problems() {
    return problems;
  }

  /** One reading of a text. */
  private static final class Reading {

    private final DeliveredText text;
    private final Map<Block, TableColumns> columns = new HashMap<>();

    Reading(DeliveredText text) {
      this.text = text;
    }

    DeliveredTables read() {
      List<TableProblem> problems = new ArrayList<>(text.problems);
      text.tables.forEach(this::findColumns);
      Optional<TableDialect> dialect = DeliveryDialect.of(text, columns, problems);
      List<DeliveredTable> tables = new ArrayList<>();
      for (Table table : text.tables) {
        // Doubts about the whole file make every table of it doubtful.
        table.problems.addAll(problems);
        dialect.ifPresent(found -> tables.add(read(table, found)));
        if (dialect.isEmpty()) {
          tables.add(new DeliveredTable(table.name, List.of(), sorted(table.problems)));
        }
      }
      tables.forEach(table -> problems.addAll(table.problems()));
      return new DeliveredTables(tables, sorted(problems.stream().distinct().toList()));
    }

    private DeliveredTable read(Table table, TableDialect dialect) {
      List<CapacityRow> rows = new TableAssembly(text, table, columns, dialect).rows();
      List<TableProblem> problems = sorted(table.problems.stream().distinct().toList());
      return new DeliveredTable(table.name, problems.isEmpty() ? rows : List.of(), problems);
    }

    private void findColumns(Table table) {
      for (Block block : table.blocks) {
        var declared = text.columns(table, block);
        Optional<TableColumns> found = Optional.empty();
        if (declared.isPresent()) {
          found = TableColumns.declared(declared.get(), block.fraction, table.problems);
        } else if (!block.content.isEmpty()) {
          Line header = block.content.remove(0);
          found = TableColumns.ofHeader(header, block.fraction, table.problems);
        }
        found.ifPresent(those -> columns.put(block, those));
      }
    }

    private static List<TableProblem> sorted(List<TableProblem> problems) {
      return problems.stream().sorted(Comparator.comparingInt(TableProblem::line)).toList();
    }
  }
}
