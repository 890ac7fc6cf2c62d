package io.strapline.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.table.CapacityTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The printed table is one that a capacity-table vessel reads. */
class TableCommandTest {

  private static CommandLineRun table(String tag, String step) {
    return CommandLineRun.of("table", CommandLineRun.DEMO, tag, "--step", step);
  }

  /** R^2 (acos(1 - h/R) - (1 - h/R) sqrt(1 - (1 - h/R)^2)) L: area of a circle's segment. */
  private static double lying(double height) {
    double part = 1 - height / 1.3;
    return 1.3 * 1.3 * (Math.acos(part) - part * Math.sqrt(1 - part * part)) * 9;
  }

  @Test
  void theTableIsReadBackAndHoldsTheVolumes() {
    CommandLineRun run = table("LT-201", "0.1m");
    assertEquals(ExitCodes.OK, run.code(), run.err());
    CapacityTable read = CapacityTable.read(run.out(), "printed");
    assertEquals(27, read.size());
    assertEquals(2.6, read.maxHeightMetres());
    for (int i = 0; i <= 26; i++) {
      assertEquals(lying(i / 10.0), read.volumeCubicMetres(i / 10.0), 1e-6);
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
