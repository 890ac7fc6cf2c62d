package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.bridge.config.SourceSettings.Pace;
import io.strapline.bridge.config.SourceSettings.Replay;
import io.strapline.bridge.config.SourceSettings.ReplayFormat;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.bridge.config.SourceSettings.ValueColumn;
import io.strapline.level.units.Dimension;
import io.strapline.level.units.Quantities;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;

/** Reads a recorded series. Stateless. */
final class ReplayReader {

  private ReplayReader() {}

  /** Returns the series; empty when it has a problem. */
  static Optional<SourceSettings> read(Section section) {
    Signal signal = section.choice("signal", Labels.all(Signal.class));
    Optional<Path> file = FileReader.file(section, "file", "the CSV file of the series");
    Separator separator =
        section.choiceOr("separator", Labels.all(Separator.class), Separator.COMMA);
    Decimal decimal = section.choiceOr("decimal", Labels.all(Decimal.class), Decimal.POINT);
    if (separator == Separator.COMMA && decimal == Decimal.COMMA) {
      section.error(
          "decimal",
          Reason.CONFLICT,
          "is the separator between the columns too",
          "say which other separator the file has, such as separator: semicolon");
    }
    Optional<Section> time =
        section.requiredSection("time", Keys.TIME_COLUMN, "the header of the time column");
    Optional<ValueColumn> value =
        section
            .requiredSection("value", Keys.VALUE_COLUMN, "the header and unit of the value column")
            .flatMap(keys -> valueColumn(keys, signal));
    Pace pace = section.choiceOr("pace", Labels.all(Pace.class), Pace.RECORDED);
    Optional<ReplayFormat> format = time.flatMap(keys -> format(keys, separator, decimal, value));
    return section.build(() -> new Replay(signal, file.orElseThrow(), format.orElseThrow(), pace));
  }

  private static Optional<ReplayFormat> format(
      Section time, Separator separator, Decimal decimal, Optional<ValueColumn> value) {
    String column = time.text("column", "the header of the time column");
    Optional<String> pattern = time.scalar("pattern").map(Scalar::text);
    String zone = time.textOr("zone", "UTC");
    refuseBadTime(time, pattern, zone);
    return value.isEmpty()
        ? Optional.empty()
        : time.build(
            () ->
                new ReplayFormat(
                    separator.letter, decimal.letter, column, pattern, zone, value.get()));
  }

  private static void refuseBadTime(Section time, Optional<String> pattern, String zone) {
    pattern
        .flatMap(ReplayReader::patternFault)
        .ifPresent(
            fault ->
                time.error(
                    "pattern",
                    Reason.MALFORMED,
                    "is no pattern of dates (" + fault + ")",
                    "write a pattern such as yyyy-MM-dd HH:mm:ss"));
    if (!isZone(zone)) {
      time.error(
          "zone", Reason.MALFORMED, "is no time zone", "write a zone such as UTC or Europe/Berlin");
    }
  }

  private static Optional<String> patternFault(String pattern) {
    try {
      DateTimeFormatter formatter = DateTimeFormatter.ofPattern(pattern, Locale.ROOT);
      return formatter.toString().isEmpty() ? Optional.of("it is empty") : Optional.empty();
    } catch (IllegalArgumentException unreadable) {
      return Optional.of(String.valueOf(unreadable.getMessage()));
    }
  }

  private static boolean isZone(String zone) {
    try {
      return !ZoneId.of(zone).getId().isEmpty();
    } catch (DateTimeException unknown) {
      return false;
    }
  }

  private static Optional<ValueColumn> valueColumn(Section keys, Signal signal) {
    String column = keys.text("column", "the header of the value column");
    Optional<Dimension> dimension = SourceReader.dimension(signal);
    double toSi = dimension.map(needed -> unit(keys, needed)).orElse(1.0);
    if (dimension.isEmpty() && keys.has("unit")) {
      keys.error("unit", Reason.CONFLICT, "a raw count has no unit", "remove it");
    }
    return keys.build(() -> new ValueColumn(column, toSi));
  }

  private static double unit(Section keys, Dimension dimension) {
    String unit = keys.text("unit", "the unit of the column, such as m or mA");
    try {
      return unit.isEmpty() ? Double.NaN : Quantities.unit(unit, dimension).toSi(1);
    } catch (IllegalArgumentException unknown) {
      LibraryError error = LibraryError.of(unknown);
      keys.error("unit", Reason.MALFORMED, error.rule(), error.fix("write such as m or mA"));
      return Double.NaN;
    }
  }

  private enum Separator {
    COMMA(','),
    SEMICOLON(';'),
    TAB('\t'),
    BLANK(' ');

    private final char letter;

    Separator(char letter) {
      this.letter = letter;
    }
  }

  private enum Decimal {
    POINT('.'),
    COMMA(',');

    private final char letter;

    Decimal(char letter) {
      this.letter = letter;
    }
  }
}
