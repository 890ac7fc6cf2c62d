package io.strapline.level.alarm;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.alarm.AlarmTargets.Flood;
import io.strapline.level.alarm.AlarmTargets.Nuisance;
import io.strapline.level.alarm.AlarmTargets.Rate;
import io.strapline.level.alarm.AlarmTargets.Rating;
import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AlarmTargetsTest {

  private static final AlarmTargets TARGETS = AlarmTargets.ISA_18_2;

  /** The whole numbers in value and note of a row of {@code alarm_defaults.csv}. */
  private static List<Double> numbers(String kind, String item) {
    CsvRow row =
        CsvRows.read(AlarmTargetsTest.class, "alarm_defaults.csv").stream()
            .filter(one -> one.text("kind").equals(kind) && one.text("item").startsWith(item))
            .findFirst()
            .orElseThrow(() -> new IllegalStateException("no row " + item));
    List<Double> numbers = new ArrayList<>();
    Matcher matcher = Pattern.compile("\\d+").matcher(row.text("value") + " " + row.text("note"));
    while (matcher.find()) {
      numbers.add(Double.valueOf(matcher.group()));
    }
    return numbers;
  }

  private static List<Double> rate(Rate rate) {
    return List.of(rate.acceptable(), rate.manageable());
  }

  // alarm_defaults.csv: open PLC engineering course quoting ISA-18.2
  @Test
  void areThoseOfTheTable() {
    assertEquals(numbers("kpi", "annunciated alarms per 10 min"), rate(TARGETS.perTenMinutes()));
    assertEquals(numbers("kpi", "annunciated alarms per hour"), rate(TARGETS.perHour()));
    assertEquals(
        numbers("kpi", "annunciated alarms per day").subList(0, 2), rate(TARGETS.perDay()));
    Flood flood = TARGETS.flood();
    assertEquals(
        List.of(flood.percentOfTime(), (double) flood.above(), 10.0, (double) flood.below(), 10.0),
        numbers("kpi", "time in flood"));
    Nuisance nuisance = TARGETS.nuisance();
    assertEquals(
        List.of((double) nuisance.chatterActivations(), nuisance.chatterSeconds() / 60, 60.0),
        numbers("definition", "chattering"));
    assertEquals(List.of(nuisance.staleSeconds() / 3600), numbers("definition", "stale"));
    assertEquals(List.of((double) nuisance.staleFewerThan()), numbers("kpi", "stale alarms"));
  }

  @ParameterizedTest
  @CsvSource({
    "0, ACCEPTABLE",
    "1, ACCEPTABLE",
    "1.01, MANAGEABLE",
    "2, MANAGEABLE",
    "2.01, TOO_MANY"
  })
  void ratesAtTheEdges(double alarms, Rating rating) {
    assertEquals(rating, TARGETS.perTenMinutes().rate(alarms));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1, 0})
  void refusesNumbersThatAreNoTarget(double wrong) {
    assertRefused("AlarmTargets.rate.acceptable", () -> new Rate(wrong, 5));
    assertRefused("AlarmTargets.rate.manageable", () -> new Rate(1, wrong));
    assertRefused("AlarmTargets.flood.percentOfTime", () -> new Flood(10, 5, wrong));
    assertRefused("AlarmTargets.nuisance.chatterSeconds", () -> new Nuisance(3, wrong, 1, 1));
    assertRefused("AlarmTargets.nuisance.staleSeconds", () -> new Nuisance(3, 1, wrong, 1));
  }

  @Test
  void refusesLimitsOutOfOrder() {
    assertRefused("AlarmTargets.rate.manageable", () -> new Rate(2, 1.999));
    assertRefused("AlarmTargets.flood.above", () -> new Flood(0, 1, 1));
    assertRefused("AlarmTargets.flood.below", () -> new Flood(10, 11, 1));
    assertRefused("AlarmTargets.flood.below", () -> new Flood(10, 0, 1));
    assertRefused("AlarmTargets.flood.percentOfTime", () -> new Flood(10, 5, 100.1));
    assertRefused("AlarmTargets.nuisance.chatterActivations", () -> new Nuisance(1, 60, 60, 1));
    assertRefused("AlarmTargets.nuisance.staleFewerThan", () -> new Nuisance(3, 60, 60, 0));
  }
}
