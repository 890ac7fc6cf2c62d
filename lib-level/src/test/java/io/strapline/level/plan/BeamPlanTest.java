package io.strapline.level.plan;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.surface.BallObstacle;
import io.strapline.level.surface.Beam;
import io.strapline.level.surface.BeamSpread;
import io.strapline.level.surface.BeamTarget;
import io.strapline.level.surface.CylinderObstacle;
import io.strapline.level.surface.HeightSpan;
import io.strapline.level.surface.Obstacle;
import io.strapline.level.surface.PlanPoint;
import io.strapline.level.surface.SolidsVessel;
import io.strapline.level.vessel.ConeSection;
import io.strapline.level.vessel.PyramidSection;
import io.strapline.level.vessel.Rectangle;
import io.strapline.level.vessel.StackedVessel;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BeamPlanTest {

  private static final SolidsVessel SILO =
      SolidsVessel.of(StackedVessel.uprightCylinderOnCone(new ConeSection(0.4, 6, 3.2), 18));

  private static final Beam AT_TWO =
      new Beam(21.5, PlanPoint.polar(2, 40), 0, 0, new BeamSpread(0.02, 0.3));

  private static BeamPlan plan(double mostTilt, double clear, Obstacle... obstacles) {
    return BeamPlan.of(new BeamPlanBasis(SILO, AT_TWO, mostTilt, clear, List.of(obstacles)));
  }

  /** By hand: 2 m beside the axis and 21.5 m above the outlet, back towards azimuth 220. */
  @Test
  void aimsAtTheMiddleOfTheOutletWhenNothingIsInTheWay() {
    BeamAim aim = plan(30, 0.1).proposal().orElseThrow();
    assertTrue(aim.reachesOutlet());
    assertEquals(Math.toDegrees(Math.atan(2 / 21.5)), aim.tiltDegrees(), 1e-3);
    assertEquals(220, aim.azimuthDegrees(), 1e-2);
    assertEquals(0, aim.end().levelMetres(), 1e-12);
    assertTrue(aim.clearances().isEmpty());
  }

  /** By hand: the hopper wall under the plumb beam at radius 2. */
  @Test
  void tellsWhatThePlumbBeamWouldSee() {
    BeamAim plumb = plan(30, 0.1).plumb();
    assertEquals(BeamTarget.HOPPER, plumb.end().target());
    assertEquals(3.2 * 1.8 / 2.8, plumb.end().levelMetres(), 1e-12);
  }

  /** With two degrees the lowest point is where the tilted line meets the cone wall. */
  @Test
  void goesAsFarAsTheMountingAllows() {
    BeamAim aim = plan(2, 0.1).proposal().orElseThrow();
    assertEquals(2, aim.tiltDegrees(), 1e-9);
    assertEquals(220, aim.azimuthDegrees(), 1e-2);
    // r = 2 - t (21.5 - z) meets r = 0.2 + 2.8 / 3.2 z with t = tan 2.
    double t = Math.tan(Math.toRadians(2));
    assertEquals((1.8 - 21.5 * t) / (0.875 - t), aim.end().levelMetres(), 1e-9);
  }

  /** A stream down the axis: the proposal keeps the gap and still sees lower than straight down. */
  @Test
  void keepsTheGapToTheFillingStream() {
    Obstacle stream =
        CylinderObstacle.fillingStream(PlanPoint.CENTRE, 0.4, new HeightSpan(0, 21.2));
    BeamPlan plan = plan(30, 0.25, stream);
    BeamAim aim = plan.proposal().orElseThrow();
    assertTrue(aim.clears(0.25));
    assertTrue(aim.end().levelMetres() < plan.plumb().end().levelMetres() - 0.5, aim::toString);
    assertEquals("filling stream", aim.tightest().orElseThrow().obstacle());
  }

  /** No aim on a fine grid that clears the obstacles sees lower by more than 5 mm. */
  @Test
  void noOtherAimSeesLower() {
    Obstacle stream =
        CylinderObstacle.fillingStream(PlanPoint.CENTRE, 0.4, new HeightSpan(0, 21.2));
    Obstacle probe = new BallObstacle("probe", PlanPoint.polar(1.2, 250), 8, 0.3);
    BeamPlan plan = plan(10, 0.2, stream, probe);
    double proposed = plan.proposal().orElseThrow().end().levelMetres();
    for (double tilt = 0; tilt <= 10; tilt += 0.25) {
      for (double azimuth = 0; azimuth < 360; azimuth += 1.5) {
        BeamAim other = plan.aim(tilt, azimuth);
        if (other.clears(0.2)) {
          assertTrue(
              other.end().levelMetres() >= proposed - 0.005, () -> other + " below " + proposed);
        }
      }
    }
  }

  @Test
  void saysWhatIsInTheWayWhenNothingClears() {
    Obstacle around = new BallObstacle("support ring", PlanPoint.polar(2, 40), 20, 1);
    BeamPlan plan = plan(5, 0.2, around);
    assertTrue(plan.proposal().isEmpty());
    assertTrue(plan.text().contains("support ring"), plan.text());
    assertTrue(plan.text().contains("0.200 m"), plan.text());
  }

  @Test
  void theSameBasisGivesTheSameProposal() {
    Obstacle probe = new BallObstacle("probe", PlanPoint.polar(1.2, 250), 8, 0.3);
    assertEquals(plan(20, 0.2, probe).proposal(), plan(20, 0.2, probe).proposal());
  }

  @Test
  void everyTextCarriesTheCaution() {
    BeamPlan plan = plan(30, 0.1);
    assertTrue(
        plan.text().startsWith("Tilt 5.31 deg to azimuth 220.0 deg: lowest level seen 0.000 m"),
        plan.text());
    assertTrue(plan.text().contains("IEC 60825-1"), plan.text());
    assertTrue(plan.text().contains("do not look into the beam"), plan.text());
  }

  /** A bin: from the corner the outlet lies along the diagonal. */
  @Test
  void plansARectangularBin() {
    SolidsVessel bin =
        SolidsVessel.of(
            StackedVessel.rectangularBinOnHopper(
                new PyramidSection(new Rectangle(1, 0.5), new Rectangle(4, 3), 2), 5));
    Beam corner = Beam.plumb(7, new PlanPoint(1.5, 1));
    BeamAim aim =
        BeamPlan.of(new BeamPlanBasis(bin, corner, 40, 0, List.of())).proposal().orElseThrow();
    assertTrue(aim.reachesOutlet());
    assertEquals(Math.toDegrees(Math.atan(Math.hypot(1.5, 1) / 7)), aim.tiltDegrees(), 1e-2);
    assertEquals(180 + Math.toDegrees(Math.atan2(1, 1.5)), aim.azimuthDegrees(), 1e-1);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -0.1})
  void refusesLimitsThatAreNone(double bad) {
    assertRefused(
        "BeamPlanBasis.mostTilt", () -> new BeamPlanBasis(SILO, AT_TWO, bad, 0, List.of()));
    assertRefused(
        "BeamPlanBasis.leastClear", () -> new BeamPlanBasis(SILO, AT_TWO, 10, bad, List.of()));
    assertRefused(
        "BeamPlanBasis.mostTilt", () -> new BeamPlanBasis(SILO, AT_TWO, 80.1, 0, List.of()));
  }

  @Test
  void refusesAMountingOutsideTheVessel() {
    Beam outside = Beam.plumb(21.5, PlanPoint.polar(3.2, 0));
    assertRefused("Beam.position", () -> new BeamPlanBasis(SILO, outside, 10, 0, List.of()));
  }
}
