package io.strapline.level.table;

import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.CapacityCurveContract;
import java.util.List;
import org.junit.jupiter.api.Nested;

/** The contract of curves, for tables whose first row lies at zero. */
class CapacityTableContractTest {

  @Nested
  class LyingCylinderInStraightLines extends CapacityCurveContract {
    private final CapacityCurve curve = StrappingTables.table("A", Interpolation.LINEAR);

    @Override
    protected CapacityCurve curve() {
      return curve;
    }
  }

  @Nested
  class LyingCylinderByFritschAndCarlson extends CapacityCurveContract {
    private final CapacityCurve curve = StrappingTables.table("A", Interpolation.FRITSCH_CARLSON);

    @Override
    protected CapacityCurve curve() {
      return curve;
    }
  }

  @Nested
  class IrregularStepsInStraightLines extends CapacityCurveContract {
    private final CapacityCurve curve = StrappingTables.table("B", Interpolation.LINEAR);

    @Override
    protected CapacityCurve curve() {
      return curve;
    }
  }

  @Nested
  class IrregularStepsByFritschAndCarlson extends CapacityCurveContract {
    private final CapacityCurve curve = StrappingTables.table("B", Interpolation.FRITSCH_CARLSON);

    @Override
    protected CapacityCurve curve() {
      return curve;
    }
  }

  @Nested
  class FlatStepsInStraightLines extends CapacityCurveContract {
    private final CapacityCurve curve = flatSteps(Interpolation.LINEAR);

    @Override
    protected CapacityCurve curve() {
      return curve;
    }
  }

  @Nested
  class FlatStepsByFritschAndCarlson extends CapacityCurveContract {
    private final CapacityCurve curve = flatSteps(Interpolation.FRITSCH_CARLSON);

    @Override
    protected CapacityCurve curve() {
      return curve;
    }
  }

  private static CapacityTable flatSteps(Interpolation interpolation) {
    List<CapacityRow> rows =
        List.of(
            new CapacityRow(1, 0, 0),
            new CapacityRow(2, 0.7, 0),
            new CapacityRow(3, 1.3, 4.1),
            new CapacityRow(4, 1.4, 4.1),
            new CapacityRow(5, 2.9, 9.3),
            new CapacityRow(6, 3.1, 9.3));
    return CapacityTable.of("flat steps", rows, interpolation);
  }
}
