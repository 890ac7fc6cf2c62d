package io.strapline.level.table;

import java.util.List;

/**
 * One capacity table of a delivered file, put together from its blocks. Immutable.
 *
 * @param name as declared, or the file's
 * @param rows in metres above the vessel's datum and cubic metres, in order of height, the parts of
 *     fraction blocks added; empty when there are problems. A row's line is that of its main row
 * @param problems all that is wrong with this table, by line; line 0 is an option
 */
public record DeliveredTable(String name, List<CapacityRow> rows, List<TableProblem> problems) {

  /** Copies the lists. */
  public DeliveredTable {
    rows = List.copyOf(rows);
    problems = List.copyOf(problems);
  }

  /**
   * Returns the table, ready for use.
   *
   * @throws CapacityTableException listing every problem
   */
  public CapacityTable capacityTable(Interpolation interpolation) {
    if (!problems.isEmpty()) {
      throw new CapacityTableException(name, problems);
    }
    return CapacityTable.of(name, rows, interpolation);
  }
}
