package io.strapline.level.surface;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BeamViewTest {

  private static final PlanPoint AT_TWO = new PlanPoint(2, 0);

  private static BeamView silo(double tilt, double azimuth) {
    return BeamView.of(Vessels.SILO, Beam.plumb(21.5, AT_TWO).aimed(tilt, azimuth));
  }

  private static double radians(double degrees) {
    return Math.toRadians(degrees);
  }

  /** By hand: at radius 2 the hopper wall stands at 3.2 (2 - 0.2) / 2.8 m. */
  @Test
  void aPlumbBeamEndsOnTheHopperWallBelowIt() {
    BeamSpot end = silo(0, 0).end();
    assertEquals(BeamTarget.HOPPER, end.target());
    assertEquals(3.2 * 1.8 / 2.8, end.levelMetres(), 1e-12);
    assertEquals(21.5 - 3.2 * 1.8 / 2.8, end.distanceMetres(), 1e-12);
    assertFalse(silo(0, 0).reachesOutlet());
  }

  @Test
  void aBeamAimedAtTheOutletReachesIt() {
    BeamView view = silo(Math.toDegrees(Math.atan(2 / 21.5)), 180);
    assertTrue(view.reachesOutlet());
    assertEquals(0, view.lowestLevelMetres(), 1e-12);
    assertEquals(Math.hypot(2, 21.5), view.end().distanceMetres(), 1e-12);
    assertEquals(0, view.end().place().radiusMetres(), 1e-12);
  }

  /** By hand: 1 m to the wall at 30 degrees is 2 m of beam and 2 cos 30 m down. */
  @Test
  void aBeamTiltedOutwardsEndsOnTheShell() {
    BeamSpot end = silo(30, 0).end();
    assertEquals(BeamTarget.WALL, end.target());
    assertEquals(2, end.distanceMetres(), 1e-12);
    assertEquals(21.5 - Math.sqrt(3), end.levelMetres(), 1e-12);
  }

  /** By hand, from the axis along x: wall x = 2 at 2 / tan 20 m below; then the pyramid. */
  @Test
  void beamsInARectangularBinEndOnWallHopperOrOutlet() {
    Beam beam = Beam.plumb(7.5, PlanPoint.CENTRE);
    BeamSpot wall = BeamView.of(Vessels.BIN, beam.aimed(25, 0)).end();
    assertEquals(BeamTarget.WALL, wall.target());
    assertEquals(7.5 - 2 / Math.tan(radians(25)), wall.levelMetres(), 1e-12);
    BeamSpot hopper = BeamView.of(Vessels.BIN, beam.aimed(10, 90)).end();
    // y = t (7.5 - z) meets the wall y = 0.25 + 0.625 z with t = tan 10.
    double t = Math.tan(radians(10));
    assertEquals(BeamTarget.HOPPER, hopper.target());
    assertEquals((7.5 * t - 0.25) / (0.625 + t), hopper.levelMetres(), 1e-12);
    assertEquals(BeamTarget.OUTLET, BeamView.of(Vessels.BIN, beam.aimed(1, 45)).end().target());
  }

  @Test
  void ledgesAndFlatBottomsAreFloorAndRoofsAreRoof() {
    Beam beam = Beam.plumb(12, PlanPoint.CENTRE);
    BeamSpot ledge = BeamView.of(Vessels.STEPPED, Beam.plumb(8, new PlanPoint(1.7, 0))).end();
    assertEquals(BeamTarget.FLOOR, ledge.target());
    assertEquals(3, ledge.levelMetres(), 1e-12);
    assertEquals(BeamTarget.ROOF, BeamView.of(Vessels.STEPPED, beam.aimed(65, 0)).end().target());
    BeamSpot spout = BeamView.of(Vessels.STEPPED, beam).end();
    assertEquals(BeamTarget.FLOOR, spout.target());
    assertEquals(0, spout.levelMetres(), 1e-12);
  }

  @Test
  void slantDistanceIsThePlumbOneOverTheCosine() {
    Beam beam = Beam.plumb(21.5, AT_TWO).aimed(20, 180);
    assertEquals(11.5 / Math.cos(radians(20)), beam.distanceMetres(10), 1e-12);
    assertEquals(10, beam.levelMetres(beam.distanceMetres(10)), 1e-12);
    assertEquals(11.5, beam.plumbMetres(beam.distanceMetres(10)), 1e-12);
    assertEquals(2 - 11.5 * Math.tan(radians(20)), beam.footAt(10).xMetres(), 1e-12);
  }

  @Test
  void aFlatSurfaceIsMetAtItsLevelOrNotAtAll() {
    BeamView view = silo(3, 180);
    BeamSpot spot = view.on(new FlatSurface(10));
    assertEquals(BeamTarget.SURFACE, spot.target());
    assertEquals(11.5 / Math.cos(radians(3)), spot.distanceMetres(), 1e-12);
    assertEquals(view.end(), view.on(new FlatSurface(-1)));
    assertEquals(0, view.on(new FlatSurface(21.5)).distanceMetres());
  }

  /** By hand in the plane of the beam: x = 2 - s sin t, z = 21.5 - s cos t against A -+ T x. */
  @Test
  void heapAndFunnelAreMetWhereTheLinesCross() {
    double slope = Math.tan(radians(32));
    double t = radians(3);
    BeamView view = silo(3, 180);
    BeamSpot heap = view.on(ConeSurface.heap(PlanPoint.CENTRE, 12, 32));
    double onHeap = (21.5 - 12 + 2 * slope) / (Math.cos(t) + slope * Math.sin(t));
    assertEquals(onHeap, heap.distanceMetres(), 1e-10);
    BeamSpot funnel = view.on(ConeSurface.funnel(PlanPoint.CENTRE, 12, 32));
    double onFunnel = (21.5 - 12 - 2 * slope) / (Math.cos(t) - slope * Math.sin(t));
    assertEquals(onFunnel, funnel.distanceMetres(), 1e-10);
    assertEquals(12 + slope * funnel.place().xMetres(), funnel.levelMetres(), 1e-10);
  }

  /** By hand: the heap falls 32 degrees outwards, the beam leans 3 degrees inwards. */
  @Test
  void incidenceIsTheAngleToTheNormal() {
    ConeSurface heap = ConeSurface.heap(PlanPoint.CENTRE, 12, 32);
    assertEquals(32, silo(0, 0).incidenceDegrees(heap).orElseThrow(), 1e-6);
    assertEquals(35, silo(3, 0).incidenceDegrees(heap).orElseThrow(), 1e-6);
    assertEquals(29, silo(3, 180).incidenceDegrees(heap).orElseThrow(), 1e-6);
    assertEquals(0, silo(0, 0).incidenceDegrees(new FlatSurface(5)).orElseThrow(), 1e-6);
    assertTrue(silo(30, 0).incidenceDegrees(heap).isEmpty());
  }

  /** Steps along the beam until it is outside: slow, but without any equation. */
  private static double marched(SolidsVessel vessel, Beam beam, Surface surface, double step) {
    double full = vessel.curve().maxHeightMetres();
    for (double s = 0; s < 100; s += step) {
      PlanPoint at = beam.placeAt(s);
      double z = beam.levelMetres(s);
      boolean inside = z > full || (vessel.plan().contains(at) && z <= vessel.roofMetres(at));
      double bottom =
          vessel.plan().contains(at)
              ? Math.max(vessel.floorMetres(at), surface.heightMetres(at))
              : surface.heightMetres(at);
      if (!inside || z < bottom) {
        return s;
      }
    }
    return 100;
  }

  @Test
  void anyBeamEndsWhereSteppingAlongItEnds() {
    long seed = 20250301;
    Random random = new Random(seed);
    for (int i = 0; i < 400; i++) {
      SolidsVessel vessel = Vessels.all().get(i % 4);
      double height = vessel.curve().maxHeightMetres() - 0.6;
      PlanPoint at = PlanPoint.polar(0.4 * random.nextDouble(), 360 * random.nextDouble());
      Beam beam = Beam.plumb(height, at).aimed(50 * random.nextDouble(), 360 * random.nextDouble());
      BeamView view = BeamView.of(vessel, beam);
      Surface surface = surface(random, height);
      double expected = marched(vessel, beam, surface, 1e-3);
      String what = "seed " + seed + ", beam " + i + ": " + beam + " on " + surface;
      assertEquals(expected, view.on(surface).distanceMetres(), 2.1e-3, what);
    }
  }

  private static Surface surface(Random random, double height) {
    PlanPoint axis = PlanPoint.polar(random.nextDouble(), 360 * random.nextDouble());
    double level = height * 1.1 * random.nextDouble() - 1;
    ConeSurface heap = ConeSurface.heap(axis, level, 60 * random.nextDouble());
    PlanPoint draw = PlanPoint.polar(random.nextDouble(), 360 * random.nextDouble());
    ConeSurface funnel = ConeSurface.funnel(draw, level - 0.5, 60 * random.nextDouble());
    List<Surface> all =
        List.of(
            heap,
            funnel,
            new CraterSurface(heap, funnel),
            new FlatSurface(level),
            new PlaneSurface(level, random.nextGaussian() / 2, random.nextGaussian() / 2));
    return all.get(random.nextInt(all.size()));
  }

  @Test
  void refusesBeamsThatDoNotEnterTheVessel() {
    assertRefused(
        "Beam.position", () -> BeamView.of(Vessels.SILO, Beam.plumb(21.5, new PlanPoint(3.1, 0))));
    assertRefused(
        "Beam.position", () -> BeamView.of(Vessels.SILO, Beam.plumb(30, AT_TWO).aimed(20, 0)));
    assertRefused(
        "Beam.height", () -> BeamView.of(Vessels.SILO, Beam.plumb(1, new PlanPoint(2.5, 0))));
    assertRefused(
        "Beam.height", () -> BeamView.of(Vessels.STEPPED, Beam.plumb(11.8, new PlanPoint(1.7, 0))));
    assertRefused(
        "Beam.position", () -> BeamView.of(Vessels.STEPPED, Beam.plumb(12, new PlanPoint(0.5, 0))));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesNumbersThatMakeNoBeam(double bad) {
    Beam beam = Beam.plumb(20, AT_TWO);
    assertRefused("Beam.height", () -> Beam.plumb(bad, AT_TWO));
    assertRefused("Beam.tilt", () -> beam.aimed(bad, 0));
    assertRefused("Beam.azimuth", () -> beam.aimed(0, bad));
    assertRefused("BeamSpread.exitDiameter", () -> new BeamSpread(bad, 0));
    assertRefused("BeamSpread.divergence", () -> new BeamSpread(0, bad));
    assertRefused("FlatSurface.level", () -> new FlatSurface(bad));
    assertRefused("PlaneSurface.axisLevel", () -> new PlaneSurface(bad, 0, 0));
    assertRefused("PlaneSurface.slopeX", () -> new PlaneSurface(0, bad, 0));
    assertRefused("PlaneSurface.slopeY", () -> new PlaneSurface(0, 0, bad));
  }

  @Test
  void refusesAnglesAndWidthsOutsideTheirLimits() {
    Beam beam = Beam.plumb(20, AT_TWO);
    assertEquals(80, beam.aimed(80, -360).tiltDegrees());
    assertRefused("Beam.tilt", () -> beam.aimed(80.001, 0));
    assertRefused("Beam.tilt", () -> beam.aimed(-0.001, 0));
    assertRefused("Beam.azimuth", () -> beam.aimed(0, 360.001));
    assertRefused("BeamSpread.divergence", () -> new BeamSpread(0, 45.001));
    assertRefused("BeamSpread.divergence", () -> new BeamSpread(0, -0.001));
    assertRefused("BeamSpread.exitDiameter", () -> new BeamSpread(1.001, 0));
    assertRefused("BeamSpread.exitDiameter", () -> new BeamSpread(-0.001, 0));
  }
}
