package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.testing.Refusals;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class TiltedTankTest {

  private static final Shell SHELL = new Shell(2, 6);
  private static final Head FLAT = new Head.Flat();

  static List<CsvRow> rows() {
    return CsvRows.read(TiltedTankTest.class, "tilted_cylinder.csv");
  }

  private static Head head(CsvRow row) {
    return switch (row.text("heads")) {
      case "flat" -> FLAT;
      case "hemispherical" -> new Head.Hemispherical();
      case "ellipsoidal" -> new Head.Ellipsoidal(row.number("head_depth_m"));
      default -> throw new IllegalArgumentException(row.text("heads"));
    };
  }

  private static TiltedTank tank(CsvRow row) {
    return TiltedTank.of(
        new Shell(row.number("diameter_m"), row.number("shell_length_m")),
        head(row),
        head(row),
        row.number("tilt_deg"),
        row.number("gauge_x_m"));
  }

  private static TiltedTank tank(Head head, double tilt) {
    return TiltedTank.of(SHELL, head, head, tilt, 3);
  }

  @Test
  void allFortySevenRowsAreChecked() {
    assertEquals(47, rows().size());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void agreesWithIntegrationAndTheLevelTank(CsvRow row) {
    TiltedTank tank = tank(row);
    double expected = row.number("volume_m3");
    double height = tank.heightAtGaugeDepth(row.number("h_m"));
    double tolerance = row.number("rel_tol") * expected;
    assertEquals(expected, tank.volumeCubicMetres(height), tolerance, row.text("id"));
    double back = tank.volumeCubicMetres(tank.heightMetres(expected));
    assertEquals(expected, back, tolerance, row.text("id") + " inverse");
  }

  /** The plumb depth at the gauge is the file's column: both name one surface. */
  @ParameterizedTest
  @MethodSource("rows")
  void gaugeDepthIsTakenSquareToTheAxis(CsvRow row) {
    TiltedTank tank = tank(row);
    double depth = row.number("h_m");
    double plumb = depth * Math.cos(Math.toRadians(tank.tiltDegrees()));
    assertEquals(row.number("vertical_depth_m"), plumb, 1e-12);
    assertEquals(depth, tank.gaugeDepth(tank.heightAtGaugeDepth(depth)), 1e-14);
    double rise = tank.heightAtGaugeDepth(depth) - tank.heightAtGaugeDepth(0);
    assertEquals(plumb, rise, 1e-14);
  }

  /** By hand: flat ends, gauge at the low end: the low corner of the shell is the datum. */
  @Test
  void datumIsTheLowestInsidePoint() {
    TiltedTank flat = TiltedTank.of(SHELL, FLAT, FLAT, 5, 0);
    double tilt = Math.toRadians(5);
    assertEquals(0, flat.heightAtGaugeDepth(0));
    assertEquals(6 * Math.sin(tilt) + 2 * Math.cos(tilt), flat.maxHeightMetres(), 1e-14);
    Head ball = new Head.Hemispherical();
    TiltedTank round = TiltedTank.of(SHELL, ball, ball, 5, 0);
    assertEquals(6 * Math.sin(tilt) + 2, round.maxHeightMetres(), 1e-14);
    assertEquals(1 - Math.cos(tilt), round.heightAtGaugeDepth(0), 1e-15);
  }

  /** Nothing but a little stands between a level tank and one tilted by a hair. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 1e-9, 1e-6, 1e-4})
  void slightTiltsTendToTheLevelTank(double tilt) {
    for (Head head : List.of(FLAT, new Head.SemiEllipsoidal(), new Head.Hemispherical())) {
      LyingTank level = LyingTank.of(SHELL, head, head);
      TiltedTank tilted = tank(head, tilt);
      for (double depth : new double[] {0.01, 0.3, 1, 1.4, 1.99}) {
        double expected = level.volumeCubicMetres(depth);
        double volume = tilted.volumeCubicMetres(tilted.heightAtGaugeDepth(depth));
        assertEquals(expected, volume, (1e-12 + 1e-6 * tilt) * 19, head + " at " + depth);
      }
    }
  }

  /** A ball of two hemispheres and next to no shell holds the same in every position. */
  @ParameterizedTest
  @ValueSource(doubles = {0.01, 1, 10, 30})
  void ballDoesNotCareForItsTilt(double tilt) {
    Head ball = new Head.Hemispherical();
    double length = 1e-6;
    TiltedTank tank = TiltedTank.of(new Shell(2, length), ball, ball, tilt, 0);
    Sphere sphere = new Sphere(2);
    for (double height : new double[] {1e-3, 0.1, 0.5, 0.9, 1, 1.1, 1.7, 1.999}) {
      // The shell adds at most its own volume.
      double shell = length * Math.PI;
      double volume = tank.volumeCubicMetres(height);
      assertEquals(sphere.volumeCubicMetres(height), volume, shell, "at " + height);
    }
  }

  /** The volume by another way: Simpson's rule over the level surface. */
  @ParameterizedTest
  @ValueSource(doubles = {0.05, 2, 20})
  void volumeIsTheSumOfTheLevelSurfaces(double tilt) {
    TiltedTank tank =
        TiltedTank.of(SHELL, new Head.SemiEllipsoidal(), new Head.Ellipsoidal(0.9), tilt, 1);
    for (double end : new double[] {0.01, 0.3, 0.5, 0.8, 0.99}) {
      int steps = 20_000;
      double height = end * tank.maxHeightMetres();
      double sum = 0;
      for (int i = 0; i <= steps; i++) {
        int weight = i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2;
        sum += weight * tank.surfaceSquareMetres(height * i / steps);
      }
      double volume = tank.volumeCubicMetres(height);
      assertEquals(volume, sum * height / steps / 3, 2e-6 * volume, "at " + end);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -0.001, 30.001, 90})
  void refusesATiltOutOfRange(double bad) {
    Refusals.assertRefused("TiltedTank.tilt", () -> tank(FLAT, bad));
    assertEquals(30, tank(FLAT, 30).tiltDegrees());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -0.001, 6.001})
  void refusesAGaugeOffTheShell(double bad) {
    Refusals.assertRefused("TiltedTank.gauge", () -> TiltedTank.of(SHELL, FLAT, FLAT, 1, bad));
  }

  @Test
  void refusesOtherHeads() {
    Head cone = new Head.Conical(0.5);
    Refusals.assertRefused("TiltedTank.head", () -> TiltedTank.of(SHELL, cone, FLAT, 1, 0));
    Refusals.assertRefused("TiltedTank.head", () -> TiltedTank.of(SHELL, FLAT, cone, 1, 0));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesAGaugeDepthThatIsNoNumber(double bad) {
    Refusals.assertRefused("TiltedTank.gaugeDepth", () -> tank(FLAT, 1).heightAtGaugeDepth(bad));
    Refusals.assertRefused("TiltedTank.height", () -> tank(FLAT, 1).gaugeDepth(bad));
  }

  @Test
  void saysWhatItIs() {
    assertEquals(
        "lying tank, diameter 2 m, 6 m between tangent lines, both heads flat, tilted by 1.5 deg",
        tank(FLAT, 1.5).toString());
    assertEquals(tank(FLAT, 1.5), tank(FLAT, 1.5));
    assertEquals(tank(FLAT, 1.5).hashCode(), tank(FLAT, 1.5).hashCode());
    assertNotEquals(tank(FLAT, 1.5), tank(FLAT, 1.6));
    assertTrue(!tank(FLAT, 1.5).equals(TiltedTank.of(SHELL, FLAT, FLAT, 1.5, 2)));
  }

  @Nested
  class WithFlatEnds extends VesselContract {
    @Override
    protected Vessel curve() {
      return tank(FLAT, 1);
    }
  }

  @Nested
  class HardlyTiltedWithFlatEnds extends VesselContract {
    @Override
    protected Vessel curve() {
      return tank(FLAT, 1e-3);
    }
  }

  @Nested
  class WithRoundHeads extends VesselContract {
    @Override
    protected Vessel curve() {
      return TiltedTank.of(SHELL, new Head.SemiEllipsoidal(), new Head.Hemispherical(), 2, 1.5);
    }
  }

  @Nested
  class HardlyTiltedWithRoundHeads extends VesselContract {
    @Override
    protected Vessel curve() {
      return tank(new Head.SemiEllipsoidal(), 0.01);
    }
  }

  @Nested
  class NotTilted extends VesselContract {
    @Override
    protected Vessel curve() {
      return tank(new Head.Hemispherical(), 0);
    }
  }
}
