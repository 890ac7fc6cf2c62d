package io.strapline.bridge.cli;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Lines up columns of text. Not thread-safe. */
final class TextTable {

  private static final String GAP = "  ";

  private final List<List<String>> rows = new ArrayList<>();

  /** Adds a row; missing cells at its end stay empty. */
  void row(String... cells) {
    rows.add(List.of(cells));
  }

  /** Returns the lines, columns as wide as their widest cell, no blanks at line ends. */
  List<String> lines() {
    List<Integer> widths = widths();
    return rows.stream().map(row -> line(row, widths)).toList();
  }

  private List<Integer> widths() {
    int columns = rows.stream().mapToInt(List::size).max().orElse(0);
    List<Integer> widths = new ArrayList<>(Collections.nCopies(columns, 0));
    for (List<String> row : rows) {
      for (int i = 0; i < row.size(); i++) {
        widths.set(i, Math.max(widths.get(i), row.get(i).length()));
      }
    }
    return widths;
  }

  private static String line(List<String> row, List<Integer> widths) {
    StringBuilder line = new StringBuilder();
    for (int i = 0; i < row.size(); i++) {
      String cell = row.get(i);
      line.append(cell).append(" ".repeat(widths.get(i) - cell.length())).append(GAP);
    }
    return line.toString().stripTrailing();
  }
}
