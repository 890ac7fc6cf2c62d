package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.testing.Refusals;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class TransitionSectionTest extends VesselContract {

  @Override
  protected Vessel curve() {
    return StackedVessel.binOnTransition(
        new TransitionSection(Outline.roundEndedSlot(2.1, 0.3), Outline.circle(2.4), 2.1), 4);
  }

  static List<CsvRow> rows() {
    return CsvRows.read(TransitionSectionTest.class, "transition_hopper.csv");
  }

  private static Outline outline(CsvRow row, String end) {
    return switch (row.text(end + "_shape")) {
      case "circle" -> Outline.circle(row.number(end + "_diameter_m"));
      case "rectangle" -> Outline.rectangle(row.number(end + "_x_m"), row.number(end + "_y_m"));
      case "stadium" -> Outline.roundEndedSlot(row.number(end + "_x_m"), row.number(end + "_y_m"));
      default -> throw new IllegalArgumentException(row.text(end + "_shape"));
    };
  }

  @Test
  void allTwentyTwoRowsAreChecked() {
    assertEquals(22, rows().size());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void agreesWithIntegrationAndSolidModels(CsvRow row) {
    TransitionSection hopper =
        new TransitionSection(
            outline(row, "outlet"), outline(row, "top"), row.number("hopper_height_m"));
    CheckRows.check(row, StackedVessel.binOnTransition(hopper, row.number("bin_height_m")));
  }

  /** Between circles it is a cone, between rectangles a pyramid: other code for the same shapes. */
  @Test
  void holdsWhatConeAndPyramidHold() {
    TransitionSection round = new TransitionSection(Outline.circle(0.4), Outline.circle(3), 2);
    ConeSection cone = new ConeSection(0.4, 3, 2);
    TransitionSection square =
        new TransitionSection(Outline.rectangle(1, 0.5), Outline.rectangle(4, 3), 2);
    PyramidSection pyramid = new PyramidSection(new Rectangle(1, 0.5), new Rectangle(4, 3), 2);
    for (double z : new double[] {1e-6, 0.1, 1, 1.7, 2}) {
      assertEquals(cone.volumeBelow(z), round.volumeBelow(z), 1e-14 * cone.volumeBelow(z));
      assertEquals(pyramid.volumeBelow(z), square.volumeBelow(z), 1e-14 * pyramid.volumeBelow(z));
      assertEquals(cone.areaAt(z), round.areaAt(z), 1e-14);
    }
  }

  /** By hand: a 3 x 2 plan with corners of 0.5 loses four corners of (1 - pi/4) r^2. */
  @Test
  void areaOfARoundedRectangle() {
    assertEquals(
        6 - 4 * (1 - Math.PI / 4) * 0.25, new Outline(3, 2, 0.5).areaSquareMetres(), 1e-15);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1, 9.9e-7, 10_000.1})
  void refusesImpossibleDimensions(double bad) {
    Refusals.assertRefused("Outline.diameter", () -> Outline.circle(bad));
    Refusals.assertRefused("Outline.length", () -> Outline.rectangle(bad, 1));
    Refusals.assertRefused("Outline.width", () -> Outline.rectangle(1, bad));
    Refusals.assertRefused("Outline.width", () -> Outline.roundEndedSlot(1, bad));
    Outline circle = Outline.circle(1);
    Refusals.assertRefused(
        "TransitionSection.height", () -> new TransitionSection(circle, circle, bad));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, -0.1, 0.501})
  void refusesCornersThatDoNotFit(double bad) {
    Refusals.assertRefused("Outline.cornerRadius", () -> new Outline(3, 1, bad));
    assertEquals(0.5, new Outline(3, 1, 0.5).cornerRadiusMetres());
  }

  @Test
  void refusesAHopperWiderThanItsBin() {
    TransitionSection wide =
        new TransitionSection(Outline.rectangle(3.1, 0.3), Outline.circle(3), 2);
    Refusals.assertRefused(
        "StackedVessel.hopper.bottom.length", () -> StackedVessel.binOnTransition(wide, 4));
    PyramidSection twisted = new PyramidSection(new Rectangle(1, 2.5), new Rectangle(3, 2), 2);
    Refusals.assertRefused(
        "StackedVessel.hopper.bottom.width",
        () -> StackedVessel.rectangularBinOnHopper(twisted, 4));
    Refusals.assertRefused("Outline.overallLength", () -> Outline.roundEndedSlot(0.2, 0.3));
    Outline line = Outline.rectangle(1, 0);
    Refusals.assertRefused("TransitionSection.volume", () -> new TransitionSection(line, line, 2));
  }

  @Test
  void saysWhatItIs() {
    assertEquals(
        "2 sections, bottom to top: transition, 2.1 m x 0.3 m with corner radius 0.15 m to round"
            + " 2.4 m, 2.1 m high; straight walls round 2.4 m, 4 m high",
        curve().describe());
    assertTrue(
        new TransitionSection(Outline.rectangle(1, 2), Outline.circle(3), 1)
            .describe()
            .startsWith("transition, 1 m x 2 m to round 3 m"));
  }
}
