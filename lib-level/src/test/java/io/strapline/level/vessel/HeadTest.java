package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.testing.Refusal;
import io.strapline.level.testing.Refusals;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class HeadTest {

  /** The rows from memory are handbook approximations, for information only. */
  static List<CsvRow> rows() {
    return CsvRows.read(HeadTest.class, "head_constants.csv").stream()
        .filter(row -> !row.text("source_kind").equals("memory"))
        .toList();
  }

  private static Head head(CsvRow row) {
    return switch (row.text("head")) {
      case "torispherical" ->
          new Head.Torispherical(row.number("crown_over_D"), row.number("knuckle_over_D"));
      case "ellipsoidal" -> new Head.SemiEllipsoidal();
      case "hemispherical" -> new Head.Hemispherical();
      default -> throw new IllegalArgumentException(row.text("head"));
    };
  }

  @Test
  void tenConstantsAreChecked() {
    assertEquals(10, rows().size());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void depthAndVolumeAgreeWithIntegratedAndPrintedConstants(CsvRow row) {
    Head head = head(row);
    String compare = row.text("compare");
    for (double diameter : new double[] {1, 2.4}) {
      if (compare.equals("both") || compare.equals("depth_over_D")) {
        double depth = row.number("depth_over_D");
        double got = head.depthMetres(diameter) / diameter;
        assertEquals(depth, got, row.number("rel_tol") * depth, row.text("id"));
      }
      if (compare.equals("both") || compare.equals("volume_over_D3")) {
        double volume = row.number("volume_over_D3");
        double got = head.volumeCubicMetres(diameter) / Math.pow(diameter, 3);
        assertEquals(volume, got, row.number("rel_tol") * volume, row.text("id"));
      }
    }
  }

  @Test
  void namedRatiosAreThoseOfTheirStandards() {
    assertEquals(new Head.Torispherical(1, 0.06), Head.Torispherical.ASME_F_AND_D);
    assertEquals(new Head.Torispherical(1, 0.1), Head.Torispherical.DIN_28011);
    assertEquals(new Head.Torispherical(0.8, 0.154), Head.Torispherical.DIN_28013);
  }

  /** The check file's rows VC-KLO-OD and VC-KOR-OD: outside 2.02 m, wall 10 mm, inside 2 m. */
  @Test
  void ratiosOfTheOutsideDiameterGrowOnTheInside() {
    Head.Torispherical klopper = Head.Torispherical.DIN_28011.onInsideOf(2.02, 0.01);
    assertEquals(1.01, klopper.crownRatio(), 1e-15);
    assertEquals(0.101, klopper.knuckleRatio(), 1e-15);
    assertEquals(0.386500688705, klopper.depthMetres(2), 1e-12);
    assertEquals(
        0.507755694804, Head.Torispherical.DIN_28013.onInsideOf(2.02, 0.01).depthMetres(2), 1e-12);
  }

  /** With a crown of half the diameter the knuckle vanishes: a hemisphere. */
  @Test
  void torisphericalHeadEndsInAHemisphere() {
    Head tori = new Head.Torispherical(0.5, 0.1);
    assertEquals(1, tori.depthMetres(2), 1e-15);
    assertEquals(new Head.Hemispherical().volumeCubicMetres(2), tori.volumeCubicMetres(2), 1e-14);
  }

  /** As deep as its radius, the part of a sphere is half of it. */
  @Test
  void deepestDishIsAHemisphere() {
    assertEquals(
        new Head.Hemispherical().volumeCubicMetres(2.5),
        new Head.SphericalDish(1.25).volumeCubicMetres(2.5),
        1e-14);
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {
        Double.NaN,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY,
        -1,
        0,
        9.9e-7,
        10_000.1
      })
  void refusesImpossibleDepths(double bad) {
    Refusals.assertRefused("Head.Conical.depth", () -> new Head.Conical(bad));
    Refusals.assertRefused("Head.EccentricConical.depth", () -> new Head.EccentricConical(bad));
    Refusals.assertRefused("Head.Ellipsoidal.depth", () -> new Head.Ellipsoidal(bad));
    Refusals.assertRefused("Head.SphericalDish.depth", () -> new Head.SphericalDish(bad));
    Refusals.assertRefused("Head.diameter", () -> new Head.Hemispherical().depthMetres(bad));
    Refusals.assertRefused("Shell.diameter", () -> new Shell(bad, 1));
    Refusals.assertRefused("Shell.length", () -> new Shell(1, bad));
  }

  @Test
  void refusesAHeadDeeperThanItCanBe() {
    Head dish = new Head.SphericalDish(1.01);
    String message = Refusal.of(() -> dish.depthMetres(2));
    assertEquals(
        "Head.SphericalDish.depth = 1.01 m: must not be greater than 1 m on this shell; give the"
            + " inside depth in metres from the tangent line, without the straight flange",
        message);
    Head ellipsoid = new Head.Ellipsoidal(2.01);
    Refusals.assertRefused("Head.Ellipsoidal.depth", () -> ellipsoid.volumeCubicMetres(2));
    assertEquals(1, new Head.SphericalDish(1).depthMetres(2));
    assertEquals(2, new Head.Ellipsoidal(2).depthMetres(2));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1, 0, 0.4999, 10.01, 1000})
  void refusesACrownThatDoesNotSpanTheShell(double bad) {
    Refusals.assertRefused("Head.Torispherical.crownRatio", () -> new Head.Torispherical(bad, 0.1));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1, 0, 9e-5, 0.4501, 0.5, 60})
  void refusesAnImpossibleKnuckle(double bad) {
    Refusals.assertRefused("Head.Torispherical.knuckleRatio", () -> new Head.Torispherical(1, bad));
  }

  @Test
  void shellTakesOutsideDimensionsAndStraightFlanges() {
    Shell shell = Shell.fromOutside(2.02, 0.01, 5).withStraightFlanges(0.04, 0.05);
    assertEquals(2, shell.diameterMetres(), 1e-15);
    assertEquals(5.09, shell.lengthMetres(), 1e-15);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -0.001, 1, 5})
  void refusesAWallThatLeavesNoInside(double bad) {
    Refusals.assertRefused("Shell.wallThickness", () -> Shell.fromOutside(2, bad, 5));
    Refusals.assertRefused(
        "Shell.wallThickness", () -> Head.Torispherical.DIN_28011.onInsideOf(2, bad));
    assertTrue(Shell.fromOutside(2, 0, 5).diameterMetres() == 2);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -0.001})
  void refusesANegativeStraightFlange(double bad) {
    Shell shell = new Shell(2, 5);
    Refusals.assertRefused("Shell.firstStraightFlange", () -> shell.withStraightFlanges(bad, 0));
    Refusals.assertRefused("Shell.secondStraightFlange", () -> shell.withStraightFlanges(0, bad));
  }
}
