package io.strapline.bridge.publish.opcua;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.testing.CheckValues;
import io.strapline.level.units.CurrentUnit;
import io.strapline.level.units.LengthUnit;
import io.strapline.level.units.MassUnit;
import io.strapline.level.units.RatioUnit;
import io.strapline.level.units.VolumeUnit;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class EngineeringUnitsTest {

  /** UNECE_to_OPCUA.csv of the OPC Foundation's UA-Nodeset; the source stands in each row. */
  private static final List<CheckValues.Row> PUBLISHED =
      CheckValues.rows(EngineeringUnitsTest.class, "ua_units.csv");

  @Test
  void numbersEveryPublishedUnitAsTheTableDoes() {
    assertTrue(PUBLISHED.size() > 30, "rows: " + PUBLISHED.size());
    PUBLISHED.forEach(
        row ->
            assertEquals(
                Integer.parseInt(row.get("unit_id")),
                EngineeringUnits.unitId(row.get("unece_code")),
                row.get("unece_code")));
  }

  @Test
  void namesThePublishedUnitOfEachPublishedQuantity() {
    Map.of(
            LengthUnit.METRE, "m",
            VolumeUnit.CUBIC_METRE, "m³",
            MassUnit.KILOGRAM, "kg",
            RatioUnit.PERCENT, "% or pct",
            CurrentUnit.MILLIAMPERE, "mA")
        .forEach(
            (unit, displayName) -> {
              var row =
                  PUBLISHED.stream()
                      .filter(candidate -> candidate.get("display_name").equals(displayName))
                      .findFirst()
                      .orElseThrow();
              var told = EngineeringUnits.of(unit);
              assertEquals(Integer.parseInt(row.get("unit_id")), told.getUnitId());
              assertEquals(
                  "http://www.opcfoundation.org/UA/units/un/cefact", told.getNamespaceUri());
            });
  }
}
