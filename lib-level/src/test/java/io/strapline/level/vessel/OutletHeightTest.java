package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.testing.Refusals;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** By hand on an upright cylinder of 1 m2: a volume in cubic metres is a height in metres. */
class OutletHeightTest {

  private static final Vessel BIN = StackedVessel.rectangularBin(new Rectangle(1, 1), 5);

  @Test
  void deadVolumeIsLeftOutOfTheUsableOnly() {
    OutletHeight outlet = new OutletHeight(BIN, 0.4);
    assertEquals(0.4, outlet.deadCubicMetres(), 1e-15);
    assertEquals(4.6, outlet.usableCapacityCubicMetres(), 1e-15);
    assertEquals(1.6, outlet.usableCubicMetres(2), 1e-15);
    assertEquals(2, outlet.vessel().volumeCubicMetres(2), 1e-15);
    assertEquals(0, outlet.usableCubicMetres(0.3));
    assertEquals(4.6, outlet.usableCubicMetres(9), 1e-15);
  }

  @Test
  void findsTheSurfaceOfAUsableVolume() {
    OutletHeight outlet = new OutletHeight(BIN, 0.4);
    assertEquals(2, outlet.surfaceMetres(1.6), 1e-15);
    assertEquals(0.4, outlet.surfaceMetres(0));
    assertEquals(0.4, outlet.surfaceMetres(-1));
    assertEquals(5, outlet.surfaceMetres(99));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -0.001, 5, 5.1})
  void refusesAnOutletOutsideTheVessel(double bad) {
    Refusals.assertRefused("OutletHeight.height", () -> new OutletHeight(BIN, bad));
    assertEquals(0, new OutletHeight(BIN, 0).deadCubicMetres());
  }

  @Test
  void refusesNotANumber() {
    OutletHeight outlet = new OutletHeight(BIN, 0.4);
    Refusals.assertRefused("OutletHeight.usableVolume", () -> outlet.surfaceMetres(Double.NaN));
    Refusals.assertRefused("StackedVessel.height", () -> outlet.usableCubicMetres(Double.NaN));
  }
}
