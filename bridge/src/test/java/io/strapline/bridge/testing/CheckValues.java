package io.strapline.bridge.testing;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Reads tables of check values, CSV files with a header that lie beside a test. Stateless. */
public final class CheckValues {

  private CheckValues() {}

  /** Returns the rows, each by the names of its columns. */
  public static List<Row> rows(Class<?> test, String file) {
    InputStream in = Objects.requireNonNull(test.getResourceAsStream(file), file);
    try (BufferedReader reader =
        new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      List<List<String>> lines = reader.lines().map(CheckValues::cells).toList();
      return lines.stream().skip(1).map(cells -> row(lines.get(0), cells)).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * One row. Immutable.
   *
   * @param cells by the name of their column
   */
  public record Row(Map<String, String> cells) {

    /** Returns a cell; fails when there is no such column. */
    public String get(String column) {
      return Objects.requireNonNull(cells.get(column), column);
    }
  }

  private static Row row(List<String> header, List<String> cells) {
    Map<String, String> row = new LinkedHashMap<>();
    for (int i = 0; i < header.size(); i++) {
      row.put(header.get(i), i < cells.size() ? cells.get(i) : "");
    }
    return new Row(row);
  }

  private static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char letter = line.charAt(i);
      if (letter == '"') {
        quoted = !quoted;
      } else if (letter == ',' && !quoted) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else {
        cell.append(letter);
      }
    }
    cells.add(cell.toString());
    return cells;
  }
}
