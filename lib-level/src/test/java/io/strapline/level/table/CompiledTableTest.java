package io.strapline.level.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.CapacityCurveContract;
import io.strapline.level.vessel.CompiledCurve;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Capacity tables, whose volume bends at every row, compiled. */
class CompiledTableTest {

  private static CompiledCurve compiled(Interpolation interpolation, double[]... rows) {
    return CompiledCurve.of(
        CapacityTable.of(
            "test",
            List.of(rows).stream().map(row -> new CapacityRow(1, row[0], row[1])).toList(),
            interpolation));
  }

  /** As the table does: the heel lies in the vessel at any height, and is not covered below it. */
  @Test
  void keepsTheHeelOfTheTable() {
    CompiledCurve curve =
        compiled(Interpolation.LINEAR, new double[] {0.4, 2}, new double[] {1, 4});
    assertEquals(2, curve.volumeCubicMetres(0));
    assertEquals(2, curve.volumeCubicMetres(-1));
    assertEquals(2, curve.volumeCubicMetres(0.2), curve.boundCubicMetres());
    assertEquals(3, curve.volumeCubicMetres(0.7), curve.boundCubicMetres());
    assertEquals(0.4, curve.heightMetres(1));
    assertEquals(0.4, curve.heightMetres(2));
    assertEquals(0.7, curve.heightMetres(3), 1e-8);
    assertFalse(curve.covers(0.3));
    assertTrue(curve.covers(0.5));
  }

  /** By hand: full from 1 m on, so that 4 m3 give the lower height. */
  @Test
  void givesTheLowestHeightOfATableThatEndsFlat() {
    CompiledCurve curve =
        compiled(
            Interpolation.LINEAR, new double[] {0, 0}, new double[] {1, 4}, new double[] {2, 4});
    assertEquals(1, curve.heightMetres(4), 1e-8);
    assertEquals(4, curve.volumeCubicMetres(curve.heightMetres(4)));
    assertEquals(0.5, curve.heightMetres(2), 1e-8);
  }

  @Nested
  class InStraightLines extends CapacityCurveContract {
    private static final CompiledCurve COMPILED =
        CompiledCurve.of(StrappingTables.table("B", Interpolation.LINEAR));

    @Override
    protected CapacityCurve curve() {
      return COMPILED;
    }
  }

  @Nested
  class ByFritschAndCarlson extends CapacityCurveContract {
    private static final CompiledCurve COMPILED =
        CompiledCurve.of(StrappingTables.table("A", Interpolation.FRITSCH_CARLSON));

    @Override
    protected CapacityCurve curve() {
      return COMPILED;
    }
  }

  @Nested
  class WithAFlatStep extends CapacityCurveContract {
    private static final CompiledCurve COMPILED =
        compiled(
            Interpolation.LINEAR,
            new double[] {0, 0},
            new double[] {1, 4},
            new double[] {2, 4},
            new double[] {3.3, 9});

    @Override
    protected CapacityCurve curve() {
      return COMPILED;
    }
  }
}
