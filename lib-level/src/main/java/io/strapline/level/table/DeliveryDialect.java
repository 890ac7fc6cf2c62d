package io.strapline.level.table;

import io.strapline.level.table.DeliveredText.Block;
import io.strapline.level.table.DeliveredText.Declared;
import io.strapline.level.table.DeliveredText.Table;
import io.strapline.level.table.TableLines.Line;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;

/** Finds how the cells of a delivered file are divided and its numbers written. */
final class DeliveryDialect {

  private final DeliveredText text;
  private final Map<Block, TableColumns> columns;
  private final List<TableProblem> problems;

  private DeliveryDialect(
      DeliveredText text, Map<Block, TableColumns> columns, List<TableProblem> problems) {
    this.text = text;
    this.columns = columns;
    this.problems = problems;
  }

  /** Returns the dialect; empty, with the reason among the problems, when it is not clear. */
  static Optional<TableDialect> of(
      DeliveredText text, Map<Block, TableColumns> columns, List<TableProblem> problems) {
    int before = problems.size();
    DeliveryDialect finding = new DeliveryDialect(text, columns, problems);
    char separator = finding.separator();
    char decimal = finding.decimal(separator);
    char grouping = finding.declared(TableDeclaration.GROUPING).orElse(TableDialect.NONE);
    TableDialect.requireDifferent(separator, decimal, grouping, problems);
    return problems.size() > before
        ? Optional.empty()
        : Optional.of(new TableDialect(separator, decimal, grouping));
  }

  private Optional<Character> declared(TableDeclaration declaration) {
    Optional<Declared> declared = text.inFile(declaration);
    Optional<Character> mark =
        declared.flatMap(found -> Declarations.mark(declaration, found.text()));
    if (declared.isPresent() && mark.isEmpty()) {
      problems.add(
          declared
              .get()
              .problem(
                  declaration, "names no known mark", "write " + Declarations.names(declaration)));
    }
    return mark;
  }

  private char separator() {
    Optional<Declared> declared = text.inFile(TableDeclaration.SEPARATOR);
    if (declared.isPresent()) {
      return declared.get().text().equalsIgnoreCase(TableColumns.BLANKS)
          ? ' '
          : declared(TableDeclaration.SEPARATOR).orElse(TableDialect.NONE);
    }
    List<Line> divided = new ArrayList<>();
    forEachBlock(
        (block, found) -> {
          if (!found.isFixedWidth()) {
            divided.addAll(block.content);
          }
        });
    return divided.isEmpty() ? TableDialect.NONE : shown(divided.get(0));
  }

  /** The one separator on the first row; both marks of a decimal comma and a comma are refused. */
  private char shown(Line row) {
    for (char separator : new char[] {';', '\t'}) {
      if (row.text().indexOf(separator) >= 0) {
        return separator;
      }
    }
    if (row.text().chars().filter(c -> c == ',').count() == 1) {
      return ',';
    }
    problems.add(
        new TableProblem(
            row.number(),
            row.text().strip(),
            "does not show one separator between its cells",
            "declare # separator: semicolon, tab, comma or blanks"));
    return TableDialect.NONE;
  }

  private char decimal(char separator) {
    Optional<Character> declared = declared(TableDeclaration.DECIMAL);
    if (declared.isPresent() || separator == ',') {
      return declared.orElse('.');
    }
    List<Line> rows = new ArrayList<>();
    Map<Line, List<String>> cells = new HashMap<>();
    forEachBlock(
        (block, found) -> {
          for (Line line : block.content) {
            rows.add(line);
            cells.put(line, found.cells(line, separator));
          }
        });
    DecimalMarks marks = DecimalMarks.of(rows, line -> cells.getOrDefault(line, List.of()));
    marks.doubt().ifPresent(problems::add);
    return marks.usesComma() ? ',' : '.';
  }

  private void forEachBlock(BiConsumer<Block, TableColumns> action) {
    for (Table table : text.tables) {
      for (Block block : table.blocks) {
        TableColumns found = columns.get(block);
        if (found != null) {
          action.accept(block, found);
        }
      }
    }
  }
}
