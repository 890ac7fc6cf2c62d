package io.strapline.level.loop;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.loop.LoopLimits.Recovery;
import io.strapline.level.reading.Quality;
import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LoopLimitsTest {

  private static final Recovery RECOVERY = new Recovery(0.1, 2);

  static List<CsvRow> currents() {
    return CsvRows.read(LoopLimitsTest.class, "ne43.csv");
  }

  // Band limits: open PLC engineering course, module 14, section 3.1, as named in the file.
  @ParameterizedTest
  @MethodSource("currents")
  void classifiesEveryCurrentOfTheBandTable(CsvRow row) {
    LoopBand band = LoopLimits.NE43.classify(row.number("current_mA"));

    String name =
        band.name().replace("UNDER_RANGE", "UNDERRANGE").replace("OVER_RANGE", "OVERRANGE");
    assertEquals(row.text("band"), name);
    String status = row.text("suggested_status");
    assertEquals(status.startsWith("Bad"), band.isFailure());
    assertEquals(status.startsWith("Good"), band.quality().isGood());
    assertEquals(status.startsWith("Uncertain"), band.quality().level() == Quality.Level.UNCERTAIN);
  }

  @ParameterizedTest
  @ValueSource(doubles = {3.6, 3.8, 4, 20, 20.5, 21})
  void changesTheBandExactlyAtEachLimit(double limit) {
    LoopBand below = LoopLimits.NE43.classify(Math.nextDown(limit));
    LoopBand above = LoopLimits.NE43.classify(Math.nextUp(limit));

    assertNotEquals(below, above, "bands below and above " + limit);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void callsACurrentThatIsNoNumberUndefined(double current) {
    assertEquals(LoopBand.UNDEFINED, LoopLimits.NE43.classify(current));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1e300, -0.001, -0.0, 1e300})
  void neverClampsAnImpossibleCurrent(double current) {
    assertTrue(LoopLimits.NE43.classify(current).isFailure());
  }

  // Devices do not share thresholds: 3.75 and 21.75 mA are met as well.
  @Test
  void usesTheConfiguredLimits() {
    LoopLimits limits = new LoopLimits(3.75, 3.8, 20.5, 21.75, 4, new Recovery(0.05, 2));

    assertEquals(LoopBand.FAILURE_LOW, limits.classify(3.7));
    assertEquals(LoopBand.GAP_HIGH, limits.classify(21.5));
  }

  @Test
  void allowsTheGapsAndTheRangesToMeet() {
    LoopLimits tight = new LoopLimits(0, 4, 20, 20.2, 0, new Recovery(0, 0));

    assertEquals(LoopBand.GAP_LOW, tight.classify(3.9));
    assertEquals(LoopBand.GAP_HIGH, tight.classify(20.1));
  }

  static List<Arrangement> wrongLimits() {
    return List.of(
        new Arrangement("failureLow", -0.1, 3.8, 20.5, 21),
        new Arrangement("failureLow", Double.NaN, 3.8, 20.5, 21),
        new Arrangement("failureLow", Double.NEGATIVE_INFINITY, 3.8, 20.5, 21),
        new Arrangement("underRange", 3.8, 3.8, 20.5, 21),
        new Arrangement("underRange", 3.9, 3.8, 20.5, 21),
        new Arrangement("underRange", 3.6, 4.01, 20.5, 21),
        new Arrangement("underRange", 3.6, Double.NaN, 20.5, 21),
        new Arrangement("underRange", 3.6, Double.POSITIVE_INFINITY, 20.5, 21),
        new Arrangement("overRange", 3.6, 3.8, 19.99, 21),
        new Arrangement("overRange", 3.6, 3.8, 21, 21),
        new Arrangement("overRange", 3.6, 3.8, 21.1, 21),
        new Arrangement("overRange", 3.6, 3.8, Double.NaN, 21),
        new Arrangement("overRange", 3.6, 3.8, Double.POSITIVE_INFINITY, 21),
        new Arrangement("failureHigh", 3.6, 3.8, 20.5, Double.NaN),
        new Arrangement("failureHigh", 3.6, 3.8, 20.5, Double.POSITIVE_INFINITY));
  }

  @ParameterizedTest
  @MethodSource("wrongLimits")
  void refusesLimitsOutOfOrder(Arrangement wrong) {
    assertRefused("LoopLimits." + wrong.field, wrong::limits);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, Double.NaN, Double.POSITIVE_INFINITY})
  void refusesTimesAndHysteresisBelowZeroOrNotFinite(double wrong) {
    assertRefused(
        "LoopLimits.confirmation", () -> new LoopLimits(3.6, 3.8, 20.5, 21, wrong, RECOVERY));
    assertRefused("LoopLimits.recovery.seconds", () -> new Recovery(0.1, wrong));
    assertRefused("LoopLimits.recovery.hysteresis", () -> new Recovery(wrong, 2));
  }

  // 3.8 - 3.6 is a little less than 0.2 in binary: the decimal figures must still be accepted.
  @Test
  void allowsAHysteresisAsWideAsTheNarrowerGap() {
    LoopLimits limits = new LoopLimits(3.6, 3.8, 20.5, 21, 4, new Recovery(0.2, 2));

    assertTrue(limits.recovers(3.8));
    assertTrue(limits.recovers(20.5));
  }

  @Test
  void refusesAHysteresisThatAValidMeasurementCouldNotMeet() {
    assertRefused(
        "LoopLimits.recovery.hysteresis",
        () -> new LoopLimits(3.6, 3.8, 20.5, 21, 4, new Recovery(0.21, 2)));
  }

  // 3.7 and 20.9 mA: SIGNALS rule for the computed sequences, hysteresis 0.1 mA.
  @Test
  void recoversFromTheFailureLimitsByTheHysteresis() {
    assertEquals(
        List.of(false, true, true, false),
        Arrays.asList(3.69, 3.7, 20.9, 20.91).stream().map(LoopLimits.NE43::recovers).toList());
  }

  @Test
  void doesNotRecoverAtTheFailureLimitItselfWithoutHysteresis() {
    LoopLimits limits = new LoopLimits(3.6, 3.8, 20.5, 21, 4, new Recovery(0, 2));

    assertEquals(
        List.of(false, true, true, false),
        Arrays.asList(3.6, 3.61, 20.99, 21.0).stream().map(limits::recovers).toList());
  }

  private record Arrangement(
      String field, double failureLow, double underRange, double overRange, double failureHigh) {

    LoopLimits limits() {
      return new LoopLimits(failureLow, underRange, overRange, failureHigh, 4, RECOVERY);
    }
  }
}
