package io.strapline.bridge.source.replay;

import io.strapline.bridge.config.SourceSettings.ReplayFormat;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.time.temporal.TemporalAccessor;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads the cells of a recorded series: strictly, so that {@code 20,33} never becomes 2033 and the
 * 31st of February no other day. Immutable.
 */
final class SeriesFormat {

  private static final DateTimeFormatter ISO =
      new DateTimeFormatterBuilder()
          .append(DateTimeFormatter.ISO_LOCAL_DATE)
          .appendPattern("['T'][' ']")
          .optionalStart()
          .append(DateTimeFormatter.ISO_LOCAL_TIME)
          .optionalEnd()
          .optionalStart()
          .appendOffsetId()
          .optionalEnd()
          .toFormatter(Locale.ROOT)
          .withResolverStyle(ResolverStyle.STRICT);

  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?");

  private final DateTimeFormatter times;
  private final ZoneId zone;
  private final char decimal;
  private final double toSi;

  /**
   * Takes how the file is written.
   *
   * @throws IllegalArgumentException naming a time pattern or zone that does not exist
   */
  SeriesFormat(ReplayFormat format) {
    decimal = format.decimal();
    toSi = format.value().toSi();
    zone = zone(format.timeZone());
    times = format.timePattern().map(SeriesFormat::pattern).orElse(ISO);
  }

  private static ZoneId zone(String name) {
    try {
      return ZoneId.of(name);
    } catch (DateTimeException unknown) {
      throw new IllegalArgumentException(
          "ReplayFormat.timeZone = "
              + name
              + ": is no known time zone; give UTC, an offset such as +01:00, or a name such as"
              + " Europe/Berlin",
          unknown);
    }
  }

  private static DateTimeFormatter pattern(String pattern) {
    try {
      // Strict dates need the proleptic year; "y" is what people write.
      String strict = pattern.contains("G") ? pattern : pattern.replace('y', 'u');
      return DateTimeFormatter.ofPattern(strict, Locale.ROOT)
          .withResolverStyle(ResolverStyle.STRICT);
    } catch (IllegalArgumentException wrong) {
      throw new IllegalArgumentException(
          "ReplayFormat.timePattern = "
              + pattern
              + ": is no date and time pattern ("
              + wrong.getMessage()
              + "); write it such as dd.MM.yyyy HH:mm:ss",
          wrong);
    }
  }

  /** Returns the value in metres, mA or counts; empty when the cell holds no finite number. */
  OptionalDouble value(String cell) {
    String point = cell.strip();
    if (decimal != '.') {
      point = point.indexOf('.') >= 0 ? "" : point.replace(decimal, '.');
    }
    if (!NUMBER.matcher(point).matches()) {
      return OptionalDouble.empty();
    }
    double value = Double.parseDouble(point) * toSi;
    return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  /**
   * Returns the time in a cell. A local time that happens twice, in the hour that is put back in
   * autumn, is the later one if only that does not go back behind {@code previous}.
   *
   * @throws DateTimeException if the cell holds no time of this format
   */
  Instant time(String cell, @Nullable Instant previous) {
    TemporalAccessor parsed =
        times.parseBest(cell.strip(), OffsetDateTime::from, LocalDateTime::from, LocalDate::from);
    if (parsed instanceof OffsetDateTime exact) {
      return exact.toInstant();
    }
    LocalDateTime local =
        parsed instanceof LocalDateTime full ? full : LocalDate.from(parsed).atStartOfDay();
    ZonedDateTime earlier = local.atZone(zone);
    Instant time = earlier.toInstant();
    Instant later = earlier.withLaterOffsetAtOverlap().toInstant();
    return previous != null && time.isBefore(previous) && !later.isBefore(previous) ? later : time;
  }
}
