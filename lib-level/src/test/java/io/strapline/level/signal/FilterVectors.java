package io.strapline.level.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Runs the sample-by-sample vectors of {@code filter_vectors.csv}. Its sources stand in its last
 * columns; its outputs are printed with nine decimals.
 */
final class FilterVectors {

  private static final double PRINTED = 0.5e-9 + 1e-12;

  private FilterVectors() {}

  static List<CsvRow> rows() {
    return CsvRows.read(FilterVectors.class, "filter_vectors.csv");
  }

  /** Feeds all rows of a filter, each set of parameters to its own stage; returns their number. */
  static int check(String filter, Function<CsvRow, SignalFilter> maker) {
    Map<String, SignalFilter> stages = new HashMap<>();
    int checked = 0;
    for (CsvRow row : rows()) {
      if (row.text("filter").equals(filter)) {
        SignalFilter stage =
            stages.computeIfAbsent(row.text("parameters"), parameters -> maker.apply(row));
        double output = SignalFilterContract.feed(stage, seconds(row), row.number("input"));
        assertEquals(row.number("output"), output, PRINTED, row::toString);
        checked++;
      }
    }
    return checked;
  }

  private static double seconds(CsvRow row) {
    boolean timed = row.text("parameters").startsWith("Ts=");
    return row.number("sample") * (timed ? parameter(row, "Ts") : 1);
  }

  static Double parameter(CsvRow row, String name) {
    Matcher matcher = Pattern.compile("\\b" + name + "=([0-9.]+)").matcher(row.text("parameters"));
    if (!matcher.find()) {
      throw new IllegalStateException("no " + name + " in " + row);
    }
    return Double.valueOf(matcher.group(1));
  }
}
