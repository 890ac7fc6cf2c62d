package io.strapline.level.table;

import io.strapline.level.table.DeliveredText.Block;
import io.strapline.level.table.DeliveredText.Declared;
import io.strapline.level.table.DeliveredText.Table;
import io.strapline.level.units.Dimension;
import io.strapline.level.units.Quantities;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Puts a delivered table together: main rows, ullage, offset, heel and the parts of fractions. */
final class TableAssembly {

  /** Two heights closer than this are the same height. */
  private static final double SAME_METRES = 1e-9;

  private static final MathContext DIGITS = new MathContext(15);

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
    List<FractionBlock> fractions = fractions(units);
    if (!table.problems.isEmpty()) {
      return List.of();
    }
    List<Entry> all = withParts(fromDatum, fractions, isUllage(found), units);
    table.problems.addAll(fractions.isEmpty() ? List.of() : RowRules.check(all, units));
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
    double top = tidy(units.height().fromSi(reference.orElse(0.0)));
    List<Entry> rows = new ArrayList<>();
    for (Entry entry : entries) {
      double innage = isUllage(found) ? sum(top, -entry.height()) : entry.height();
      double height = sum(innage, tidy(units.height().fromSi(offset)));
      Entry row =
          new Entry(entry.line(), height, sum(entry.volume(), tidy(units.volume().fromSi(heel))));
      written.put(row, entry);
      rows.add(row);
    }
    if (rows.size() > 1 && rows.get(0).height() > rows.get(rows.size() - 1).height()) {
      Collections.reverse(rows);
    }
    return rows;
  }

  /** Adds as on paper, so that 3.2 - 1.2 is 2 in messages too. */
  private static double sum(double a, double b) {
    return BigDecimal.valueOf(a).add(BigDecimal.valueOf(b)).doubleValue();
  }

  /** Drops what converting a unit leaves in the last digits: 9 mm are 0.9 cm. */
  private static double tidy(double converted) {
    return Double.isFinite(converted)
        ? BigDecimal.valueOf(converted).round(DIGITS).doubleValue()
        : converted;
  }

  private Optional<Double> length(TableDeclaration declaration) {
    return quantity(declaration, Dimension.LENGTH);
  }

  private Optional<Double> quantity(TableDeclaration declaration, Dimension dimension) {
    return text.find(declaration, table).flatMap(found -> quantity(declaration, found, dimension));
  }

  private Optional<Double> quantity(
      TableDeclaration declaration, Declared found, Dimension dimension) {
    try {
      return Optional.of(Quantities.parse(found.text(), dimension));
    } catch (IllegalArgumentException notOne) {
      String why = "is not understood: " + notOne.getMessage();
      table.problems.add(found.problem(declaration, why, "write it such as 12.345 m or 350 L"));
      return Optional.empty();
    }
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

  private List<FractionBlock> fractions(TableUnits units) {
    List<FractionBlock> fractions = new ArrayList<>();
    for (Block block : table.blocks) {
      TableColumns found = columns.get(block);
      if (block.fraction && found != null) {
        FractionBlock fraction = fraction(block, found, units);
        for (FractionBlock other : fractions) {
          if (other.overlaps(fraction)) {
            add(
                block.line,
                "this fraction block",
                "serves rows that the one of line " + other.line() + " serves too",
                "declare # from: and # to: so that they meet");
          }
        }
        fractions.add(fraction);
      }
    }
    return fractions;
  }

  private FractionBlock fraction(Block block, TableColumns found, TableUnits units) {
    List<Entry> parts = new ArrayList<>();
    for (Entry entry : new BlockRows(found, dialect, table.problems).read(block.content)) {
      double length = tidy(units.height().fromSi(found.length().unit().toSi(entry.height())));
      double volume = tidy(units.volume().fromSi(found.volume().unit().toSi(entry.volume())));
      Entry before = parts.isEmpty() ? new Entry(0, 0, 0) : parts.get(parts.size() - 1);
      boolean zero = parts.isEmpty() && length == 0 && volume == 0;
      if (!zero && !(length > before.height() && volume >= before.volume())) {
        add(
            entry.line(),
            "part " + entry.height() + ", volume " + entry.volume(),
            "does not rise from the part before",
            "write the parts from the smallest on, each with its whole volume");
      } else if (!zero) {
        parts.add(new Entry(entry.line(), length, volume));
      }
    }
    return new FractionBlock(
        block.line,
        bound(block, TableDeclaration.FROM, units, Double.NEGATIVE_INFINITY),
        bound(block, TableDeclaration.TO, units, Double.POSITIVE_INFINITY),
        parts);
  }

  private double bound(
      Block block, TableDeclaration declaration, TableUnits units, double otherwise) {
    return Optional.ofNullable(block.declared.get(declaration))
        .flatMap(declared -> quantity(declaration, declared, Dimension.LENGTH))
        .map(si -> tidy(units.height().fromSi(si)))
        .orElse(otherwise);
  }

  private List<Entry> withParts(
      List<Entry> rows, List<FractionBlock> fractions, boolean ullage, TableUnits units) {
    List<Entry> all = new ArrayList<>(rows);
    int direction = ullage ? -1 : 1;
    for (int i = 0; i < rows.size(); i++) {
      int next = i + direction;
      if (next >= 0 && next < rows.size()) {
        double base = written.getOrDefault(rows.get(i), rows.get(i)).height();
        for (FractionBlock fraction : fractions) {
          if (fraction.serves(base)) {
            addParts(rows.get(i), rows.get(next), fraction, units, all);
          }
        }
      }
    }
    all.sort(Comparator.comparingDouble(Entry::height));
    return all;
  }

  private void addParts(
      Entry row, Entry next, FractionBlock fraction, TableUnits units, List<Entry> all) {
    double direction = Math.signum(next.height() - row.height());
    double same = units.height().fromSi(SAME_METRES);
    for (Entry part : fraction.parts()) {
      Entry sum =
          new Entry(
              row.line(),
              sum(row.height(), direction * part.height()),
              sum(row.volume(), direction * part.volume()));
      if (direction * (next.height() - sum.height()) < same) {
        return;
      }
      if (direction * (sum.volume() - next.volume()) > 0) {
        addOnce(
            part.line(),
            String.format(
                Locale.ROOT, "part of %s %s", part.volume(), units.volume().asciiSymbol()),
            String.format(
                Locale.ROOT,
                "makes %s at %s, beyond the %s of the next main row (lines %d and %d)",
                units.volumeText(sum.volume()),
                units.heightText(sum.height()),
                units.volumeText(next.volume()),
                row.line(),
                next.line()),
            "check the part's unit and the range of the block");
        return;
      }
      all.add(sum);
    }
  }

  /** A part that is wrong for many rows is one problem. */
  private void addOnce(int line, String value, String rule, String fix) {
    if (table.problems.stream().noneMatch(problem -> problem.line() == line)) {
      add(line, value, rule, fix);
    }
  }

  private void add(int line, String value, String rule, String fix) {
    table.problems.add(new TableProblem(line, value, rule, fix));
  }
}
