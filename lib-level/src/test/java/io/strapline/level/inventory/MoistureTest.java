package io.strapline.level.inventory;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MoistureTest {

  // IRRI Rice Knowledge Bank, Moisture content calculations: 1000 kg of paddy at 25 % dried to 14 %
  // are 872 kg, printed to the kilogram.
  @Test
  void driesTheHarvestOfAPublishedExample() {
    double dried = Moisture.ofWetBasis(0.25).kilogramsAt(Moisture.ofWetBasis(0.14), 1000);
    assertEquals(872, dried, 0.5);
  }

  // 100 kg with 20 kg of water: 80 kg dry, 20/80 on the dry basis.
  @Test
  void convertsBetweenTheBasesBothWays() {
    Moisture wet = Moisture.ofWetBasis(0.2);
    assertEquals(0.25, wet.dryBasis(), 1e-15);
    assertEquals(0.2, Moisture.ofDryBasis(0.25).wetBasis(), 1e-15);
    assertEquals(80, wet.dryKilograms(100), 1e-12);
    assertEquals(20, wet.waterKilograms(100), 1e-12);
    assertEquals(100, wet.wetKilograms(80), 1e-12);
  }

  @Test
  void dryMaterialKeepsItsMass() {
    assertEquals(0, Moisture.DRY.dryBasis());
    assertEquals(500, Moisture.DRY.dryKilograms(500));
    assertEquals(0, Moisture.DRY.waterKilograms(500));
  }

  @Test
  void roundTripsAndWaterPlusDryIsAll() {
    long seed = 14;
    Random random = new Random(seed);
    for (int i = 0; i < 1000; i++) {
      Moisture moisture = Moisture.ofDryBasis(random.nextDouble() * 3);
      String where = "seed " + seed + " " + moisture;
      assertEquals(
          moisture.wetBasis(), Moisture.ofDryBasis(moisture.dryBasis()).wetBasis(), 1e-14, where);
      assertEquals(
          1234.5, moisture.dryKilograms(1234.5) + moisture.waterKilograms(1234.5), 1e-9, where);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1e-9, 1, 15})
  void refusesWhatIsNoFractionOfTheTotal(double wrong) {
    assertRefused("Moisture.wetBasis", () -> Moisture.ofWetBasis(wrong));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1e-9, 100.1})
  void refusesWhatIsNoFractionOfTheDryMass(double wrong) {
    assertRefused("Moisture.dryBasis", () -> Moisture.ofDryBasis(wrong));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1})
  void refusesWhatIsNoMass(double wrong) {
    assertRefused("Moisture.wetMass", () -> Moisture.DRY.dryKilograms(wrong));
    assertRefused("Moisture.wetMass", () -> Moisture.DRY.waterKilograms(wrong));
    assertRefused("Moisture.dryMass", () -> Moisture.DRY.wetKilograms(wrong));
  }

  @Test
  void findsProductsByNameAndListsThemWhenThereIsNone() {
    Product cement = new Product(" Cement ", BulkDensity.constant(1600), Moisture.DRY);
    Product meal =
        new Product("raw meal", BulkDensity.packing(900, 1200, 4), Moisture.ofWetBasis(0.01));
    ProductList list = ProductList.of(List.of(cement, meal));

    assertEquals("Cement", cement.name());
    assertEquals(cement, list.get("CEMENT"));
    assertEquals(meal, list.find(" Raw Meal ").orElseThrow());
    assertEquals(List.of(cement, meal), list.products());
    assertRefused("ProductList.name", () -> list.get("lime"));
    assertRefused("ProductList.name", () -> ProductList.of(List.of(cement, cement)));
  }
}
