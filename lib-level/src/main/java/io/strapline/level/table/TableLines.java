package io.strapline.level.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The lines of a table's text by their kind. Immutable. */
record TableLines(List<Line> commentsAbove, List<Line> commentsBelow, List<Line> content) {

  private static final String BYTE_ORDER_MARK = "\uFEFF";

  /**
   * A line.
   *
   * @param number from 1
   * @param text without its end
   */
  record Line(int number, String text) {}

  static TableLines of(String text) {
    List<Line> above = new ArrayList<>();
    List<Line> below = new ArrayList<>();
    List<Line> content = new ArrayList<>();
    for (Line line : numbered(text)) {
      if (line.text().strip().startsWith("#")) {
        (content.isEmpty() ? above : below).add(new Line(line.number(), line.text().strip()));
      } else if (!line.text().isBlank()) {
        content.add(line);
      }
    }
    return new TableLines(List.copyOf(above), List.copyOf(below), List.copyOf(content));
  }

  /** Returns all lines, numbered. */
  static List<Line> numbered(String text) {
    List<Line> lines = new ArrayList<>();
    for (String line : withoutMark(text).lines().toList()) {
      lines.add(new Line(lines.size() + 1, line));
    }
    return lines;
  }

  private static String withoutMark(String text) {
    return text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
  }

  Optional<Line> header() {
    return content.isEmpty() ? Optional.empty() : Optional.of(content.get(0));
  }

  List<Line> rows() {
    return content.isEmpty() ? content : content.subList(1, content.size());
  }
}
