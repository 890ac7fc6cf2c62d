package io.strapline.level.point;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.inventory.BulkDensity;
import io.strapline.level.vessel.StackedVessel;
import java.time.Instant;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A point whose material packs under its own weight, in a cylinder of pi square metres. */
class PackedMassTest {

  private static final Instant TIME = Instant.parse("2026-01-05T08:00:00Z");

  private static PointSettings.Builder point() {
    return PointSettings.builder("LT-1")
        .mounting(new Mounting(10, 0))
        .vessel(StackedVessel.uprightCylinder(2, 8))
        .bulkDensity(BulkDensity.packing(900, 1200, 2));
  }

  /** By hand: the integral of 1200 - 300 exp(-z / 2) over the height h. */
  private static double mass(double h) {
    return Math.PI * (1200 * h - 600 * (1 - Math.exp(-h / 2)));
  }

  private static double massAt(double level) {
    PointSnapshot snapshot =
        MeasuringPoint.of(point().build(), TIME).accept(Sample.level(TIME, level));
    return snapshot.reading(Quantity.MASS).orElseThrow().value();
  }

  @Test
  void theMassIsTheIntegralOverTheDepth() {
    for (double level : new double[] {0.5, 4, 7.9}) {
      assertEquals(mass(level), massAt(level), 1e-8 * mass(level));
    }
    assertEquals(0, massAt(0));
  }

  @Test
  void aboveTheVesselItIsThatOfTheFullOne() {
    assertEquals(mass(8), massAt(8.5), 1e-8 * mass(8));
    assertEquals(mass(8), point().build().greatestMassKilograms().orElseThrow(), 1e-8 * mass(8));
  }

  @Test
  void theGreatestMassNeedsVesselAndDensity() {
    PointSettings.Builder position = PointSettings.builder("ZT-1").mounting(new Mounting(10, 0));
    assertEquals(OptionalDouble.empty(), position.build().greatestMassKilograms());
    position.vessel(StackedVessel.uprightCylinder(2, 8));
    assertEquals(OptionalDouble.empty(), position.build().greatestMassKilograms());
    double constant = position.density(1000).build().greatestMassKilograms().orElseThrow();
    assertEquals(Math.PI * 8000, constant, 1e-9);
  }

  @Test
  void twoDensitiesAreRefused() {
    String message =
        String.valueOf(
            assertThrows(IllegalArgumentException.class, () -> point().density(1000).build())
                .getMessage());
    assertTrue(message.startsWith("PointSettings.density = 1000.0 kg/m3"), message);
  }

  @Test
  void aCopyKeepsEverySetting() {
    PointSettings copy = point().build().toBuilder().build();
    assertEquals(point().build().bulkDensity(), copy.bulkDensity());
    assertEquals(point().build().vessel(), copy.vessel());
  }
}
