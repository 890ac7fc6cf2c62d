package io.strapline.bridge.cli;

import java.util.List;

/**
 * A table to print: every row has a cell, text or number, for every column. Immutable.
 *
 * @param name what the rows are, as a key in JSON
 * @param columns headings
 * @param rows cells
 */
record Sheet(String name, List<String> columns, List<List<Object>> rows) {

  /** Copies the lists. */
  Sheet {
    columns = List.copyOf(columns);
    rows = rows.stream().map(List::copyOf).toList();
  }
}
