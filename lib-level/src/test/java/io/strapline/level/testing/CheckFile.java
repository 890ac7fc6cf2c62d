package io.strapline.level.testing;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Reads a file of check values: comma separated, RFC 4180 quotes, first line the header. */
public final class CheckFile {

  private CheckFile() {}

  /** One line of the file by column. */
  public record Row(int line, Map<String, String> cells) {

    /** Returns the text of a column that must be there. */
    public String text(String column) {
      String text = cells.get(column);
      if (text == null) {
        throw new IllegalArgumentException("no column " + column + " in " + cells.keySet());
      }
      return text;
    }

    /** Returns the number in a column that must be there. */
    public double number(String column) {
      return Double.parseDouble(text(column));
    }

    @Override
    public String toString() {
      return "line " + line + " " + cells;
    }
  }

  /** Reads the resource of this name beside a class; never empty. */
  public static List<Row> read(Class<?> beside, String name) {
    List<List<String>> lines = parse(load(beside, name));
    List<String> header = lines.get(0);
    List<Row> rows = new ArrayList<>();
    for (int i = 1; i < lines.size(); i++) {
      Map<String, String> cells = new HashMap<>();
      for (int column = 0; column < header.size(); column++) {
        cells.put(header.get(column), lines.get(i).get(column));
      }
      rows.add(new Row(i + 1, Map.copyOf(cells)));
    }
    if (rows.isEmpty()) {
      throw new IllegalStateException(name + " holds no row");
    }
    return List.copyOf(rows);
  }

  private static String load(Class<?> beside, String name) {
    try (InputStream in = beside.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("no resource " + name + " beside " + beside);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<List<String>> parse(String text) {
    List<List<String>> lines = new ArrayList<>();
    for (String line : text.lines().toList()) {
      if (!line.isBlank()) {
        lines.add(cells(line));
      }
    }
    return lines;
  }

  private static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == '"' && quoted && i + 1 < line.length() && line.charAt(i + 1) == '"') {
        cell.append(c);
        i++;
      } else if (c == '"') {
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
