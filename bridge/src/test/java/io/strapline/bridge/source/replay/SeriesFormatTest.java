package io.strapline.bridge.source.replay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.SourceSettings.ReplayFormat;
import io.strapline.bridge.config.SourceSettings.ValueColumn;
import io.strapline.bridge.testing.Refused;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SeriesFormatTest {

  private static SeriesFormat format(char decimal, @Nullable String pattern, String zone) {
    ValueColumn value = new ValueColumn("value", 0.001);
    return new SeriesFormat(
        new ReplayFormat(';', decimal, "time", Optional.ofNullable(pattern), zone, value));
  }

  private static final SeriesFormat POINT = format('.', null, "UTC");
  private static final SeriesFormat COMMA = format(',', "dd.MM.yyyy HH:mm:ss", "Europe/Berlin");

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"20,33|0.02033", " 1 |0.001", "-4,5|-0.0045", "+,5|0.0005", "1e3|1", "0|0"})
  void readsADecimalComma(String cell, double expected) {
    assertEquals(expected, COMMA.value(cell).orElseThrow(), 1e-15);
  }

  /** Each of these has become a wrong number in some import; none may here. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "20.33",
        "1.355,90",
        "1 355,9",
        "1,2,3",
        "NaN",
        "Infinity",
        "1e999",
        "-",
        "0x10",
        "12 mm",
        "1d",
        "",
        "n/a",
        "\u0661"
      })
  void refusesWhatIsNoNumberWithADecimalComma(String cell) {
    assertEquals(OptionalDouble.empty(), COMMA.value(cell));
  }

  @ParameterizedTest
  @ValueSource(strings = {"20,33", "1,355.90", "1.355.90", "NaN", "-Infinity", "1e400"})
  void refusesWhatIsNoNumberWithADecimalPoint(String cell) {
    assertEquals(OptionalDouble.empty(), POINT.value(cell));
  }

  @ParameterizedTest
  @CsvSource({
    "2012-09-24 15:00:00, 2012-09-24T15:00:00Z",
    "2012-09-24T15:00:00, 2012-09-24T15:00:00Z",
    "2012-09-24T15:00, 2012-09-24T15:00:00Z",
    "2012-09-24T15:00:00.250Z, 2012-09-24T15:00:00.250Z",
    "2012-09-24T15:00:00+02:00, 2012-09-24T13:00:00Z",
    "2012-09-24, 2012-09-24T00:00:00Z"
  })
  void readsTheFormsOfIso8601(String cell, Instant expected) {
    assertEquals(expected, POINT.time(cell, null));
  }

  @Test
  void readsAPatternInItsZone() {
    assertEquals(Instant.parse("2014-01-09T13:30:19Z"), COMMA.time("09.01.2014 14:30:19", null));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "31.02.2014 00:00:00",
        "9.1.2014 14:30:19",
        "09.01.14 14:30:19",
        "",
        "yesterday",
        "09.01.2014 24:30:19",
        "2014-01-09 14:30:19"
      })
  void refusesATimeOfAnotherFormAndADayThatDoesNotExist(String cell) {
    assertThrows(DateTimeException.class, () -> COMMA.time(cell, null));
  }

  /** 31 October 2021, Berlin: summer time ends at 03:00 CEST (01:00 UTC) and 02:00 comes again. */
  @Test
  void theHourThatComesTwiceInAutumnIsReadTwice() {
    Instant first = COMMA.time("31.10.2021 02:30:00", null);
    assertEquals(Instant.parse("2021-10-31T00:30:00Z"), first);
    Instant last = COMMA.time("31.10.2021 02:59:00", first);
    assertEquals(Instant.parse("2021-10-31T00:59:00Z"), last);
    assertEquals(Instant.parse("2021-10-31T01:30:00Z"), COMMA.time("31.10.2021 02:30:00", last));
  }

  @Test
  void namesAPatternOrZoneThatDoesNotExist() {
    String pattern =
        Refused.message(IllegalArgumentException.class, () -> format('.', "dd.MM.bogus", "UTC"));
    assertTrue(pattern.startsWith("ReplayFormat.timePattern = dd.MM.bogus: "), pattern);
    String zone =
        Refused.message(IllegalArgumentException.class, () -> format('.', null, "Quay/West"));
    assertTrue(zone.startsWith("ReplayFormat.timeZone = Quay/West: "), zone);
  }
}
