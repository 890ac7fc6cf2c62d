package io.strapline.level.surface;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.Refusal;
import io.strapline.level.vessel.ConeSection;
import io.strapline.level.vessel.CylinderSection;
import io.strapline.level.vessel.Head;
import io.strapline.level.vessel.HeadSection;
import io.strapline.level.vessel.PrismSection;
import io.strapline.level.vessel.PyramidSection;
import io.strapline.level.vessel.Rectangle;
import io.strapline.level.vessel.Section;
import io.strapline.level.vessel.StackedVessel;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SolidsVesselTest {

  static Stream<SolidsVessel> vessels() {
    return Vessels.all().stream();
  }

  /** The floor over the plan and the roof give back what the sections' closed forms say. */
  @ParameterizedTest
  @MethodSource("vessels")
  void integratingTheDepthUnderAFlatSurfaceGivesTheVesselsOwnVolume(SolidsVessel vessel) {
    double full = vessel.curve().maxHeightMetres();
    for (int i = 1; i <= 20; i++) {
      double level = full * i / 20;
      double expected = vessel.curve().volumeCubicMetres(level);
      Cell whole = Cell.whole(vessel.plan(), new PlanPoint(0.7, -0.4));
      VolumeIntegral.Result got = VolumeIntegral.of(vessel, new FlatSurface(level), whole);
      double allowed = 1e-8 * vessel.curve().capacityCubicMetres();
      assertEquals(expected, got.cubicMetres(), allowed, vessel + " at " + level);
      assertTrue(
          got.error() < 1e-6 * vessel.curve().capacityCubicMetres(), () -> got + " of " + vessel);
    }
  }

  /** By hand: the cone rises 3.2 m from radius 0.2 to 3, so at radius 1.6 it is half way up. */
  @Test
  void floorOfAHopperRisesToTheWall() {
    assertEquals(0, Vessels.SILO.floorMetres(PlanPoint.CENTRE));
    assertEquals(0, Vessels.SILO.floorMetres(PlanPoint.polar(0.2, 90)));
    assertEquals(1.6, Vessels.SILO.floorMetres(PlanPoint.polar(1.6, 30)), 1e-12);
    assertEquals(3.2, Vessels.SILO.floorMetres(PlanPoint.polar(3, 200)), 1e-12);
    assertEquals(21.2, Vessels.SILO.roofMetres(PlanPoint.polar(3, 200)), 1e-12);
  }

  /** By hand: at x = 1.25 the long walls are half way up, at y = 1.2 the short ones 0.76 of it. */
  @Test
  void floorOfAPyramidIsTheHigherOfItsWalls() {
    assertEquals(1, Vessels.BIN.floorMetres(new PlanPoint(1.25, 0)), 1e-12);
    assertEquals(2 * 0.95 / 1.25, Vessels.BIN.floorMetres(new PlanPoint(1.25, -1.2)), 1e-12);
  }

  @Test
  void aLedgeIsFloorAndAConicalRoofComesDownToTheWall() {
    assertEquals(3, Vessels.STEPPED.floorMetres(new PlanPoint(1.7, 0)), 1e-12);
    assertEquals(11, Vessels.STEPPED.roofMetres(new PlanPoint(0, 1.8)), 1e-12);
    assertEquals(11.45, Vessels.STEPPED.roofMetres(new PlanPoint(0, 1.1)), 1e-12);
    assertEquals(11.9, Vessels.STEPPED.roofMetres(PlanPoint.CENTRE), 1e-12);
  }

  @Test
  void wallsStandStraightBetweenHopperAndRoof() {
    assertEquals(3.2, Vessels.SILO.straightFromMetres(), 1e-12);
    assertEquals(21.2, Vessels.SILO.straightToMetres(), 1e-12);
    assertEquals(3, Vessels.STEPPED.straightFromMetres(), 1e-12);
    assertEquals(11, Vessels.STEPPED.straightToMetres(), 1e-12);
  }

  private static void assertVesselRefused(String rule, Section... sections) {
    StackedVessel stack = StackedVessel.of(List.of(sections));
    String message = Refusal.of(() -> SolidsVessel.of(stack));
    assertTrue(message.startsWith("SolidsVessel.vessel = "), message);
    assertTrue(message.contains(rule), message);
  }

  @Test
  void refusesWhatItsPictureOfFloorAndRoofCannotHold() {
    Rectangle square = new Rectangle(3, 3);
    assertVesselRefused(
        "all round or all rectangular", new PrismSection(square, 2), new CylinderSection(3, 5));
    assertVesselRefused(
        "first widen and then narrow",
        new ConeSection(3, 1, 1),
        new CylinderSection(1, 1),
        new ConeSection(1, 3, 1));
    assertVesselRefused(
        "in both directions", new PyramidSection(new Rectangle(1, 4), new Rectangle(4, 1), 2));
    assertVesselRefused(
        "must be a cylinder",
        HeadSection.bottom(new Head.Ellipsoidal(0.5), 3),
        new CylinderSection(3, 2));
  }

  @Test
  void refusesPlacesOutsideThePlan() {
    assertRefused("SolidsVessel.place", () -> Vessels.SILO.floorMetres(PlanPoint.polar(3.1, 0)));
    assertRefused("SolidsVessel.place", () -> Vessels.BIN.roofMetres(new PlanPoint(0, 1.6)));
  }
}
