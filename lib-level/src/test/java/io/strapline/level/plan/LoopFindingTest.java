package io.strapline.level.plan;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.loop.LoopLimits;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.plan.LoopFinding.Tolerance;
import io.strapline.level.plan.LoopFinding.Verdict;
import io.strapline.level.point.Mounting;
import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.units.LengthUnit;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LoopFindingTest {

  private static final Tolerance HALF_PERCENT = new Tolerance(0.5, 0.5);

  private static LoopSides sides(double transmitterTop, double receiverTop) {
    return new LoopSides(
        LoopRange.ofLevel(0, transmitterTop),
        LoopRange.ofLevel(0, receiverTop),
        Mounting.plumb(20),
        LoopLimits.NE43,
        Optional.empty());
  }

  private static LoopFinding find(double reference, double current, OptionalDouble shown) {
    LoopObservation observed = new LoopObservation(reference, current, shown);
    return LoopFinding.of(sides(10, 10), observed, HALF_PERCENT);
  }

  // Field case S2 (pains K4): 0 to 12 ft, tape 9 ft, loop 14 mA, indicator 7.5 ft.
  @Test
  void findsTheTransmitterOfTheFieldCase() {
    CsvRow row =
        CsvRows.read(LoopFindingTest.class, "field_cases.csv").stream()
            .filter(one -> one.text("id").equals("S2"))
            .findFirst()
            .orElseThrow();
    double top = LengthUnit.FOOT.toSi(12);
    LoopObservation observed =
        new LoopObservation(
            LengthUnit.FOOT.toSi(9), 14, OptionalDouble.of(LengthUnit.FOOT.toSi(7.5)));
    LoopFinding finding = LoopFinding.of(sides(top, top), observed, HALF_PERCENT);

    assertTrue(
        row.text("expected").startsWith("ideal 16.000 mA; transmitter error -2.000 mA = -12.5 %"),
        row::toString);
    assertEquals(16, finding.idealMilliamps(), 1e-9);
    assertEquals(-2, finding.transmitterErrorMilliamps(), 1e-9);
    assertEquals(-12.5, finding.transmitterErrorPercent(), 1e-9);
    double expected = finding.receiver().expectedMetres().orElseThrow();
    assertEquals(7.5, LengthUnit.FOOT.fromSi(expected), 1e-9);
    assertEquals(0, finding.receiver().errorMetres().orElseThrow(), 1e-9);
    assertEquals(Verdict.TRANSMITTER_SIDE_AT_FAULT, finding.verdict());
  }

  // 10 m span, 0.5 %: 0.08 mA, 0.05 m. Both edges count as good.
  @ParameterizedTest
  @CsvSource({
    "5, 12, 5, BOTH_SIDES_GOOD",
    "5, 12.0799, 5.049, BOTH_SIDES_GOOD",
    "5, 12.0801, 5.05, TRANSMITTER_SIDE_AT_FAULT",
    "5, 11.9199, 4.95, TRANSMITTER_SIDE_AT_FAULT",
    "5, 12, 5.0499, BOTH_SIDES_GOOD",
    "5, 12, 5.0501, RECEIVER_SIDE_AT_FAULT",
    "5, 12, 4.9499, RECEIVER_SIDE_AT_FAULT",
    "5, 14, 5, BOTH_SIDES_AT_FAULT"
  })
  void separatesTheErrorsOfBothSides(double reference, double current, double shown, Verdict told) {
    assertEquals(told, find(reference, current, OptionalDouble.of(shown)).verdict());
  }

  /** Both errors cancel, so the display agrees with the tape, and yet both sides are wrong. */
  @Test
  void isNotFooledByErrorsThatCancel() {
    LoopFinding finding = find(5, 14, OptionalDouble.of(5));

    assertEquals(12.5, finding.transmitterErrorPercent(), 1e-9);
    assertEquals(-12.5, finding.receiver().errorPercent().orElseThrow(), 1e-9);
  }

  @Test
  void blamesTheReceiverWhoseRangeDiffersFromTheTransmitters() {
    LoopObservation observed = new LoopObservation(5, 12, OptionalDouble.of(4));
    LoopFinding finding = LoopFinding.of(sides(10, 8), observed, HALF_PERCENT);

    assertEquals(Verdict.RECEIVER_SIDE_AT_FAULT, finding.verdict());
    assertEquals(-10, finding.receiver().errorPercent().orElseThrow(), 1e-9);
  }

  @Test
  void wantsAFaultShownAtAFailureCurrentAndOnlyThere() {
    OptionalDouble fault = OptionalDouble.empty();

    assertEquals(Verdict.TRANSMITTER_SIDE_AT_FAULT, find(5, 21.5, fault).verdict());
    assertEquals(Verdict.BOTH_SIDES_AT_FAULT, find(5, 21.5, OptionalDouble.of(10.9)).verdict());
    assertEquals(Verdict.BOTH_SIDES_AT_FAULT, find(5, 3.5, OptionalDouble.of(0)).verdict());
    assertEquals(Verdict.RECEIVER_SIDE_AT_FAULT, find(5, 12, fault).verdict());
    assertTrue(find(5, 21.5, fault).receiver().expectedMetres().isEmpty());
  }

  /** Above its range a transmitter holds 20.5 mA; that is no error. */
  @Test
  void holdsTheIdealCurrentAtTheEndsOfTheMeasuringRange() {
    assertEquals(20.5, find(15, 20.5, OptionalDouble.of(10.3125)).idealMilliamps());
    assertEquals(Verdict.BOTH_SIDES_GOOD, find(15, 20.5, OptionalDouble.of(10.3125)).verdict());
    assertEquals(3.8, find(-3, 3.8, OptionalDouble.of(-0.125)).idealMilliamps());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesWhatIsNotFinite(double wrong) {
    OptionalDouble five = OptionalDouble.of(5);
    assertRefused("LoopObservation.reference", () -> new LoopObservation(wrong, 12, five));
    assertRefused("LoopObservation.current", () -> new LoopObservation(5, wrong, five));
    assertRefused(
        "LoopObservation.shown", () -> new LoopObservation(5, 12, OptionalDouble.of(wrong)));
    assertRefused("LoopFinding.tolerance.transmitter", () -> new Tolerance(wrong, 1));
    assertRefused("LoopFinding.tolerance.receiver", () -> new Tolerance(1, wrong));
  }

  @Test
  void refusesANegativeCurrentAndAToleranceOfNothing() {
    OptionalDouble five = OptionalDouble.of(5);
    assertRefused("LoopObservation.current", () -> new LoopObservation(5, -0.001, five));
    assertRefused("LoopFinding.tolerance.transmitter", () -> new Tolerance(0, 1));
    assertRefused("LoopFinding.tolerance.receiver", () -> new Tolerance(1, 0));
  }
}
