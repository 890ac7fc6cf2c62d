package io.strapline.level.table;

import io.strapline.level.table.DeliveredText.Block;
import io.strapline.level.table.DeliveredText.Table;
import io.strapline.level.units.Dimension;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads the fraction blocks of a table and adds their parts to its main rows. */
final class FractionParts {

  /** Two heights closer than this are the same height. */
  private static final double SAME_METRES = 1e-9;

  private final Table table;
  private final Map<Block, TableColumns> columns;
  private final TableDialect dialect;
  private final TableUnits units;
  private final List<FractionBlock> fractions = new ArrayList<>();
  private final Set<Entry> used = new HashSet<>();

  FractionParts(
      Table table, Map<Block, TableColumns> columns, TableDialect dialect, TableUnits units) {
    this.table = table;
    this.columns = columns;
    this.dialect = dialect;
    this.units = units;
    read();
  }

  private void read() {
    for (Block block : table.blocks) {
      TableColumns found = columns.get(block);
      if (block.fraction && found != null) {
        FractionBlock fraction = fraction(block, found);
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
  }

  private FractionBlock fraction(Block block, TableColumns found) {
    List<Entry> parts = new ArrayList<>();
    for (Entry entry : new BlockRows(found, dialect, table.problems).read(block.content)) {
      double length =
          PaperSums.tidy(units.height().fromSi(found.length().unit().toSi(entry.height())));
      double volume =
          PaperSums.tidy(units.volume().fromSi(found.volume().unit().toSi(entry.volume())));
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
        bound(block, TableDeclaration.FROM, Double.NEGATIVE_INFINITY),
        bound(block, TableDeclaration.TO, Double.POSITIVE_INFINITY),
        parts);
  }

  private double bound(Block block, TableDeclaration declaration, double otherwise) {
    return Optional.ofNullable(block.declared.get(declaration))
        .flatMap(declared -> declared.quantity(declaration, Dimension.LENGTH, table.problems))
        .map(si -> PaperSums.tidy(units.height().fromSi(si)))
        .orElse(otherwise);
  }

  /**
   * Returns the rows and all that the parts make of them, from below.
   *
   * @param written how each row stands in the file
   * @param direction 1 where parts add to the height, -1 where they add to the ullage
   */
  List<Entry> addTo(List<Entry> rows, Map<Entry, Entry> written, int direction) {
    List<Entry> all = new ArrayList<>(rows);
    for (int i = 0; i < rows.size(); i++) {
      int next = i + direction;
      if (next >= 0 && next < rows.size()) {
        double base = written.getOrDefault(rows.get(i), rows.get(i)).height();
        for (FractionBlock fraction : fractions) {
          if (fraction.serves(base)) {
            addParts(rows.get(i), rows.get(next), fraction, all);
          }
        }
      }
    }
    nameUnused();
    all.sort(Comparator.comparingDouble(Entry::height));
    return all;
  }

  /** A part that no row takes is a slip in its unit or in the range, and is not lost unseen. */
  private void nameUnused() {
    for (FractionBlock fraction : fractions) {
      for (Entry part : fraction.parts()) {
        if (!used.contains(part)) {
          addOnce(
              part.line(),
              units.heightText(part.height()).replace("height", "part"),
              "fits between no two main rows of its range",
              "check the part's unit and the range of the block");
        }
      }
    }
  }

  private void addParts(Entry row, Entry next, FractionBlock fraction, List<Entry> all) {
    double direction = Math.signum(next.height() - row.height());
    double same = units.height().fromSi(SAME_METRES);
    for (Entry part : fraction.parts()) {
      Entry sum =
          new Entry(
              row.line(),
              PaperSums.sum(row.height(), direction * part.height()),
              PaperSums.sum(row.volume(), direction * part.volume()));
      if (direction * (next.height() - sum.height()) < same) {
        return;
      }
      used.add(part);
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
