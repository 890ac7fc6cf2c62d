package io.strapline.level.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.units.LengthUnit;
import io.strapline.level.units.VolumeUnit;
import io.strapline.level.vessel.StackedVessel;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SurfaceContentTest {

  /**
   * Heap on the axis of a conical hopper, cut by the wall: with the wall m (rho - r0) and the heap
   * a - t rho they meet at rho1 = (a + m r0) / (t + m), and the integral of 2 pi rho times the
   * depth is 2 pi [a rho1^2 / 2 - t rho1^3 / 3 - m (rho1^3 / 3 - r0 rho1^2 / 2 + r0^3 / 6)].
   * Derived here.
   */
  @Test
  void heapInAConicalHopperAgreesWithItsClosedForm() {
    double m = 3.2 / 2.8;
    double r0 = 0.2;
    for (double degrees : new double[] {10, 28, 40}) {
      for (double apex : new double[] {0.5, 1, 2, 3}) {
        double t = Math.tan(Math.toRadians(degrees));
        double r = (apex + m * r0) / (t + m);
        double expected =
            2
                * Math.PI
                * (apex * r * r / 2
                    - t * r * r * r / 3
                    - m * (r * r * r / 3 - r0 * r * r / 2 + r0 * r0 * r0 / 6));
        ConeSurface heap = ConeSurface.heap(PlanPoint.CENTRE, apex, degrees);
        SurfaceContent content = SurfaceContent.of(Vessels.SILO, heap);
        assertEquals(expected, content.volumeCubicMetres(), 1e-8, degrees + " deg, " + apex);
        assertTrue(content.baresFloor());
      }
    }
  }

  static Stream<Surface> surfaces() {
    ConeSurface heap = ConeSurface.heap(new PlanPoint(0.9, 0.3), 3.6, 33);
    ConeSurface funnel = ConeSurface.funnel(new PlanPoint(-0.4, -0.5), 0.9, 45);
    return Stream.of(
        heap,
        funnel,
        new CraterSurface(heap, funnel),
        new PlaneSurface(2.1, 0.4, -0.3),
        ConeSurface.heap(new PlanPoint(-1.4, 0.5), 13, 50));
  }

  /** Brute force: the depth summed over a grid of square cells, good to about 1e-4. */
  private static double gridSum(SolidsVessel vessel, Surface surface) {
    int n = 1000;
    double size = 2 * vessel.plan().greatestDistanceMetres(PlanPoint.CENTRE);
    double cell = size / n;
    double sum = 0;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        PlanPoint at = new PlanPoint((i + 0.5) * cell - size / 2, (j + 0.5) * cell - size / 2);
        if (vessel.plan().contains(at)) {
          double top = Math.min(surface.heightMetres(at), vessel.roofMetres(at));
          sum += Math.max(top - vessel.floorMetres(at), 0) * cell * cell;
        }
      }
    }
    return sum;
  }

  @ParameterizedTest
  @MethodSource("surfaces")
  void anySurfaceInAnyVesselAgreesWithAGridSum(Surface surface) {
    for (SolidsVessel vessel : Vessels.all()) {
      double expected = gridSum(vessel, surface);
      SurfaceContent content = SurfaceContent.of(vessel, surface);
      assertEquals(
          expected, content.volumeCubicMetres(), 3e-4 * expected + 1e-4, vessel + ": " + surface);
      double level = content.equivalentLevelMetres();
      double back = vessel.curve().volumeCubicMetres(level);
      assertEquals(back, content.volumeCubicMetres(), 1e-8 * vessel.curve().capacityCubicMetres());
    }
  }

  /**
   * A higher level under the beam never means less in the vessel, whatever shape, place or wall.
   */
  @Test
  void theContentNeverFallsWithTheLevel() {
    long seed = 7;
    Random random = new Random(seed);
    for (int i = 0; i < 24; i++) {
      SolidsVessel vessel = Vessels.all().get(i % 4);
      PlanPoint axis = PlanPoint.polar(1.4 * random.nextDouble(), 360 * random.nextDouble());
      PlanPoint foot = PlanPoint.polar(1.4 * random.nextDouble(), 360 * random.nextDouble());
      double angle = 60 * random.nextDouble();
      boolean filling = random.nextBoolean();
      ConeSurface shape =
          filling ? ConeSurface.heap(axis, 0, angle) : ConeSurface.funnel(axis, 0, angle);
      double before = 0;
      for (int step = 0; step <= 12; step++) {
        double level = vessel.curve().maxHeightMetres() * step / 12;
        ConeSurface surface = shape.through(foot, level);
        double now = SurfaceContent.of(vessel, surface).volumeCubicMetres();
        String what = "seed " + seed + ", " + i + ": " + vessel + ", " + surface;
        assertEquals(level, surface.heightMetres(foot), 1e-12, what);
        assertTrue(now >= before - 1e-8 * vessel.curve().capacityCubicMetres(), what);
        before = now;
      }
    }
  }

  @Test
  void saysThatTheRoofCutsTheHeap() {
    SurfaceContent content =
        SurfaceContent.of(Vessels.STEPPED, ConeSurface.heap(PlanPoint.CENTRE, 14, 35));
    assertTrue(content.cutByRoof());
    assertEquals(Vessels.STEPPED.curve().maxHeightMetres(), content.highestMetres());
    assertTrue(content.volumeCubicMetres() < Vessels.STEPPED.curve().capacityCubicMetres());
  }

  /** Far above and below the vessel the content is all and nothing. */
  @Test
  void isEmptyAndFullAtTheEnds() {
    for (SolidsVessel vessel : Vessels.all()) {
      double capacity = vessel.curve().capacityCubicMetres();
      for (Surface low : List.of(new FlatSurface(-5), ConeSurface.heap(PlanPoint.CENTRE, -5, 30))) {
        assertEquals(0, SurfaceContent.of(vessel, low).volumeCubicMetres());
      }
      SurfaceContent full = SurfaceContent.of(vessel, ConeSurface.funnel(PlanPoint.CENTRE, 50, 30));
      assertEquals(capacity, full.volumeCubicMetres(), 1e-9 * capacity);
    }
  }

  /** A 30 ft bin of soybeans at 25 degrees: 6.995 ft and 1648.1 ft3 in the peak, pi/12 D^2 h. */
  @Test
  void peakOfAGrainBin() {
    double feet = LengthUnit.FOOT.toSi(1);
    SolidsVessel bin = SolidsVessel.of(StackedVessel.uprightCylinder(30 * feet, 60 * feet));
    ConeSurface heap =
        ConeSurface.heap(PlanPoint.CENTRE, 0, 25).through(new PlanPoint(15 * feet, 0), 30 * feet);
    SurfaceContent content = SurfaceContent.of(bin, heap);
    double peak = content.volumeCubicMetres() - bin.curve().volumeCubicMetres(30 * feet);
    assertEquals(6.995, heap.apexLevelMetres() / feet - 30, 5e-4);
    assertEquals(1648.1, VolumeUnit.CUBIC_FOOT.fromSi(peak), 0.05);
  }
}
