package io.strapline.level.inventory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.inventory.MassCurve.Mass;
import io.strapline.level.inventory.TabulatedDensity.Row;
import io.strapline.level.table.CapacityRow;
import io.strapline.level.table.CapacityTable;
import io.strapline.level.table.Interpolation;
import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.ConeSection;
import io.strapline.level.vessel.StackedVessel;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class MassCurveTest {

  private static final double AREA = 28;
  private static final CapacityCurve SILO = Vessels.upright(AREA, 20);

  static List<CsvRow> references() {
    return CsvRows.read(MassCurveTest.class, "mass_reference.csv");
  }

  // Another form of the integral, evaluated with another tool at 30 digits.
  @ParameterizedTest
  @MethodSource("references")
  void meetsTheIntegralOverTheCrossSection(CsvRow row) {
    BulkDensity density =
        BulkDensity.packing(
            row.number("surface_kg_m3"), row.number("deep_kg_m3"), row.number("depth_constant_m"));
    Mass mass = MassCurve.of(vessel(row), density).atHeight(row.number("h_m"));
    double expected = row.number("mass_kg");
    assertEquals(expected, mass.kilograms(), row.number("rel_tol") * expected);
    assertWithin(expected, mass);
  }

  private static CapacityCurve vessel(CsvRow row) {
    return row.text("vessel").startsWith("lying")
        ? Vessels.lying(1.25, 8)
        : StackedVessel.uprightCylinderOnCone(new ConeSection(0.5, 6, 4), 15);
  }

  // Straight lines between the rows and a heel of 2 m3; 600 + 40 d down to 3 m, 720 below. Exact
  // fractions by hand, since every piece is a line times a line.
  @ParameterizedTest
  @CsvSource({"0.5, 3680", "2, 19040", "4, 56100", "5, 80400"})
  void weighsByACapacityTableWithKinksAndAHeel(double height, double expected) {
    CapacityTable table =
        CapacityTable.of(
            "sump",
            List.of(
                new CapacityRow(1, 0, 2),
                new CapacityRow(2, 1, 10),
                new CapacityRow(3, 3, 50),
                new CapacityRow(4, 5, 120)),
            Interpolation.LINEAR);
    BulkDensity density = BulkDensity.byDepth(List.of(new Row(0, 600), new Row(3, 720)));
    assertWithin(expected, MassCurve.of(table, density).atHeight(height));
  }

  @Test
  void aConstantDensityIsExact() {
    Mass mass = MassCurve.of(SILO, BulkDensity.constant(750)).atHeight(10);
    assertEquals(210_000, mass.kilograms(), 1e-9);
    assertEquals(0, mass.errorKilograms());
    assertTrue(mass.converged());
  }

  // Upright: A (deep h - (deep - surface) L (1 - exp(-h/L))), by hand.
  @Test
  void packsInAnUprightSilo() {
    MassCurve curve = MassCurve.of(SILO, BulkDensity.packing(700, 800, 3));
    for (double h : new double[] {1e-6, 0.1, 1, 5, 20}) {
      double expected = AREA * (800 * h - 100 * 3 * -Math.expm1(-h / 3));
      assertWithin(expected, curve.atHeight(h));
    }
  }

  // Cone V = c h^3: 3 c (L h^2 - 2 L^2 h + 2 L^3 (1 - exp(-h/L))) is the integral of 3 c z^2
  // exp(-(h-z)/L), by hand.
  @Test
  void packsInACone() {
    double c = 0.4;
    double l = 2;
    MassCurve curve = MassCurve.of(Vessels.cone(c, 8), BulkDensity.packing(500, 900, l));
    for (double h : new double[] {0.5, 3, 8}) {
      double loosened = 3 * c * (l * h * h - 2 * l * l * h + 2 * l * l * l * -Math.expm1(-h / l));
      assertWithin(900 * c * h * h * h - 400 * loosened, curve.atHeight(h));
    }
  }

  // Density 700 + g d in a sphere: 700 V + g pi (R h^3 / 3 - h^4 / 12), by hand.
  @Test
  void packsInASphereByATable() {
    BulkDensity table = BulkDensity.byDepth(List.of(new Row(0, 700), new Row(10, 900)));
    MassCurve curve = MassCurve.of(Vessels.sphere(3), table);
    for (double h : new double[] {0.2, 3, 5.9, 6}) {
      double volume = Math.PI * h * h * (9 - h) / 3;
      double packed = 20 * Math.PI * (3 * h * h * h / 3 - h * h * h * h / 12);
      assertWithin(700 * volume + packed, curve.atHeight(h));
    }
  }

  // Upright, 700 at the surface, 740 from 2 m down: A (700 h + 20 d^2/2 + 40 (h - d)), d =
  // min(h,2).
  @Test
  void holdsTheLastRowOfATableBelowIt() {
    BulkDensity table = BulkDensity.byDepth(List.of(new Row(0, 700), new Row(2, 740)));
    MassCurve curve = MassCurve.of(SILO, table);
    assertWithin(AREA * (700 * 1 + 10), curve.atHeight(1));
    assertWithin(AREA * (700 * 2 + 40), curve.atHeight(2));
    assertWithin(AREA * (700 * 12 + 40 + 40 * 10), curve.atHeight(12));
  }

  // A step from 4 m2 to 25 m2 at 1 m; linear density 600 + 50 d, by hand for a surface at 3 m.
  @Test
  void aStepInTheVesselDoesNoHarm() {
    CapacityCurve stepped = new Vessels.Shape(5, h -> h < 1 ? 4 * h : 4 + 25 * (h - 1));
    BulkDensity table = BulkDensity.byDepth(List.of(new Row(0, 600), new Row(10, 1100)));
    double expected = 25 * (600 * 2 + 50 * 2) + 4 * (600 * 1 + 50 * 2.5);
    assertWithin(expected, MassCurve.of(stepped, table).atHeight(3));
  }

  // The heel of a table below its datum lies under everything else.
  @Test
  void aHeelCountsWithTheDensityAtTheDatum() {
    CapacityCurve heel = new Vessels.Shape(10, h -> 5 + AREA * h);
    BulkDensity table = BulkDensity.byDepth(List.of(new Row(0, 700), new Row(20, 900)));
    double expected = 5 * 740 + AREA * (700 * 4 + 10 * 8);
    assertWithin(expected, MassCurve.of(heel, table).atHeight(4));
  }

  @Test
  void emptyHasNoMassAndOutsideCountsAsTheEnd() {
    MassCurve curve = MassCurve.of(SILO, BulkDensity.packing(700, 800, 3));
    assertEquals(0, curve.atHeight(0).kilograms());
    assertEquals(0, curve.atHeight(-3).kilograms());
    assertEquals(curve.full(), curve.atHeight(20.5));
  }

  @Test
  void theMassOfAVolumeIsThatOfItsHeight() {
    MassCurve curve = MassCurve.of(SILO, BulkDensity.packing(700, 800, 3));
    double byHeight = curve.atHeight(10).kilograms();
    assertEquals(byHeight, curve.ofVolume(280).kilograms(), 1e-6);
    assertEquals(byHeight, Content.mass(curve).at(10));
    assertEquals(280, Content.volume(SILO).at(10), 1e-12);
  }

  @Test
  void neverFallsWithTheHeight() {
    long seed = 750;
    Random random = new Random(seed);
    for (int i = 0; i < 50; i++) {
      double surface = 300 + random.nextInt(1000);
      BulkDensity density =
          BulkDensity.packing(
              surface, surface + random.nextInt(400), 0.1 + random.nextDouble() * 20);
      MassCurve curve = MassCurve.of(Vessels.sphere(2), density);
      double last = -1;
      for (double h = 0; h <= 4; h += 0.25) {
        double mass = curve.atHeight(h).kilograms();
        assertTrue(mass >= last, "seed " + seed + " height " + h + " " + density);
        last = mass;
      }
    }
  }

  // A saw of 20 000 teeth: more than the cells can follow.
  @Test
  void saysWhenTheCapOnTheWorkIsHit() {
    CapacityCurve saw =
        new Vessels.Shape(20, h -> h + 0.001 * (h * 1000 - Math.floor(h * 1000) < 0.5 ? 0 : 1) / 2);
    Mass mass = MassCurve.of(saw, BulkDensity.packing(700, 1400, 3)).full();
    assertFalse(mass.converged());
    double volume = saw.capacityCubicMetres();
    assertTrue(mass.kilograms() > 700 * volume && mass.kilograms() < 1400 * volume);
    double smooth = 1400 * 20 - 700 * 3 * -Math.expm1(-20 / 3.0);
    assertTrue(mass.errorKilograms() > 0);
    assertEquals(smooth, mass.kilograms(), 1e-3 * smooth);
  }

  @Test
  void refusesNan() {
    MassCurve curve = MassCurve.of(SILO, BulkDensity.constant(700));
    assertThrows(IllegalArgumentException.class, () -> curve.atHeight(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> curve.ofVolume(Double.NaN));
  }

  // The stated error holds, and 1e-12 of the mass for the rounding of the sum.
  private static void assertWithin(double expected, Mass mass) {
    assertTrue(mass.converged(), mass.toString());
    assertEquals(expected, mass.kilograms(), mass.errorKilograms() + 1e-12 * expected);
    assertTrue(mass.errorKilograms() <= 1.001e-9 * expected, mass.toString());
  }
}
