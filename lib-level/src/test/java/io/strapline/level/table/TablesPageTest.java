package io.strapline.level.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.LyingCylinder;
import io.strapline.level.vessel.StackedVessel;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Runs the examples of {@code docs/tables.md}; the expected numbers are worked by hand. */
class TablesPageTest {

  private static final String DELIVERED =
      """
      # table: LT-201 bitumen tank
      # reference height: 2.950 m
      # datum offset: 12 mm
      # decimal: comma
      ullage [cm];volume [L]
      0;47120
      10;46240,5
      25;44000
      # block: fraction
      # to: 10 cm
      part [cm];volume [L]
      5;440
      """;

  // 2.950 m - 5 cm + 12 mm is 2.912 m and holds 47 120 L - 440 L.
  @Test
  void theDeliveredUllageTable() {
    DeliveredTables delivered =
        DeliveredTables.read(DELIVERED, "lt-201.csv", DeliveryOptions.none());
    assertEquals(List.of(), delivered.problems());
    CapacityTable table = delivered.tables().get(0).capacityTable(Interpolation.LINEAR);
    assertEquals(4, table.size());
    assertEquals(46.680, table.volumeCubicMetres(2.912), 1e-9);
    assertEquals(44, table.volumeCubicMetres(2.712), 1e-9);
  }

  // 28.274 m2 x 5 m - 0.5 + 0.2 - pi / 4 x 0.2^2 x 1.5
  @Test
  void theDeadwood() {
    CapacityCurve vessel = StackedVessel.uprightCylinder(6, 5);
    CorrectedCurve curve =
        CorrectedCurve.of(
            vessel,
            List.of(
                Deadwood.evenly("agitator", 1, 3, -0.5),
                Deadwood.evenly("manhole", 2, 4, 0.2),
                Deadwood.displacing("coil", 0.2, new LyingCylinder(0.2, 1.5))));
    assertEquals(45 * Math.PI - 0.3 - 0.015 * Math.PI, curve.capacityCubicMetres(), 1e-9);
  }
}
