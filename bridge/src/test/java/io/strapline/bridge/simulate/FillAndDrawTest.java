package io.strapline.bridge.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.SourceSettings.LevelProcess;
import io.strapline.bridge.testing.Refused;
import io.strapline.bridge.testing.UprightCylinder;
import io.strapline.level.vessel.CapacityCurve;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FillAndDrawTest {

  /** Plan area 20 m2: 40 m3 between 1 m and 3 m; filled in 20 s, drawn in 40 s. */
  private static final LevelProcess PROCESS = new LevelProcess(1, 1, 3, 2, 1);

  private final FillAndDraw motion = new FillAndDraw(PROCESS, vessel());

  private static Optional<CapacityCurve> vessel() {
    return Optional.of(new UprightCylinder(20, 10));
  }

  /** Worked by hand: 2 m3/s on 20 m2 is 0.1 m/s up, 1 m3/s is 0.05 m/s down. */
  @ParameterizedTest
  @CsvSource({
    "0, 1", "5, 1.5", "10, 2", "20, 3", "30, 2.5", "60, 1", "70, 2", "80, 3", "100, 2", "6000, 1"
  })
  void movesAtTheRatesOfVolumeBetweenTheTwoHeights(double seconds, double levelMetres) {
    assertEquals(levelMetres, motion.levelMetres(seconds), 1e-9);
  }

  /**
   * Conservation: between two turns the change of volume is flow times time, in a vessel whose area
   * changes with height (a cone, radius = height: V = pi h^3 / 3, elementary geometry).
   */
  @Test
  void volumeChangesByFlowTimesTimeWhateverTheShape() {
    LevelProcess process = new LevelProcess(0.5, 0.5, 4, 0.03, 0.07);
    FillAndDraw cone = new FillAndDraw(process, Optional.of(new Cone()));
    double low = Math.PI * 0.125 / 3;
    double fillSeconds = (Math.PI * 64 / 3 - low) / 0.03;
    Random random = new Random(20260301);
    for (int i = 0; i < 1000; i++) {
      double seconds = random.nextDouble() * fillSeconds;
      double height = cone.levelMetres(seconds);
      double volume = Math.PI * Math.pow(height, 3) / 3;
      assertEquals(low + 0.03 * seconds, volume, 1e-9 * volume, "seed 20260301, round " + i);
    }
    double drawn = Math.pow(cone.levelMetres(fillSeconds + 100), 3) * Math.PI / 3;
    assertEquals(Math.PI * 64 / 3 - 7, drawn, 1e-9 * drawn);
  }

  private record Cone() implements CapacityCurve {
    @Override
    public double maxHeightMetres() {
      return 5;
    }

    @Override
    public double capacityCubicMetres() {
      return volumeCubicMetres(5);
    }

    @Override
    public double volumeCubicMetres(double heightMetres) {
      return Math.PI * Math.pow(heightMetres, 3) / 3;
    }

    @Override
    public double heightMetres(double volumeCubicMetres) {
      return Math.cbrt(3 * volumeCubicMetres / Math.PI);
    }
  }

  @Test
  void withoutAVesselTheRatesAreOfLevel() {
    FillAndDraw position = new FillAndDraw(PROCESS, Optional.empty());
    assertEquals(2, position.levelMetres(0.5), 1e-12);
    assertEquals(2, position.levelMetres(2), 1e-12);
  }

  @Test
  void aStartAboveTheUpperHeightIsDrawnDownFirst() {
    FillAndDraw full = new FillAndDraw(new LevelProcess(4, 1, 3, 2, 1), vessel());
    assertEquals(3.5, full.levelMetres(10), 1e-9);
    assertEquals(1, full.levelMetres(60), 1e-9);
    assertEquals(1.5, full.levelMetres(65), 1e-9);
  }

  @Test
  void aStartBetweenTheHeightsOrBelowThemIsFilledFirst() {
    FillAndDraw half = new FillAndDraw(new LevelProcess(2, 1, 3, 2, 1), vessel());
    assertEquals(2.5, half.levelMetres(5), 1e-9);
    assertEquals(2.5, half.levelMetres(20), 1e-9);
    FillAndDraw below = new FillAndDraw(new LevelProcess(0, 1, 3, 2, 1), vessel());
    assertEquals(0.5, below.levelMetres(5), 1e-9);
    assertEquals(3, below.levelMetres(30), 1e-9);
  }

  @Test
  void yearsOfRunningAddUpNoError() {
    double tenYears = 60.0 * 60 * 24 * 3652;
    assertEquals(motion.levelMetres(7), motion.levelMetres(tenYears + 7), 1e-6);
  }

  @ParameterizedTest
  @CsvSource({
    "1, 3, 0, 1, fill",
    "1, 3, -1, 1, fill",
    "1, 3, NaN, 1, fill",
    "1, 3, Infinity, 1, fill",
    "1, 3, 1, 0, draw",
    "1, 3, 1, NaN, draw",
    "3, 3, 1, 1, fillTo",
    "3, 1, 1, 1, fillTo",
    "NaN, 3, 1, 1, fillTo",
    "11, 12, 1, 1, fillTo"
  })
  void refusesAProcessThatCannotMove(
      double drawTo, double fillTo, double fill, double draw, String field) {
    LevelProcess process = new LevelProcess(1, drawTo, fillTo, fill, draw);
    String refused =
        Refused.message(IllegalArgumentException.class, () -> new FillAndDraw(process, vessel()));
    assertTrue(refused.startsWith("LevelProcess." + field + " = "), refused);
  }
}
