package io.strapline.level.surface;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlanTest {

  /** 2 R / 3 on the axis and 32 R / (9 pi) at the wall: textbook means over a disc. */
  @Test
  void meanDistanceInACircleIsKnownAtBothEnds() {
    RoundPlan plan = new RoundPlan(5);
    assertEquals(5 / 3.0, plan.meanDistanceMetres(PlanPoint.CENTRE), 1e-15);
    double wall = 32 * 2.5 / (9 * Math.PI);
    assertEquals(wall, plan.meanDistanceMetres(new PlanPoint(2.5, 0)), 1e-14);
    assertEquals(wall, plan.meanDistanceMetres(PlanPoint.polar(2.5, 77)), 1e-7);
    assertEquals(wall, plan.meanDistanceMetres(new PlanPoint(0, -2.5 * (1 - 1e-12))), 1e-10);
  }

  /** Mean of S^3 / 3 over all bearings, the definition, beside both closed forms. */
  @Test
  void meanDistanceIsTheIntegralOfItsDefinition() {
    for (Plan plan : new Plan[] {new RoundPlan(3.4), new RectangularPlan(4, 2.5)}) {
      for (int i = 0; i < 24; i++) {
        PlanPoint from = PlanPoint.polar(0.05 * i, 15 * i);
        Quadrature turn =
            new Quadrature(
                bearing -> Math.pow(plan.toEdgeMetres(from, bearing), 3) / 3, 1e-13, 100_000);
        double expected =
            turn.over(Cell.whole(plan, from).turn().rising()) / plan.areaSquareMetres();
        assertEquals(expected, plan.meanDistanceMetres(from), 1e-11, plan + " from " + from);
      }
    }
  }

  /** The mean distance from a unit square's corner is (root 2 + asinh 1) / 3: MathWorld, Square. */
  @Test
  void meanDistanceFromTheCornerOfASquare() {
    RectangularPlan plan = new RectangularPlan(1, 1);
    double expected = (Math.sqrt(2) + Math.log(1 + Math.sqrt(2))) / 3;
    assertEquals(expected, plan.meanDistanceMetres(new PlanPoint(0.5, -0.5)), 1e-15);
  }

  @Test
  void placesAtTheWallBelongToThePlanAndPlacesBeyondDoNot() {
    RoundPlan round = new RoundPlan(6);
    assertTrue(round.contains(PlanPoint.polar(3, 33)));
    assertRefused("RoundPlan.from", () -> round.meanDistanceMetres(PlanPoint.polar(3.001, 33)));
    RectangularPlan bin = new RectangularPlan(4, 3);
    assertTrue(bin.contains(new PlanPoint(-2, 1.5)));
    assertRefused("RectangularPlan.from", () -> bin.meanDistanceMetres(new PlanPoint(0, -1.51)));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, 0, -1})
  void refusesSizesThatMakeNoPlan(double bad) {
    assertRefused("RoundPlan.diameter", () -> new RoundPlan(bad));
    assertRefused("RectangularPlan.length", () -> new RectangularPlan(bad, 1));
    assertRefused("RectangularPlan.width", () -> new RectangularPlan(1, bad));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesPlacesThatAreNone(double bad) {
    assertRefused("PlanPoint.x", () -> new PlanPoint(bad, 0));
    assertRefused("PlanPoint.y", () -> new PlanPoint(0, bad));
    assertRefused("PlanPoint.radius", () -> PlanPoint.polar(bad, 0));
    assertRefused("PlanPoint.azimuth", () -> PlanPoint.polar(1, bad));
    assertRefused("PlanPoint.radius", () -> PlanPoint.polar(-0.1, 0));
    assertRefused("PlanPoint.azimuth", () -> PlanPoint.polar(1, 360.1));
  }

  /**
   * Complete elliptic integrals at k = 0.5: 1.685750354812596, 1.467462209339427 (scipy 1.10.1).
   */
  @Test
  void ellipticIntegralsAgreeWithAReferenceLibrary() {
    EllipticIntegrals.Pair pair = EllipticIntegrals.of(0.5, Math.sqrt(0.75));
    assertEquals(1.685750354812596, pair.first(), 1e-14);
    assertEquals(1.467462209339427, pair.second(), 1e-14);
    EllipticIntegrals.Pair circle = EllipticIntegrals.of(0, 1);
    assertEquals(Math.PI / 2, circle.first());
    assertEquals(Math.PI / 2, circle.second());
  }
}
