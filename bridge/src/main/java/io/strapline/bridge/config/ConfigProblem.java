package io.strapline.bridge.config;

import java.nio.file.Path;
import java.util.Comparator;

/**
 * One thing that is wrong, or doubtful, in a configuration file. Immutable.
 *
 * @param file the file that holds it
 * @param line from 1; 0 when the problem has no place in the file
 * @param column from 1; 0 when the problem has no place in the line
 * @param key path of the key, such as {@code points.LT-101.range.at-4mA}; empty for the whole file
 * @param value what stands there; empty when nothing does
 * @param reason kind of problem
 * @param rule what the value breaks
 * @param fix what to do
 */
public record ConfigProblem(
    Path file,
    int line,
    int column,
    String key,
    String value,
    Reason reason,
    String rule,
    String fix) {

  /** Kinds of problem. */
  public enum Reason {
    /** Something that has no default is not given. */
    MISSING,
    /** A key that means nothing here. */
    UNKNOWN_KEY,
    /** Not readable as what it must be. */
    MALFORMED,
    /** Readable, but not allowed. */
    OUT_OF_RANGE,
    /** Contradicts something else in the file. */
    CONFLICT
  }

  /** Order of the file: by line, then by column. */
  static final Comparator<ConfigProblem> BY_PLACE =
      Comparator.comparing((ConfigProblem problem) -> problem.file().toString())
          .thenComparingInt(ConfigProblem::line)
          .thenComparingInt(ConfigProblem::column);

  /** Returns {@code file:line:column key: value: rule; fix}, without the parts that are empty. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder(file.toString());
    if (line > 0) {
      text.append(':').append(line);
    }
    if (column > 0) {
      text.append(':').append(column);
    }
    text.append(key.isEmpty() ? ":" : " " + key + ":");
    if (!value.isEmpty()) {
      text.append(' ').append(value).append(':');
    }
    return text.append(' ').append(rule).append("; ").append(fix).toString();
  }
}
