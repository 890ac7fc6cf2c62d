package io.strapline.level.surface;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ClearanceTest {

  private static final HeightSpan FULL = new HeightSpan(0, 21.2);

  private static Clearance clear(Beam beam, Obstacle obstacle) {
    return BeamView.of(Vessels.SILO, beam).clearances(List.of(obstacle)).get(0);
  }

  /** By hand: 0.8 m between the axes less 0.2 m of pipe. */
  @Test
  void aPlumbBeamPassesAPipeAtAConstantGap() {
    Beam beam = Beam.plumb(21.5, new PlanPoint(2, 0));
    Clearance clearance =
        clear(beam, new CylinderObstacle("ladder", new PlanPoint(2.8, 0), 0.2, FULL));
    assertEquals("ladder", clearance.obstacle());
    assertEquals(0.6, clearance.clearMetres(), 1e-9);
  }

  /** By hand: half the width is 0.01 + d tan 1.5 deg, widest at the end of the pipe or the beam. */
  @Test
  void theWidthOfTheBeamIsTakenOffAtEachDistance() {
    Beam beam = new Beam(21.5, new PlanPoint(2, 0), 0, 0, new BeamSpread(0.02, 3));
    Clearance clearance =
        clear(beam, new CylinderObstacle("ladder", new PlanPoint(2.8, 0), 0.2, FULL));
    double end = 21.5 - 3.2 * 1.8 / 2.8;
    double half = 0.01 + end * Math.tan(Math.toRadians(1.5));
    assertEquals(0.6 - half, clearance.clearMetres(), 1e-9);
    assertEquals(end, clearance.distanceMetres(), 1e-6);
    assertEquals(2 * half, BeamView.of(Vessels.SILO, beam).end().widthMetres(), 1e-12);
  }

  /** By hand: the beam from (2, 0) aimed at the outlet crosses the axis only there. */
  @Test
  void aBeamAimedAtTheOutletRunsIntoACentralStreamThatReachesDown() {
    Beam beam =
        Beam.plumb(21.5, new PlanPoint(2, 0)).aimed(Math.toDegrees(Math.atan(2 / 21.5)), 180);
    CylinderObstacle deep = CylinderObstacle.fillingStream(PlanPoint.CENTRE, 0.3, FULL);
    assertEquals(0, clear(beam, deep).clearMetres(), 1e-9);
    CylinderObstacle high =
        CylinderObstacle.fillingStream(PlanPoint.CENTRE, 0.3, new HeightSpan(15, 21.2));
    // Nearest at the lower edge of the stream: across the beam from (0.3, 15).
    double tilt = Math.atan(2 / 21.5);
    double across = (2 - 0.3) * Math.cos(tilt) - (21.5 - 15) * Math.sin(tilt);
    assertEquals(across, clear(beam, high).clearMetres(), 1e-9);
    assertEquals("filling stream", clear(beam, high).obstacle());
  }

  @Test
  void ballsAndBoxesAreMeasuredToTheirSkin() {
    Beam beam = Beam.plumb(21.5, new PlanPoint(2, 0));
    Obstacle probe = new BallObstacle("probe", new PlanPoint(2, 0.5), 12, 0.1);
    assertEquals(0.4, clear(beam, probe).clearMetres(), 1e-9);
    assertEquals(9.5, clear(beam, probe).distanceMetres(), 1e-6);
    Obstacle walkway =
        new BoxObstacle(
            "walkway", new PlanPoint(-3, 0.3), new PlanPoint(1.6, 1), new HeightSpan(18, 18.2));
    assertEquals(0.5, clear(beam, walkway).clearMetres(), 1e-9);
    Obstacle across =
        new BoxObstacle(
            "girder", new PlanPoint(1.9, -1), new PlanPoint(2.2, 1), new HeightSpan(18, 18.2));
    assertEquals(0, clear(beam, across).clearMetres(), 1e-9);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -0.01})
  void refusesSizesThatAreNone(double bad) {
    assertRefused("BallObstacle.radius", () -> new BallObstacle("probe", PlanPoint.CENTRE, 1, bad));
    assertRefused(
        "CylinderObstacle.radius", () -> new CylinderObstacle("pipe", PlanPoint.CENTRE, bad, FULL));
  }

  @Test
  void refusesEndsAndCornersInTheWrongOrderAndObstaclesWithoutAName() {
    assertRefused("HeightSpan.from", () -> new HeightSpan(2, 1));
    assertRefused("HeightSpan.to", () -> new HeightSpan(2, Double.NaN));
    assertRefused(
        "BallObstacle.height", () -> new BallObstacle("x", PlanPoint.CENTRE, Double.NaN, 1));
    assertRefused(
        "BoxObstacle.low",
        () -> new BoxObstacle("box", new PlanPoint(1, 0), PlanPoint.CENTRE, FULL));
    IllegalArgumentException nameless =
        assertThrows(
            IllegalArgumentException.class,
            () -> new CylinderObstacle(" ", PlanPoint.CENTRE, 1, FULL));
    assertTrue(String.valueOf(nameless.getMessage()).startsWith("CylinderObstacle.name"));
  }
}
