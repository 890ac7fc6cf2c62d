package io.strapline.level.plan;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.loop.LoopBand;
import io.strapline.level.loop.LoopLimits;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.loop.RawCounts;
import io.strapline.level.plan.LoopCheckProblem.Kind;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.testing.Refusal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LoopCheckTest {

  private static final Mounting MOUNTING = Mounting.plumb(10.5);
  private static final RawCounts NUMBER = new RawCounts(RawCounts.Encoding.NUMBER, 0, 27648);

  private static LoopSides sides(LoopRange transmitter, LoopRange receiver, RawCounts card) {
    return new LoopSides(transmitter, receiver, MOUNTING, LoopLimits.NE43, Optional.of(card));
  }

  private static LoopSides sides(LoopRange transmitter, LoopRange receiver) {
    return new LoopSides(transmitter, receiver, MOUNTING, LoopLimits.NE43, Optional.empty());
  }

  private static LoopSides level(double transmitterTop, double receiverTop) {
    return sides(LoopRange.ofLevel(0, transmitterTop), LoopRange.ofLevel(0, receiverTop));
  }

  private static LoopCheckRow row(LoopCheck check, String name) {
    return check.rows().stream().filter(row -> row.name().equals(name)).findFirst().orElseThrow();
  }

  private static List<Kind> kinds(LoopCheck check) {
    return check.problems().stream().map(LoopCheckProblem::kind).toList();
  }

  static List<CsvRow> bands() {
    return CsvRows.read(LoopCheckTest.class, "ne43.csv");
  }

  // Current, percent, value, band and count: columns of the band table, printed to 0.1 count.
  @ParameterizedTest
  @MethodSource("bands")
  void givesWhatTheBandTableGives(CsvRow expected) {
    double rising = expected.number("value_0_to_10_m");
    double falling = expected.number("value_10_to_0_m");
    LoopRange up = LoopRange.ofLevel(0, 10);
    LoopRange down = LoopRange.ofLevel(10, 0);
    CheckLevel level = new CheckLevel("point", rising);
    LoopCheckRow row = row(LoopCheck.of(sides(up, up, NUMBER), List.of(level)), "point");
    LoopCheckRow mirrored =
        row(
            LoopCheck.of(sides(down, down, NUMBER), List.of(new CheckLevel("point", falling))),
            "point");

    for (LoopCheckRow one : List.of(row, mirrored)) {
      assertEquals(expected.number("current_mA"), one.signal().currentMilliamps(), 1e-9);
      assertEquals(expected.number("percent_of_span"), one.signal().percent(), 1e-9);
      assertEquals(expected.number("raw_0_27648"), one.signal().rawCount().orElseThrow(), 0.0501);
      assertEquals(
          expected.text("band"),
          one.signal().band().name().replace("_RANGE", "RANGE"),
          expected::toString);
      assertEquals(
          one.signal().band().isFailure(), one.shown().levelMetres().isEmpty(), "shows a fault");
    }
  }

  @Test
  void listsPercentsThenLevelsThenFailureLimits() {
    LoopCheck check = LoopCheck.of(level(10, 10), List.of(new CheckLevel(" high-high ", 9)));

    assertEquals(
        List.of(
            "0 %",
            "25 %",
            "50 %",
            "75 %",
            "100 %",
            "high-high",
            "low failure limit",
            "high failure limit"),
        check.rows().stream().map(LoopCheckRow::name).toList());
    assertEquals(
        List.of(4.0, 8.0, 12.0, 16.0, 20.0, 18.4, 3.6, 21.0),
        check.rows().stream().map(row -> row.signal().currentMilliamps()).toList());
    assertEquals(List.of(), check.problems());
    assertEquals(LoopBand.FAILURE_LOW, row(check, "low failure limit").signal().band());
  }

  // Reference 10.5 m, beam 20 degrees off plumb: 9 m of level is 1.5 / cos 20 = 1.596 267 m away.
  @Test
  void joinsDistanceAndLevelByTheMounting() {
    LoopSides tilted =
        new LoopSides(
            LoopRange.ofDistance(11, 1),
            LoopRange.ofDistance(11, 1),
            new Mounting(10.5, 20),
            LoopLimits.NE43,
            Optional.empty());
    LoopCheckRow row = row(LoopCheck.of(tilted, List.of(new CheckLevel("HH", 9))), "HH");

    assertEquals(1.596267, row.surface().distanceMetres(), 1e-6);
    assertEquals(4 + 16 * (11 - 1.596267) / 10, row.signal().currentMilliamps(), 1e-6);
    assertEquals(0, row.shown().errorMetres().orElseThrow(), 1e-9);
  }

  // Pains A7. At 9 m: 18.4 mA, which 0 to 12 m takes for 10.8 m; it shows 9 m at 16 mA, 7.5 m.
  @Test
  void printsTheErrorOfAReceiverWithAWiderRangeAtEachSetPoint() {
    LoopCheck check = LoopCheck.of(level(10, 12), List.of(new CheckLevel("HH", 9)));
    LoopCheckRow.Shown shown = row(check, "HH").shown();

    assertEquals(10.8, shown.levelMetres().orElseThrow(), 1e-9);
    assertEquals(1.8, shown.errorMetres().orElseThrow(), 1e-9);
    assertEquals(15, shown.errorPercent().orElseThrow(), 1e-9);
    assertEquals(7.5, shown.surfaceMetres().orElseThrow(), 1e-9);
    assertEquals(List.of(Kind.RANGES_DIFFER), kinds(check));
    assertEquals("100 %", check.problems().get(0).point());
    assertTrue(check.problems().get(0).text().contains("+2.0000 m"), check.problems()::toString);
  }

  // Pains A7, the dangerous way: 9 m is shown as 7.2 m, and no current of a measurement shows 9 m.
  @Test
  void tellsThatAnAlarmNeverComesWithANarrowerReceiver() {
    LoopCheck check = LoopCheck.of(level(10, 8), List.of(new CheckLevel("HH", 9)));

    assertEquals(-1.8, row(check, "HH").shown().errorMetres().orElseThrow(), 1e-9);
    assertEquals(11.25, row(check, "HH").shown().surfaceMetres().orElseThrow(), 1e-9);
    assertEquals(List.of(Kind.RANGES_DIFFER, Kind.NOT_SHOWN), kinds(check));
    assertTrue(check.problems().get(1).text().contains("22.000 mA"), check.problems()::toString);
  }

  @Test
  void takesALevelAndTheMatchingDistanceForTheSameRange() {
    LoopCheck check =
        LoopCheck.of(
            sides(LoopRange.ofDistance(10.5, 0.5), LoopRange.ofLevel(0, 10)),
            List.of(new CheckLevel("HH", 9.5)));

    assertEquals(List.of(), check.problems());
  }

  @Test
  void findsAReceiverThatRunsTheOtherWay() {
    LoopCheck check =
        LoopCheck.of(sides(LoopRange.ofLevel(0, 10), LoopRange.ofLevel(10, 0)), List.of());

    assertEquals(List.of(Kind.RANGES_DIFFER), kinds(check));
    assertEquals(0, row(check, "50 %").shown().errorMetres().orElseThrow(), 1e-9);
    assertEquals(10, row(check, "0 %").shown().errorMetres().orElseThrow(), 1e-9);
  }

  // Pains A8: 4 mA = 200, 20 mA = 10000, true value 0 would need 3.673 mA.
  @Test
  void tellsThatALevelCannotBeSignalled() {
    LoopRange range = LoopRange.ofLevel(200, 10_000);
    LoopCheck check = LoopCheck.of(sides(range, range), List.of(new CheckLevel("empty", 0)));

    assertEquals(3.673, row(check, "empty").signal().currentMilliamps(), 5e-4);
    assertEquals(List.of(Kind.NOT_SIGNALLED), kinds(check));
    assertTrue(check.problems().get(0).text().contains("3.673 mA"), check.problems()::toString);
  }

  @Test
  void tellsThatARegisterCannotHoldAFailureCurrent() {
    LoopRange range = LoopRange.ofLevel(0, 10);
    RawCounts full = RawCounts.unsigned16(0, 65535);
    LoopCheck check = LoopCheck.of(sides(range, range, full), List.of());

    assertEquals(List.of(Kind.NOT_COUNTED, Kind.NOT_COUNTED), kinds(check));
    assertEquals(
        List.of("low failure limit", "high failure limit"),
        check.problems().stream().map(LoopCheckProblem::point).toList());
    assertEquals(65535, row(check, "100 %").signal().rawCount().orElseThrow());
    assertEquals(16384, row(check, "25 %").signal().rawCount().orElseThrow(), "whole counts");
    assertEquals(
        List.of(),
        LoopCheck.of(sides(range, range, RawCounts.signed16(0, 27648)), List.of()).problems());
    assertEquals(
        List.of(Kind.NOT_COUNTED),
        kinds(LoopCheck.of(sides(range, range, RawCounts.signed16(0, 32000)), List.of())),
        "21 mA would be 34 000 counts, read back as a negative one");
  }

  @Test
  void takesTheReceiverFromTheSettingsOfThePoint() {
    PointSettings.Builder point = PointSettings.builder("LT-101").mounting(MOUNTING);
    LoopRange transmitter = LoopRange.ofLevel(0, 10);

    String message = Refusal.of(() -> LoopSides.of(transmitter, point.build()));
    assertTrue(message.contains("LT-101 has no loop range"), message);
    LoopSides sides = LoopSides.of(transmitter, point.range(LoopRange.ofLevel(0, 8)).build());
    assertEquals(List.of(Kind.RANGES_DIFFER), kinds(LoopCheck.of(sides, List.of())));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesALevelThatIsNotFinite(double wrong) {
    assertRefused("CheckLevel.level", () -> new CheckLevel("HH", wrong));
  }
}
