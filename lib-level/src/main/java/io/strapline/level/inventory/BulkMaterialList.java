package io.strapline.level.inventory;

import io.strapline.level.inventory.BulkMaterial.Source;
import io.strapline.level.inventory.BulkMaterial.Span;
import io.strapline.level.units.DensityUnit;
import java.util.List;
import java.util.Optional;

/**
 * The built-in list of bulk materials, with the figures as their sources print them: unit weight in
 * kN/m3, density in lb/ft3 or t/m3. Stateless.
 */
final class BulkMaterialList {

  // Standard acceleration of free fall, m/s2, exact by definition (NIST SP 811, B.8).
  private static final double STANDARD_GRAVITY = 9.80665;

  static final List<BulkMaterial> ALL =
      List.of(
          new BulkMaterial(
              "gravel and sand",
              "bulk",
              weight(15, 20),
              span(35, 35),
              Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "sand", "", weight(14, 19), span(30, 30), Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "aggregate for normal concrete",
              "",
              weight(20, 30),
              span(30, 30),
              Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "aggregate for light concrete",
              "",
              weight(9, 20),
              span(30, 30),
              Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "blast furnace slag",
              "lumps",
              weight(17, 17),
              span(40, 40),
              Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "blast furnace slag",
              "granules",
              weight(12, 12),
              span(30, 30),
              Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "blast furnace slag",
              "crushed foamed",
              weight(9, 9),
              span(35, 35),
              Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "brick sand, crushed brick",
              "",
              weight(15, 15),
              span(35, 35),
              Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "bentonite", "loose", weight(8, 8), span(40, 40), Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "bentonite", "shaken down", weight(11, 11), none(), Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "cement", "bulk", weight(16, 16), span(28, 28), Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "gypsum", "ground", weight(15, 15), span(25, 25), Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "fly ash", "", weight(10, 14), span(25, 25), Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "lignite filter ash",
              "",
              weight(15, 15),
              span(20, 20),
              Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "lime", "", weight(13, 13), span(25, 25), Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "limestone",
              "powder",
              weight(13, 13),
              span(25, 27),
              Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "magnesite", "ground", weight(12, 12), none(), Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "polyethylene or polystyrene",
              "granulated",
              weight(6.4, 6.4),
              span(30, 30),
              Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "polyvinyl chloride",
              "powder",
              weight(5.9, 5.9),
              span(40, 40),
              Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial(
              "vermiculite", "crude", weight(6, 9), none(), Source.STORED_BUILDING_MATERIALS),
          new BulkMaterial("wheat", "", weight(7.5, 9), none(), Source.SILO_WHEAT),
          new BulkMaterial("fly ash", "", pounds(40, 45), span(42, 42), Source.BELT_CONVEYORS),
          new BulkMaterial(
              "cement, portland", "", pounds(72, 99), span(30, 44), Source.BELT_CONVEYORS),
          new BulkMaterial(
              "coal, anthracite",
              "river or culm",
              pounds(60, 60),
              span(35, 35),
              Source.BELT_CONVEYORS),
          new BulkMaterial(
              "coal, lignite", "", pounds(40, 45), span(38, 38), Source.BELT_CONVEYORS),
          new BulkMaterial("copper ore", "", pounds(120, 150), span(30, 44), Source.BELT_CONVEYORS),
          new BulkMaterial(
              "dolomite", "lumpy", pounds(80, 100), span(30, 44), Source.BELT_CONVEYORS),
          new BulkMaterial(
              "barley",
              "stored grain, safe moisture",
              tonnes(0.62, 0.62),
              span(30, 30),
              Source.STORED_GRAIN),
          new BulkMaterial(
              "canary seed",
              "stored grain, safe moisture",
              tonnes(0.70, 0.70),
              none(),
              Source.STORED_GRAIN),
          new BulkMaterial(
              "chickpea",
              "stored grain, safe moisture",
              tonnes(0.60, 0.60),
              none(),
              Source.STORED_GRAIN),
          new BulkMaterial(
              "faba bean",
              "stored grain, safe moisture",
              tonnes(0.75, 0.75),
              none(),
              Source.STORED_GRAIN),
          new BulkMaterial(
              "linseed",
              "stored grain, safe moisture",
              tonnes(0.73, 0.73),
              span(25, 25),
              Source.STORED_GRAIN),
          new BulkMaterial(
              "lupin",
              "stored grain, safe moisture",
              tonnes(0.75, 0.75),
              none(),
              Source.STORED_GRAIN),
          new BulkMaterial(
              "oats",
              "stored grain, safe moisture",
              tonnes(0.50, 0.50),
              none(),
              Source.STORED_GRAIN),
          new BulkMaterial(
              "pea",
              "stored grain, safe moisture",
              tonnes(0.75, 0.75),
              none(),
              Source.STORED_GRAIN),
          new BulkMaterial(
              "rapeseed",
              "stored grain, safe moisture",
              tonnes(0.67, 0.67),
              none(),
              Source.STORED_GRAIN),
          new BulkMaterial(
              "rye",
              "stored grain, safe moisture",
              tonnes(0.71, 0.71),
              none(),
              Source.STORED_GRAIN),
          new BulkMaterial(
              "safflower",
              "stored grain, safe moisture",
              tonnes(0.53, 0.53),
              span(24, 24),
              Source.STORED_GRAIN),
          new BulkMaterial(
              "triticale",
              "stored grain, safe moisture",
              tonnes(0.69, 0.69),
              none(),
              Source.STORED_GRAIN),
          new BulkMaterial(
              "wheat",
              "stored grain, safe moisture",
              tonnes(0.75, 0.75),
              span(28, 28),
              Source.STORED_GRAIN),
          new BulkMaterial("barley", "filling angle", none(), span(28, 28), Source.FILLING_ANGLES),
          new BulkMaterial(
              "shelled corn", "filling angle", none(), span(23, 23), Source.FILLING_ANGLES),
          new BulkMaterial("oats", "filling angle", none(), span(28, 28), Source.FILLING_ANGLES),
          new BulkMaterial(
              "soybeans", "filling angle", none(), span(25, 25), Source.FILLING_ANGLES),
          new BulkMaterial(
              "sunflower", "filling angle", none(), span(27, 27), Source.FILLING_ANGLES),
          new BulkMaterial("wheat", "filling angle", none(), span(25, 25), Source.FILLING_ANGLES));

  private BulkMaterialList() {}

  private static Optional<Span> none() {
    return Optional.empty();
  }

  private static Optional<Span> span(double low, double high) {
    return Optional.of(new Span(low, high));
  }

  private static Optional<Span> weight(double low, double high) {
    return span(1000 * low / STANDARD_GRAVITY, 1000 * high / STANDARD_GRAVITY);
  }

  private static Optional<Span> pounds(double low, double high) {
    return span(
        DensityUnit.POUND_PER_CUBIC_FOOT.toSi(low), DensityUnit.POUND_PER_CUBIC_FOOT.toSi(high));
  }

  private static Optional<Span> tonnes(double low, double high) {
    return span(
        DensityUnit.TONNE_PER_CUBIC_METRE.toSi(low), DensityUnit.TONNE_PER_CUBIC_METRE.toSi(high));
  }
}
