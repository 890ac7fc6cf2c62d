package io.strapline.level.table;

import io.strapline.level.table.DeliveredText.Block;
import io.strapline.level.table.DeliveredText.Table;
import io.strapline.level.units.Dimension;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Puts a delivered table together: main rows, ullage, offset, heel and the parts of fractions. */
final class TableAssembly {

  private final DeliveredText text;
  private final Table table;
  private final Map<Block, TableColumns> columns;
  private final TableDialect dialect;

  /** How each row was written, by the row as it counts from the datum. */
  private final Map<Entry, Entry> written = new HashMap<>();

  private @Nullable TableColumns main;

  TableAssembly(
      DeliveredText text, Table table, Map<Block, TableColumns> columns, TableDialect dialect) {
    this.text = text;
    this.table = table;
    this.columns = columns;
    this.dialect = dialect;
  }

  /** Returns the rows in SI units; problems go to the table. */
  List<CapacityRow> rows() {
    List<Entry> entries = mainEntries();
    TableColumns found = main;
    if (found == null) {
      if (table.problems.isEmpty()) {
        add(table.line, table.name, "has no main block", "add its rows, or # block: main");
      }
      return List.of();
    }
    TableUnits units = new TableUnits(found.length().unit(), found.volume().unit());
    List<Entry> fromDatum = fromDatum(entries, found, units);
    for (TableProblem problem : RowRules.check(fromDatum, units)) {
      table.problems.add(asWritten(problem, fromDatum, found, units));
    }
    FractionParts parts = new FractionParts(table, columns, dialect, units);
    if (!table.problems.isEmpty()) {
      return List.of();
    }
    List<Entry> all = parts.addTo(fromDatum, written, isUllage(found) ? -1 : 1);
    if (table.problems.isEmpty() && all.size() > fromDatum.size()) {
      table.problems.addAll(RowRules.check(all, units));
    }
    return all.stream().map(units::toSi).toList();
  }

  private static boolean isUllage(TableColumns columns) {
    return columns.length().name().equals("ullage");
  }

  private List<Entry> mainEntries() {
    List<Entry> entries = new ArrayList<>();
    for (Block block : table.blocks) {
      TableColumns found = columns.get(block);
      if (block.fraction || found == null) {
        continue;
      }
      TableColumns first = main;
      if (first == null) {
        main = found;
      } else if (!isLike(first, found)) {
        add(
            block.line,
            "this block",
            "differs from the first main block in unit or kind of column",
            "write both alike");
      }
      entries.addAll(new BlockRows(found, dialect, table.problems).read(block.content));
    }
    return entries;
  }

  private static boolean isLike(TableColumns a, TableColumns b) {
    return isUllage(a) == isUllage(b)
        && a.length().unit().equals(b.length().unit())
        && a.volume().unit().equals(b.volume().unit());
  }

  /** Heights above the datum and volumes with the heel, from below. */
  private List<Entry> fromDatum(List<Entry> entries, TableColumns found, TableUnits units) {
    Optional<Double> reference = length(TableDeclaration.REFERENCE_HEIGHT);
    double offset = length(TableDeclaration.DATUM_OFFSET).orElse(0.0);
    double heel = quantity(TableDeclaration.HEEL, Dimension.VOLUME).orElse(0.0);
    if (isUllage(found) && reference.isEmpty()) {
      add(
          table.line,
          "column ullage",
          "has no reference height to be taken from",
          "declare # reference height: or give it as an option");
    }
    double top = PaperSums.tidy(units.height().fromSi(reference.orElse(0.0)));
    List<Entry> rows = new ArrayList<>();
    for (Entry entry : entries) {
      double innage = isUllage(found) ? PaperSums.sum(top, -entry.height()) : entry.height();
      double height = PaperSums.sum(innage, PaperSums.tidy(units.height().fromSi(offset)));
      Entry row =
          new Entry(
              entry.line(),
              height,
              PaperSums.sum(entry.volume(), PaperSums.tidy(units.volume().fromSi(heel))));
      written.put(row, entry);
      rows.add(row);
    }
    if (rows.size() > 1 && rows.get(0).height() > rows.get(rows.size() - 1).height()) {
      Collections.reverse(rows);
    }
    return rows;
  }

  private Optional<Double> length(TableDeclaration declaration) {
    return quantity(declaration, Dimension.LENGTH);
  }

  private Optional<Double> quantity(TableDeclaration declaration, Dimension dimension) {
    return text.find(declaration, table)
        .flatMap(found -> found.quantity(declaration, dimension, table.problems));
  }

  /** Adds to a problem how its value stands in the file. */
  private TableProblem asWritten(
      TableProblem problem, List<Entry> rows, TableColumns found, TableUnits units) {
    for (Entry row : rows) {
      Entry was = written.getOrDefault(row, row);
      if (row.line() != problem.line()) {
        continue;
      }
      if (problem.value().equals(units.heightText(row.height())) && was.height() != row.height()) {
        return noting(problem, found.length().name(), was.height());
      }
      if (problem.value().equals(units.volumeText(row.volume())) && was.volume() != row.volume()) {
        return noting(problem, "volume", was.volume());
      }
    }
    return problem;
  }

  private static TableProblem noting(TableProblem problem, String name, double value) {
    String note = String.format(Locale.ROOT, "%s (written as %s %s)", problem.value(), name, value);
    return new TableProblem(problem.line(), note, problem.rule(), problem.fix());
  }

  private void add(int line, String value, String rule, String fix) {
    table.problems.add(new TableProblem(line, value, rule, fix));
  }
}
