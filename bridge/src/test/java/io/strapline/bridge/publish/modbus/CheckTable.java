package io.strapline.bridge.publish.modbus;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Reads a CSV file of check values (RFC 4180) that lies beside the tests. */
final class CheckTable {

  private CheckTable() {}

  /**
   * A row.
   *
   * @param cells text by column name
   */
  record Row(Map<String, String> cells) {
    String get(String column) {
      return Objects.requireNonNull(cells.get(column), column);
    }
  }

  /** Returns the rows of a file. */
  static List<Row> rows(String file) {
    List<List<String>> lines = lines(text(file));
    List<String> header = lines.get(0);
    List<Row> rows = new ArrayList<>();
    for (List<String> line : lines.subList(1, lines.size())) {
      Map<String, String> row = new LinkedHashMap<>();
      for (int i = 0; i < header.size(); i++) {
        row.put(header.get(i), line.get(i));
      }
      rows.add(new Row(row));
    }
    return rows;
  }

  private static String text(String file) {
    try (InputStream in =
        Objects.requireNonNull(CheckTable.class.getResourceAsStream(file), file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }

  private static List<List<String>> lines(String text) {
    List<List<String>> lines = new ArrayList<>();
    List<String> line = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (char c : text.replace("\r\n", "\n").toCharArray()) {
      if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        line.add(cell.toString());
        cell.setLength(0);
      } else if (c == '\n' && !quoted) {
        line.add(cell.toString());
        cell.setLength(0);
        lines.add(line);
        line = new ArrayList<>();
      } else {
        cell.append(c);
      }
    }
    return lines;
  }
}
