package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.testing.Refusal;
import io.strapline.level.testing.Refusals;
import io.strapline.level.vessel.SurveyedProfile.AreaAt;
import io.strapline.level.vessel.SurveyedProfile.PlanAt;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class SurveyedProfileTest extends VesselContract {

  @Override
  protected Vessel curve() {
    return SurveyedProfile.ofAreas(
        List.of(
            new AreaAt(0, 0),
            new AreaAt(0.5, 3),
            new AreaAt(2, 3),
            new AreaAt(2, 5),
            new AreaAt(3, 1),
            new AreaAt(3.5, 0)));
  }

  static List<CsvRow> rectangularRows() {
    return CsvRows.read(SurveyedProfileTest.class, "stacked_profile.csv").stream()
        .filter(row -> row.text("section_shape").equals("rectangular"))
        .toList();
  }

  private static PlanAt plan(String point) {
    String[] parts = point.split(":", -1);
    return new PlanAt(
        Double.parseDouble(parts[0]),
        new Rectangle(Double.parseDouble(parts[1]), Double.parseDouble(parts[2])));
  }

  @Test
  void eightRectangularRowsAreChecked() {
    assertEquals(8, rectangularRows().size());
  }

  @ParameterizedTest
  @MethodSource("rectangularRows")
  void lengthAndWidthAgreeWithIntegrationOfTheProfile(CsvRow row) {
    List<PlanAt> plans =
        Stream.of(row.text("profile").split("\\|", -1)).map(SurveyedProfileTest::plan).toList();
    CheckRows.check(row, SurveyedProfile.ofPlans(plans));
  }

  /** By hand: the mean end-area rule of earthworks, exact where the area changes linearly. */
  @Test
  void areasGiveTheMeanEndAreaRule() {
    double whole = 0.5 * 1.5 + 1.5 * 3 + 1 * 3 + 0.5 * 0.5;
    assertEquals(whole, curve().capacityCubicMetres(), 1e-14);
    assertEquals(0.75 / 4, curve().volumeCubicMetres(0.25), 1e-13);
    assertEquals(0.75 + 3, curve().volumeCubicMetres(1.5), 1e-13);
    // From 5 to 1 m2 over 1 m: 5 x 0.5 - 4 x 0.125 in the lower half.
    assertEquals(0.75 + 4.5 + 2, curve().volumeCubicMetres(2.5), 1e-13);
  }

  /** A wedge's area grows linearly, so both ways to give it agree. */
  @Test
  void aWedgeMayBeGivenEitherWay() {
    Vessel areas = SurveyedProfile.ofAreas(List.of(new AreaAt(0, 0.5), new AreaAt(2, 6)));
    Vessel plans =
        SurveyedProfile.ofPlans(
            List.of(new PlanAt(0, new Rectangle(0.25, 2)), new PlanAt(2, new Rectangle(3, 2))));
    for (double height : new double[] {1e-6, 0.3, 1, 1.9, 2}) {
      double expected = plans.volumeCubicMetres(height);
      assertEquals(expected, areas.volumeCubicMetres(height), 2e-13 * expected);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1, 1e-13, 1.1e8})
  void refusesImpossibleAreas(double bad) {
    Refusals.assertRefused("AreaSection.bottom", () -> new AreaSection(bad, 1, 1));
    Refusals.assertRefused("AreaSection.top", () -> new AreaSection(1, bad, 1));
    String message =
        Refusal.of(() -> SurveyedProfile.ofAreas(List.of(new AreaAt(0, 1), new AreaAt(1, bad))));
    assertTrue(message.startsWith("SurveyedProfile row 2: AreaSection.top = "), message);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, 0.999})
  void refusesHeightsThatDoNotRise(double bad) {
    String message =
        Refusal.of(
            () ->
                SurveyedProfile.ofAreas(
                    List.of(new AreaAt(0, 1), new AreaAt(1, 1), new AreaAt(bad, 1))));
    assertTrue(message.startsWith("SurveyedProfile.height(row 3) = " + bad + " m"), message);
  }

  @Test
  void refusesTooFewRowsAndAFloorAboveTheDatum() {
    Refusals.assertRefused(
        "SurveyedProfile.rows", () -> SurveyedProfile.ofAreas(List.of(new AreaAt(0, 1))));
    Refusals.assertRefused(
        "SurveyedProfile.height(row 1)",
        () -> SurveyedProfile.ofAreas(List.of(new AreaAt(0.1, 1), new AreaAt(1, 1))));
    Refusals.assertRefused(
        "SurveyedProfile.height(row 2)",
        () -> SurveyedProfile.ofAreas(List.of(new AreaAt(0, 1), new AreaAt(0, 2))));
    Refusals.assertRefused("AreaSection.top", () -> new AreaSection(0, 0, 1));
  }

  @Test
  void saysWhatItIs() {
    assertEquals(
        "area 0.5 m2 to 6 m2, 2 m high",
        SurveyedProfile.ofAreas(List.of(new AreaAt(0, 0.5), new AreaAt(2, 6))).describe());
  }
}
