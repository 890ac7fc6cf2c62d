package io.strapline.level.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.Refusal;
import io.strapline.level.testing.Refusals;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.LyingCylinder;
import io.strapline.level.vessel.Rectangle;
import io.strapline.level.vessel.Sphere;
import io.strapline.level.vessel.StackedVessel;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CorrectedCurveTest {

  private static final CapacityCurve TANK = StackedVessel.rectangularBin(new Rectangle(2, 3), 5);

  private static CorrectedCurve tank(Deadwood... deadwood) {
    return CorrectedCurve.of(TANK, List.of(deadwood));
  }

  /** By hand: 6 m2, less 0.5 m3 spread from 1 to 3 m, plus 0.2 m3 from 2 to 4 m. */
  @Test
  void countsDisplacementAndRoomByHand() {
    CorrectedCurve curve =
        tank(Deadwood.evenly("agitator", 1, 3, -0.5), Deadwood.evenly("manhole", 2, 4, 0.2));

    assertEquals(6, curve.volumeCubicMetres(1), 1e-12);
    assertEquals(9 - 0.125, curve.volumeCubicMetres(1.5), 1e-12);
    assertEquals(15 - 0.375 + 0.05, curve.volumeCubicMetres(2.5), 1e-12);
    assertEquals(24 - 0.5 + 0.2, curve.volumeCubicMetres(4), 1e-12);
    assertEquals(29.7, curve.capacityCubicMetres(), 1e-12);
    assertEquals(2.5, curve.heightMetres(14.675), 1e-12);
    assertEquals(2, curve.deadwood().size());
  }

  /** A sphere of 1 m in a bin, from 1 to 2 m: pi h^2 (3 R - h) / 3 below, pi / 6 above. */
  @Test
  void spreadsAShapeAsItIs() {
    CorrectedCurve curve = tank(Deadwood.displacing("float", 1, new Sphere(1)));
    double h = 0.25;

    assertEquals(7.5 - Math.PI * h * h * (1.5 - h) / 3, curve.volumeCubicMetres(1.25), 1e-9);
    assertEquals(30 - Math.PI / 6, curve.capacityCubicMetres(), 1e-12);
  }

  /** The plain sum, at random heights: never further off than the curve says. */
  @Test
  void staysWithinItsOwnErrorOfThePlainSum() {
    CapacityCurve vessel = new LyingCylinder(2.4, 10);
    Deadwood coil = Deadwood.displacing("coil", 0.2, new LyingCylinder(0.5, 8));
    Deadwood frame = Deadwood.evenly("frame", 0.3, 2.2, -0.4);
    CorrectedCurve curve = CorrectedCurve.of(vessel, List.of(coil, frame));
    long seed = 12;
    Random random = new Random(seed);
    for (int i = 0; i < 20_000; i++) {
      double height = 2.4 * random.nextDouble();
      double sum =
          vessel.volumeCubicMetres(height)
              + coil.belowCubicMetres(height)
              + frame.belowCubicMetres(height);
      assertEquals(
          sum,
          curve.volumeCubicMetres(height),
          curve.spreadErrorCubicMetres() + 1e-12,
          "seed " + seed);
    }
    assertTrue(curve.spreadErrorCubicMetres() < 1e-4 * curve.capacityCubicMetres());
  }

  @Test
  void straightVesselsWithEvenDeadwoodAreExactEverywhere() {
    CorrectedCurve curve = tank(Deadwood.evenly("post", 0, 5, -1));
    long seed = 13;
    Random random = new Random(seed);
    for (int i = 0; i < 5_000; i++) {
      double height = 5 * random.nextDouble();
      assertEquals(5.8 * height, curve.volumeCubicMetres(height), 1e-12, "seed " + seed);
    }
  }

  @Test
  void keepsTheHeelOfATable() {
    CapacityTable table =
        CapacityTable.read("height [m];volume [m3]\n1;4\n2;10\n3;16\n", "with a heel");
    CorrectedCurve curve = CorrectedCurve.of(table, List.of(Deadwood.evenly("post", 1, 3, -1)));

    assertEquals(4, curve.volumeCubicMetres(0.5));
    assertEquals(9.5, curve.volumeCubicMetres(2), 1e-12);
    assertEquals(1, curve.heightMetres(3));
    assertEquals(15, curve.capacityCubicMetres());
    assertTrue(!curve.covers(0.5) && curve.covers(1) && curve.covers(3) && !curve.covers(3.1));
  }

  @Test
  void refusesDeadwoodThatMakesTheVolumeFallAndNamesWhereAndWhat() {
    String message =
        Refusal.of(
            () ->
                tank(
                    Deadwood.evenly("post", 0, 5, -1),
                    Deadwood.evenly("misread beam", 2, 2.1, -0.7)));

    assertTrue(message.startsWith("CorrectedCurve.volume = "), message);
    assertTrue(message.contains("falls from 2.0000 to 2.1000 m"), message);
    assertTrue(message.contains("misread beam"), message);
  }

  @Test
  void refusesDeadwoodThatTakesMoreThanThereIs() {
    String message = Refusal.of(() -> tank(Deadwood.evenly("slab", 0, 0.1, -0.7)));

    assertTrue(message.contains("falls below zero from 0.0000 to 0.1000 m"), message);
    assertTrue(message.contains("slab"), message);
  }

  @Test
  void allowsDeadwoodThatFillsAHeightWhole() {
    CorrectedCurve curve = tank(Deadwood.evenly("slab", 0, 0.5, -3));

    assertEquals(0, curve.volumeCubicMetres(0.5), 1e-12);
    assertEquals(3, curve.volumeCubicMetres(1), 1e-12);
  }

  @Test
  void refusesDeadwoodOutsideTheVessel() {
    CapacityTable table = CapacityTable.read("height [m];volume [m3]\n1;4\n3;16\n", "heel");
    Refusals.assertRefused(
        "CorrectedCurve.deadwood", () -> tank(Deadwood.evenly("post", 4, 5.1, -0.1)));
    Refusals.assertRefused(
        "CorrectedCurve.deadwood",
        () -> CorrectedCurve.of(table, List.of(Deadwood.evenly("post", 0.5, 2, -0.1))));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesDeadwoodThatIsNotFinite(double bad) {
    Refusals.assertRefused("Deadwood.bottom", () -> Deadwood.evenly("d", bad, 1, 1));
    Refusals.assertRefused("Deadwood.top", () -> Deadwood.evenly("d", 0, bad, 1));
    Refusals.assertRefused("Deadwood.volume", () -> Deadwood.evenly("d", 0, 1, bad));
  }

  @Test
  void refusesDeadwoodWithoutHeightVolumeOrName() {
    Refusals.assertRefused("Deadwood.bottom", () -> Deadwood.evenly("d", -1e-9, 1, 1));
    Refusals.assertRefused("Deadwood.top", () -> Deadwood.evenly("d", 1, 1, 1));
    Refusals.assertRefused("Deadwood.top", () -> Deadwood.evenly("d", 1, 0.5, 1));
    Refusals.assertRefused("Deadwood.volume", () -> Deadwood.evenly("d", 0, 1, 0));
    Refusals.assertRefused("Deadwood.volume", () -> Deadwood.evenly("d", 0, 1, -0.0));
    assertTrue(Refusal.of(() -> Deadwood.evenly(" ", 0, 1, 1)).contains("Deadwood.name"));
  }
}
