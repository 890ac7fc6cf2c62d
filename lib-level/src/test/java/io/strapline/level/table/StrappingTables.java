package io.strapline.level.table;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import java.util.ArrayList;
import java.util.List;

/** The tables of the check file, by their letter. */
final class StrappingTables {

  static final List<String> LETTERS = List.of("A", "B", "C", "D", "E");

  private StrappingTables() {}

  static List<CapacityRow> rows(String letter) {
    List<CapacityRow> rows = new ArrayList<>();
    for (CsvRow row : CsvRows.read(StrappingTables.class, "strapping_tables.csv")) {
      if (row.text("table_id").equals(letter)) {
        rows.add(new CapacityRow(rows.size() + 1, row.number("level_m"), row.number("volume_m3")));
      }
    }
    return rows;
  }

  static CapacityTable table(String letter, Interpolation interpolation) {
    return CapacityTable.of(letter, rows(letter), interpolation);
  }
}
