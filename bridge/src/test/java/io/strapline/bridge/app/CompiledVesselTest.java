package io.strapline.bridge.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertSame;

import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.CompiledCurve;
import io.strapline.level.vessel.Head;
import io.strapline.level.vessel.LyingTank;
import io.strapline.level.vessel.Shell;
import io.strapline.level.vessel.StackedVessel;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CompiledVesselTest {

  private static final long SEED = 2609;

  private static PointSettings point(CapacityCurve vessel) {
    return PointSettings.builder("LT-1")
        .mounting(new Mounting(3.5, 4))
        .vessel(vessel)
        .density(980)
        .build();
  }

  @Test
  void aLyingTankWithHeadsRunsOnACompiledCurveWithinItsBound() {
    Head head = Head.Torispherical.DIN_28011;
    LyingTank tank = LyingTank.of(new Shell(2.6, 9), head, head);
    PointSettings settings = CompiledVessel.in(point(tank));
    CapacityCurve runs = settings.vessel().orElseThrow();
    assertInstanceOf(CompiledCurve.class, runs);
    Random random = new Random(SEED);
    double bound = 1e-9 * tank.capacityCubicMetres();
    for (int i = 0; i < 10_000; i++) {
      double height = 2.6 * random.nextDouble();
      assertEquals(
          tank.volumeCubicMetres(height),
          runs.volumeCubicMetres(height),
          bound,
          () -> "seed " + SEED + ", height " + height);
    }
  }

  @Test
  void everythingElseOfThePointStays() {
    Head head = new Head.Hemispherical();
    PointSettings exact = point(LyingTank.of(new Shell(2.6, 9), head, head));
    PointSettings settings = CompiledVessel.in(exact);
    assertEquals("LT-1", settings.tag());
    assertEquals(exact.mounting(), settings.mounting());
    assertEquals(exact.densityKilogramsPerCubicMetre(), settings.densityKilogramsPerCubicMetre());
  }

  @Test
  void aClosedFormStaysAsItIs() {
    PointSettings silo = point(StackedVessel.uprightCylinder(6, 18));
    assertSame(silo, CompiledVessel.in(silo));
  }
}
