package io.strapline.bridge.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Tables as one HTML page that needs nothing else: no script, no style sheet or font from
 * elsewhere. Readable by keyboard and screen reader, at any width, on paper, in light and dark.
 * Stateless.
 */
final class SheetPage {

  private static final Map<String, String> TITLES =
      Map.of(
          "registers", "Modbus registers",
          "discreteInputs", "Modbus discrete inputs and coils",
          "nodes", "OPC UA variables");

  private static final String HEAD =
      """
      <!DOCTYPE html>
      <html lang="en">
      <head>
      <meta charset="utf-8">
      <meta name="viewport" content="width=device-width, initial-scale=1">
      <title>@PLANT@: registers and variables</title>
      <style>
      :root { color-scheme: light dark; }
      body { font: 1rem/1.5 system-ui, sans-serif; margin: 1rem auto; max-width: 90rem; padding: 0 1rem; }
      nav ul { display: flex; flex-wrap: wrap; gap: .25rem 1.25rem; list-style: none; padding: 0; }
      h2 { margin-top: 2.5rem; }
      .wide { overflow-x: auto; }
      .wide:focus-visible, a:focus-visible { outline: 3px solid #1a5fb4; outline-offset: 2px; }
      table { border-collapse: collapse; font-size: .9rem; width: 100%; }
      caption { text-align: left; padding: .4rem 0; }
      th, td { border-bottom: 1px solid #8888; padding: .3rem .6rem; text-align: left; vertical-align: top; }
      thead th { background: Canvas; border-bottom: 2px solid; position: sticky; top: 0; white-space: nowrap; }
      tbody { scroll-margin-top: 3rem; }
      tbody + tbody tr:first-child td { border-top: 2px solid; }
      @media (min-width: 80rem) { .wide { overflow: visible; } }
      @media (max-width: 80rem) { td:last-child { min-width: 14rem; } }
      .number { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap; }
      tbody tr:nth-child(even) { background: #8881; }
      @media print { nav { display: none; } .wide { overflow: visible; } thead { display: table-header-group; } tr { break-inside: avoid; } body { max-width: none; } table { font-size: .65rem; } }
      </style>
      </head>
      <body>
      """;

  private SheetPage() {}

  /** Returns the page of a plant. */
  static String of(String plant, List<Sheet> sheets) {
    StringBuilder page = new StringBuilder(HEAD.replace("@PLANT@", escaped(plant)));
    page.append("<header><h1>").append(escaped(plant)).append(": registers and variables</h1>\n");
    page.append(
            "<p>Addresses are PDU addresses, counted from 0; reference numbers (300001, 400001,")
        .append(" 100001, 000001) count from 1. A value is the register's number times its step.")
        .append("</p></header>\n");
    navigation(page, sheets);
    page.append("<main>\n");
    sheets.forEach(sheet -> section(page, sheet));
    return page.append("</main>\n</body>\n</html>\n").toString();
  }

  private static void navigation(StringBuilder page, List<Sheet> sheets) {
    page.append("<nav aria-label=\"Tables\"><ul>\n");
    for (Sheet sheet : sheets) {
      page.append("<li><a href=\"#").append(sheet.name()).append("\">").append(title(sheet));
      page.append("</a></li>\n");
    }
    page.append("</ul></nav>\n");
  }

  private static void section(StringBuilder page, Sheet sheet) {
    String id = sheet.name();
    page.append("<section aria-labelledby=\"").append(id).append("\">\n<h2 id=\"").append(id);
    page.append("\">").append(title(sheet)).append("</h2>\n");
    pointLinks(page, sheet);
    // A region that scrolls must be reachable by keyboard.
    page.append("<div class=\"wide\" role=\"region\" tabindex=\"0\" aria-labelledby=\"");
    page.append(id).append("\">\n<table>\n<caption>").append(sheet.rows().size());
    page.append(" rows</caption>\n<thead><tr>");
    sheet
        .columns()
        .forEach(c -> page.append("<th scope=\"col\">").append(escaped(c)).append("</th>"));
    page.append("</tr></thead>\n");
    groups(sheet).forEach((name, rows) -> body(page, anchor(sheet, name), rows));
    page.append("</table>\n</div>\n</section>\n");
  }

  /** Rows of one point are a group of their own, that a link leads to. */
  private static Map<String, List<List<Object>>> groups(Sheet sheet) {
    boolean byPoint = sheet.columns().get(0).equals("point");
    Map<String, List<List<Object>>> groups = new LinkedHashMap<>();
    for (List<Object> row : sheet.rows()) {
      String name = byPoint ? row.get(0).toString() : "all";
      groups.computeIfAbsent(name, key -> new ArrayList<>()).add(row);
    }
    return groups;
  }

  private static String anchor(Sheet sheet, String group) {
    return escaped(sheet.name() + "-" + group);
  }

  private static void pointLinks(StringBuilder page, Sheet sheet) {
    Map<String, List<List<Object>>> groups = groups(sheet);
    if (groups.size() < 2) {
      return;
    }
    page.append("<nav aria-label=\"").append(title(sheet)).append(" by point\"><ul>\n");
    for (String group : groups.keySet()) {
      page.append("<li><a href=\"#").append(anchor(sheet, group)).append("\">");
      page.append(escaped(group)).append("</a></li>\n");
    }
    page.append("</ul></nav>\n");
  }

  private static void body(StringBuilder page, String anchor, List<List<Object>> rows) {
    page.append("<tbody id=\"").append(anchor).append("\">\n");
    rows.forEach(row -> row(page, row));
    page.append("</tbody>\n");
  }

  private static void row(StringBuilder page, List<Object> cells) {
    page.append("<tr>");
    for (Object cell : cells) {
      String text = escaped(SheetFormat.cell(cell));
      page.append(cell instanceof Number ? "<td class=\"number\">" : "<td>").append(text);
      page.append("</td>");
    }
    page.append("</tr>\n");
  }

  private static String title(Sheet sheet) {
    return TITLES.getOrDefault(sheet.name(), escaped(sheet.name()));
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
