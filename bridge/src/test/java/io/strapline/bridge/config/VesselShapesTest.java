package io.strapline.bridge.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.testing.CheckVessels;
import io.strapline.bridge.testing.CheckVessels.Known;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.ConeSection;
import io.strapline.level.vessel.Head;
import io.strapline.level.vessel.Shell;
import io.strapline.level.vessel.StackedVessel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A shape written in a configuration holds what the check files say of it. */
class VesselShapesTest {

  @TempDir private Path folder;

  private CapacityCurve read(String plant) throws Exception {
    Path file = Files.writeString(folder.resolve("plant.yaml"), plant);
    return PlantReader.read(file).plant().points().get(0).point().vessel().orElseThrow();
  }

  private CapacityCurve vessel(String keys) throws Exception {
    return read(new Known("", keys, 0, 0, 0).plant());
  }

  static List<Known> rows() {
    return CheckVessels.all();
  }

  @Test
  void everyShapeOfTheCheckFilesIsRead() {
    assertTrue(rows().size() > 350, () -> rows().size() + " rows");
  }

  @ParameterizedTest
  @MethodSource("rows")
  void holdsWhatTheReferenceSays(Known known) throws Exception {
    CapacityCurve vessel = read(known.plant());
    assertEquals(
        known.cubicMetres(), vessel.volumeCubicMetres(known.heightMetres()), known.tolerance());
  }

  /** A wall of 10 mm takes 20 mm off the diameter; the height stays. */
  @Test
  void theWallIsTakenOffTwice() throws Exception {
    assertEquals(
        Math.PI / 4 * 2.4 * 2.4 * 5,
        vessel("upright-cylinder: { outside-diameter: 2.42 m, wall-thickness: 10 mm, height: 5 m }")
            .capacityCubicMetres(),
        1e-9);
    assertEquals(
        Math.PI / 6 * 2.4 * 2.4 * 2.4,
        vessel("sphere: { outside-diameter: 2.42 m, wall-thickness: 10 mm }").capacityCubicMetres(),
        1e-9);
  }

  /** A straight flange is shell: each metre of it holds the section of the shell. */
  @Test
  void aStraightFlangeLengthensTheShell() throws Exception {
    String head = "{ form: asme-f-and-d, straight-flange: %s mm }";
    String tank = "lying-cylinder: { diameter: 2 m, length: 6 m, heads: " + head + " }";
    double without = vessel(tank.formatted("0")).capacityCubicMetres();
    double with = vessel(tank.formatted("50")).capacityCubicMetres();
    assertEquals(Math.PI * 0.1, with - without, 1e-9);
  }

  /** Depth and volume: head_constants.csv, rows HD-KLO and HD-KOR (40-digit integration). */
  @Test
  void theStandardHeadsHaveTheirPublishedShape() throws Exception {
    double[][] known = {
      {28011, 0.19377422517014503, 0.09896599511808334},
      {28013, 0.25447273212056576, 0.13077173352177535}
    };
    for (double[] head : known) {
      String form = "{ form: din-" + (int) head[0] + " }";
      CapacityCurve tank =
          vessel("upright-cylinder: { diameter: 1 m, height: 1 m, bottom-head: " + form + " }");
      assertEquals(1 + head[1], tank.maxHeightMetres(), 1e-12);
      assertEquals(Math.PI / 4 + head[2], tank.capacityCubicMetres(), 1e-12);
    }
  }

  /** With a wall the ratios are of the outside diameter: crown 2.42 m, knuckle 242 mm inside. */
  @Test
  void theRatiosOfTheStandardHeadsAreOfTheOutsideDiameter() throws Exception {
    String shell =
        "upright-cylinder: { outside-diameter: 2.42 m, wall-thickness: 10 mm, height: 5 m";
    Head inside = new Head.Torispherical(2.42 / 2.4, 0.242 / 2.4);
    double expected =
        StackedVessel.uprightTank(new Shell(2.4, 5), inside, new Head.Flat()).capacityCubicMetres();
    assertEquals(
        expected,
        vessel(shell + ", bottom-head: { form: din-28011 } }").capacityCubicMetres(),
        1e-9);
  }

  /** The same hopper by its height and by both angles: 3 m across, 45 and 60 degrees. */
  @Test
  void aConeIsGivenByHeightOrByAnAngleWithItsReference() throws Exception {
    String silo =
        "upright-cylinder: { diameter: 3 m, height: 5 m,"
            + " bottom: { cone: { %s, outlet-diameter: 0.4 m } } }";
    double height = 1.3 * Math.tan(Math.toRadians(60));
    double expected = new ConeSection(0.4, 3, height).volumeCubicMetres() + Math.PI / 4 * 9 * 5;
    for (String way :
        List.of(
            "height: " + height + " m",
            "half-angle-to-vertical: 30 deg",
            "wall-angle-to-horizontal: 60 deg")) {
      assertEquals(expected, vessel(silo.formatted(way)).capacityCubicMetres(), 1e-9, way);
    }
  }

  @Test
  void aSiloMayHaveAHopperBelowAndAHeadAbove() throws Exception {
    CapacityCurve silo =
        vessel(
            "upright-cylinder: { diameter: 2 m, height: 4 m,"
                + " bottom: { cone: { height: 1 m } }, top-head: { form: hemispherical } }");
    assertEquals(6, silo.maxHeightMetres(), 1e-12);
    assertEquals(Math.PI * (1 / 3.0 + 4 + 2 / 3.0), silo.capacityCubicMetres(), 1e-9);
  }
}
