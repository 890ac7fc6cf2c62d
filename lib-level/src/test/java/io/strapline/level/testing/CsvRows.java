package io.strapline.level.testing;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads a table of check values that lies beside a test: comma-separated, with a header row. */
public final class CsvRows {

  private CsvRows() {}

  /** Reads all rows of {@code name} in the package of {@code test}. */
  public static List<CsvRow> read(Class<?> test, String name) {
    String[] lines = text(test, name).split("\\R", -1);
    List<String> header = cells(lines[0]);
    List<CsvRow> rows = new ArrayList<>();
    for (int i = 1; i < lines.length; i++) {
      if (!lines[i].isBlank()) {
        rows.add(row(header, cells(lines[i])));
      }
    }
    return List.copyOf(rows);
  }

  private static String text(Class<?> test, String name) {
    try (InputStream in = test.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalArgumentException(name + " is not beside " + test.getName());
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static CsvRow row(List<String> header, List<String> cells) {
    if (cells.size() > header.size()) {
      throw new IllegalArgumentException("more cells than columns: " + cells);
    }
    Map<String, String> byColumn = new LinkedHashMap<>();
    for (int i = 0; i < header.size(); i++) {
      byColumn.put(header.get(i), i < cells.size() ? cells.get(i) : "");
    }
    return new CsvRow(byColumn);
  }

  private static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString());
    return cells;
  }
}
