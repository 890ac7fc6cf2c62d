package io.strapline.level.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.uncertainty.MeasuredContent.Beam;
import io.strapline.level.vessel.StackedVessel;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

/** Runs the example of {@code docs/uncertainty.md}; the expected numbers are worked by hand. */
class UncertaintyPageTest {

  private static ContentUncertainty silo(double transmitterMetres, double density) {
    MeasuredContent content =
        new MeasuredContent(new Beam(9, 0, 17), StackedVessel.uprightCylinder(6, 16), 1350, 0);
    return ContentUncertainty.of(
        content,
        List.of(
            UncertaintySource.rectangular("transmitter", Influence.DISTANCE, transmitterMetres),
            LoopSources.current("current output", 0.1, 20),
            UncertaintySource.certified("mounting", Influence.REFERENCE_HEIGHT, 0.010, 2),
            UncertaintySource.rectangular("heap", Influence.SURFACE, 0.15),
            UncertaintySource.certified("diameter", Influence.VOLUME_PART, 0.005, 2),
            UncertaintySource.rectangular("bulk density", Influence.DENSITY, density)),
        2);
  }

  private static double share(UncertaintyBudget budget, String name) {
    return budget.contributions().stream()
        .filter(line -> line.name().equals(name))
        .mapToDouble(budget::sharePercent)
        .sum();
  }

  // u^2 = (0.010^2 + 0.020^2 + 0.15^2) / 3 + 0.005^2 = 0.007 691 67; area 9 pi.
  @Test
  void theCementSilo() {
    UncertaintyBudget level = silo(0.010, 67.5).level();
    assertEquals(8, level.result().value());
    assertEquals(2 * Math.sqrt(0.00769167), level.expanded(), 1e-6);
    assertEquals(100 * 0.0075 / 0.00769167, share(level, "heap"), 1e-3);

    // (28.274 x 0.087 702)^2 + (226.195 x 0.0025)^2 = 6.4688
    UncertaintyBudget volume = silo(0.010, 67.5).volume();
    assertEquals(226.195, volume.result().value(), 5e-4);
    assertEquals(5.087, volume.expanded(), 2e-3);

    // (1350 x 2.5434)^2 + (226.195 x 67.5)^2 / 3 = 9460^2
    UncertaintyBudget mass = silo(0.010, 67.5).mass();
    assertEquals(305_363, mass.result().value(), 1);
    assertEquals(18_920, mass.expanded(), 2);
    assertEquals(86.8, share(mass, "bulk density"), 0.05);
    assertEquals(6.2, mass.expandedPercent().orElseThrow(), 0.05);
    assertFalse(mass.linearisationDoubtful());
  }

  @Test
  void aTransmitterTwiceAsGoodHardlyHelps() {
    for (double part : List.of(ratio(ContentUncertainty::level), ratio(ContentUncertainty::mass))) {
      assertTrue(part > 0.998 && part < 1, "part " + part);
    }
  }

  private static double ratio(Function<ContentUncertainty, UncertaintyBudget> budget) {
    return budget.apply(silo(0.005, 67.5)).expanded() / budget.apply(silo(0.010, 67.5)).expanded();
  }

  // (1350 x 2.5434)^2 + (226.195 x 27)^2 / 3 = 4921.8^2
  @Test
  void aDensityKnownToTwoPercentDoes() {
    assertEquals(9_844, silo(0.010, 27).mass().expanded(), 2);
  }
}
