package io.strapline.bridge.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** How tables are printed. */
enum SheetFormat {
  /** Columns for people. */
  TEXT {
    @Override
    String render(List<Sheet> sheets) {
      return sheets.stream().map(SheetFormat::text).collect(Collectors.joining("\n"));
    }
  },
  /** RFC 4180, each table with its own header line. */
  CSV {
    @Override
    String render(List<Sheet> sheets) {
      return sheets.stream().map(SheetFormat::csv).collect(Collectors.joining("\n"));
    }
  },
  /** A Markdown table. */
  MARKDOWN {
    @Override
    String render(List<Sheet> sheets) {
      return sheets.stream().map(SheetFormat::markdown).collect(Collectors.joining("\n"));
    }
  },
  /** One object with a list of objects for each table. */
  JSON {
    @Override
    String render(List<Sheet> sheets) {
      return json(sheets);
    }
  };

  /** Returns the tables as one text that ends with a line break. */
  abstract String render(List<Sheet> sheets);

  private static String text(Sheet sheet) {
    List<List<String>> lines = lines(sheet);
    List<Integer> widths = new ArrayList<>();
    for (int i = 0; i < sheet.columns().size(); i++) {
      int column = i;
      widths.add(lines.stream().mapToInt(line -> line.get(column).length()).max().orElse(0));
    }
    StringBuilder text = new StringBuilder();
    for (List<String> line : lines) {
      StringBuilder row = new StringBuilder();
      for (int i = 0; i < widths.size(); i++) {
        String cell = line.get(i);
        row.append(cell).append(" ".repeat(widths.get(i) - cell.length() + 2));
      }
      text.append(row.toString().stripTrailing()).append('\n');
    }
    return text.toString();
  }

  private static String csv(Sheet sheet) {
    StringBuilder text = new StringBuilder();
    for (List<String> line : lines(sheet)) {
      text.append(line.stream().map(SheetFormat::quoted).collect(Collectors.joining(",")));
      text.append("\r\n");
    }
    return text.toString();
  }

  private static String quoted(String cell) {
    boolean plain = cell.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
    return plain ? cell : '"' + cell.replace("\"", "\"\"") + '"';
  }

  private static String markdown(Sheet sheet) {
    StringBuilder text = new StringBuilder();
    List<List<String>> lines = lines(sheet);
    for (int i = 0; i < lines.size(); i++) {
      text.append(
          lines.get(i).stream()
              .map(cell -> cell.replace("|", "\\|"))
              .collect(Collectors.joining(" | ", "| ", " |\n")));
      text.append(i == 0 ? "|--".repeat(sheet.columns().size()) + "|\n" : "");
    }
    return text.toString();
  }

  private static String json(List<Sheet> sheets) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
      json.useDefaultPrettyPrinter();
      json.writeStartObject();
      for (Sheet sheet : sheets) {
        json.writeArrayFieldStart(sheet.name());
        for (List<Object> row : sheet.rows()) {
          object(json, sheet.columns(), row);
        }
        json.writeEndArray();
      }
      json.writeEndObject();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return text + "\n";
  }

  private static void object(JsonGenerator json, List<String> columns, List<Object> row)
      throws IOException {
    json.writeStartObject();
    for (int i = 0; i < columns.size(); i++) {
      if (row.get(i) instanceof Number number) {
        json.writeFieldName(columns.get(i));
        json.writeNumber(plain(number));
      } else {
        json.writeStringField(columns.get(i), row.get(i).toString());
      }
    }
    json.writeEndObject();
  }

  private static List<List<String>> lines(Sheet sheet) {
    List<List<String>> lines = new ArrayList<>();
    lines.add(sheet.columns());
    for (List<Object> row : sheet.rows()) {
      lines.add(row.stream().map(SheetFormat::cell).toList());
    }
    return lines;
  }

  /** Returns the text of a cell, numbers without an exponent. */
  static String cell(Object cell) {
    return cell instanceof Number number ? plain(number) : cell.toString();
  }

  private static String plain(Number number) {
    return new BigDecimal(number.toString()).stripTrailingZeros().toPlainString();
  }
}
