package io.strapline.level.table;

import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.CapacityCurveContract;
import io.strapline.level.vessel.LyingCylinder;
import io.strapline.level.vessel.Sphere;
import io.strapline.level.vessel.StackedVessel;
import java.util.List;
import org.junit.jupiter.api.Nested;

/** The contract of curves, for curves with deadwood. */
class CorrectedCurveContractTest {

  @Nested
  class UprightTankWithAgitatorAndManhole extends CapacityCurveContract {
    private final CapacityCurve curve =
        CorrectedCurve.of(
            StackedVessel.uprightCylinder(3.1, 7.3),
            List.of(
                Deadwood.evenly("agitator", 0.4, 6.1, -0.31),
                Deadwood.evenly("manhole", 0.55, 1.15, 0.09)));

    @Override
    protected CapacityCurve curve() {
      return curve;
    }
  }

  @Nested
  class LyingTankWithShapes extends CapacityCurveContract {
    private final CapacityCurve curve =
        CorrectedCurve.of(
            new LyingCylinder(2.7, 9),
            List.of(
                Deadwood.displacing("heating coil", 0.11, new LyingCylinder(0.4, 7)),
                Deadwood.adding("dome", 2.1, new Sphere(0.6))));

    @Override
    protected CapacityCurve curve() {
      return curve;
    }
  }

  @Nested
  class TableWithFlatStepsAndAnAddition extends CapacityCurveContract {
    private final CapacityCurve curve =
        CorrectedCurve.of(
            StrappingTables.table("B", Interpolation.FRITSCH_CARLSON),
            List.of(Deadwood.evenly("neck", 0, 11.5, 0.7)));

    @Override
    protected CapacityCurve curve() {
      return curve;
    }
  }

  @Nested
  class NoDeadwoodAtAll extends CapacityCurveContract {
    private final CapacityCurve curve = CorrectedCurve.of(new Sphere(4), List.of());

    @Override
    protected CapacityCurve curve() {
      return curve;
    }
  }
}
