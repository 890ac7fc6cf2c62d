package io.strapline.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.table.CapacityTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The printed table is one that a capacity-table vessel reads. */
class TableCommandTest {

  /** Of the diameter: head_constants.csv of the library's tests, HD-KLO. */
  private static final double DEPTH = 0.19377422517014503;

  private static CommandLineRun table(String tag, String step) {
    return CommandLineRun.of("table", CommandLineRun.DEMO, tag, "--step", step);
  }

  /** R^2 (acos(1 - h/R) - (1 - h/R) sqrt(1 - (1 - h/R)^2)): area of a circle's segment. */
  private static double segment(double radius, double height) {
    double part = Math.min(Math.max(1 - height / radius, -1), 1);
    return radius * radius * (Math.acos(part) - part * Math.sqrt(1 - part * part));
  }

  /** Shell and flanges 9.08 m, and both heads in slices square to the axis (midpoint rule). */
  private static double lying(double height) {
    int slices = 20_000;
    double thickness = 2.6 * DEPTH / slices;
    double heads = 0;
    for (int i = 0; i < slices; i++) {
      double radius = radius((i + 0.5) * thickness);
      heads += 2 * thickness * segment(radius, height - (1.3 - radius));
    }
    return 9.08 * segment(1.3, height) + heads;
  }

  /** Radius of the head beyond the tangent line: knuckle of 0.26 m, then crown of 2.6 m. */
  private static double radius(double beyond) {
    double joint = 0.26 * Math.sqrt(1 - Math.pow(0.4 / 0.9, 2));
    double fromCentre = 2.6 - 2.6 * DEPTH + beyond;
    return beyond < joint
        ? 1.04 + Math.sqrt(0.26 * 0.26 - beyond * beyond)
        : Math.sqrt(2.6 * 2.6 - fromCentre * fromCentre);
  }

  @Test
  void theTableIsReadBackAndHoldsTheVolumes() {
    CommandLineRun run = table("LT-201", "0.1m");
    assertEquals(ExitCodes.OK, run.code(), run.err());
    CapacityTable read = CapacityTable.read(run.out(), "printed");
    assertEquals(27, read.size());
    assertEquals(2.6, read.maxHeightMetres());
    for (int i = 0; i <= 26; i++) {
      assertEquals(lying(i / 10.0), read.volumeCubicMetres(i / 10.0), 1e-5);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"LT-101", "LT-102", "LT-103", "LT-201", "LT-202", "LT-301A"})
  void everyVesselOfTheDemonstrationIsReadBack(String tag) {
    for (String step : new String[] {"7 mm", "1 ft", "100 m"}) {
      CommandLineRun run = table(tag, step);
      assertEquals(ExitCodes.OK, run.code(), run.err());
      assertTrue(CapacityTable.read(run.out(), tag).capacityCubicMetres() > 0);
    }
  }

  @Test
  void theLastRowIsTheFullHeightWhateverTheStep() {
    assertTrue(table("LT-103", "0.7 m").out().strip().endsWith("3.000000;3.6000000"));
  }

  @Test
  void aStepThatMakesNoTableIsAUsageError() {
    for (String step : new String[] {"0 m", "-1 m", "0.1 mm", "1", "1 kg", "m"}) {
      assertEquals(ExitCodes.USAGE, table("LT-201", step).code(), step);
    }
    assertEquals(ExitCodes.USAGE, table("ZT-401", "1 m").code());
  }
}
