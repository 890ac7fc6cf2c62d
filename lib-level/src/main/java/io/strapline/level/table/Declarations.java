package io.strapline.level.table;

import io.strapline.level.table.TableLines.Line;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What the comments above a table's header declare. Immutable. */
record Declarations(Map<String, Character> marks) {

  private static final String SEPARATOR = "separator";
  private static final String DECIMAL = "decimal";
  private static final String GROUPING = "grouping";

  private static final Pattern DECLARATION =
      Pattern.compile("#\\s*(separator|decimal|grouping)\\s*:\\s*(.*)", Pattern.CASE_INSENSITIVE);

  private static final Map<String, Map<String, Character>> CHOICES =
      Map.of(
          SEPARATOR, Map.of("semicolon", ';', "tab", '\t', "comma", ','),
          DECIMAL, Map.of("point", '.', "comma", ','),
          GROUPING, Map.of("none", TableDialect.NONE, "point", '.', "comma", ',', "blank", ' '));

  static Declarations of(TableLines lines, List<TableProblem> problems) {
    Map<String, Character> marks = new HashMap<>();
    for (Line line : lines.commentsAbove()) {
      Matcher matcher = DECLARATION.matcher(line.text());
      if (matcher.matches()) {
        declare(marks, matcher, line, problems);
      }
    }
    for (Line line : lines.commentsBelow()) {
      if (DECLARATION.matcher(line.text()).matches()) {
        problems.add(
            problem(line, "stands below the header", "move it above the header: it holds for all"));
      }
    }
    return new Declarations(Map.copyOf(marks));
  }

  private static void declare(
      Map<String, Character> marks, Matcher matcher, Line line, List<TableProblem> problems) {
    String key = matcher.group(1).toLowerCase(Locale.ROOT);
    Map<String, Character> choices = CHOICES.getOrDefault(key, Map.of());
    Character mark = choices.get(matcher.group(2).strip().toLowerCase(Locale.ROOT));
    if (mark == null) {
      List<String> names = choices.keySet().stream().sorted().toList();
      problems.add(
          problem(line, "names no known mark", "write one of " + String.join(", ", names)));
    } else if (marks.put(key, mark) != null) {
      problems.add(problem(line, "declares " + key + " a second time", "remove one of the two"));
    }
  }

  /** Returns the mark of a name, such as semicolon for a separator; empty when there is none. */
  static Optional<Character> mark(TableDeclaration declaration, String name) {
    Map<String, Character> choices = CHOICES.getOrDefault(declaration.key(), Map.of());
    return Optional.ofNullable(choices.get(name.strip().toLowerCase(Locale.ROOT)));
  }

  /** Returns the names of a declaration's marks. */
  static String names(TableDeclaration declaration) {
    return CHOICES.getOrDefault(declaration.key(), Map.of()).keySet().stream()
        .sorted()
        .collect(Collectors.joining(", "));
  }

  private static TableProblem problem(Line line, String rule, String fix) {
    return new TableProblem(line.number(), line.text(), rule, fix);
  }

  Optional<Character> separator() {
    return Optional.ofNullable(marks.get(SEPARATOR));
  }

  Optional<Character> decimal() {
    return Optional.ofNullable(marks.get(DECIMAL));
  }

  Optional<Character> grouping() {
    return Optional.ofNullable(marks.get(GROUPING));
  }
}
