package io.strapline.bridge.testing;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
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
      return rows(reader.lines().map(CheckValues::cells).toList());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Returns the rows of a file, each by the names of its columns. */
  public static List<Row> rows(Path file) {
    try {
      return rows(Files.readAllLines(file).stream().map(CheckValues::cells).toList());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<Row> rows(List<List<String>> lines) {
    return lines.stream().skip(1).map(cells -> row(lines.get(0), cells)).toList();
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

    /** Returns a cell as a number; an empty cell is 0. */
    public double number(String column) {
      String cell = get(column);
      return cell.isEmpty() ? 0 : Double.parseDouble(cell);
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
