package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.Refusal;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What every {@link Vessel} keeps beyond {@link CapacityCurveContract}. */
abstract class VesselContract extends CapacityCurveContract {

  @Override
  protected abstract Vessel curve();

  /** Stricter than the contract of curves: a vessel's inverse is exact in the last bit. */
  @Test
  void theLowestHeightHoldsTheVolumeExactly() {
    long seed = 99_991;
    Random random = new Random(seed);
    double full = curve().maxHeightMetres();
    for (int i = 0; i < 2_000; i++) {
      double height = full * Math.pow(10, -9 * random.nextDouble());
      double volume = curve().volumeCubicMetres(height);
      double back = curve().heightMetres(volume);
      assertTrue(back <= height, () -> "height " + height + ", back " + back + ", seed " + seed);
      assertEquals(volume, curve().volumeCubicMetres(back), "height " + height + ", seed " + seed);
    }
  }

  /** The mean of the surface over a thin slice is the slice's volume over its height. */
  @Test
  void surfaceIsTheSlopeOfTheVolume() {
    long seed = 31_337;
    Random random = new Random(seed);
    double full = curve().maxHeightMetres();
    double mean = curve().capacityCubicMetres() / full;
    for (int i = 0; i < 500; i++) {
      double low = full * (0.01 + 0.97 * random.nextDouble());
      double slice = 1e-6 * full;
      double slope =
          (curve().volumeCubicMetres(low + slice) - curve().volumeCubicMetres(low)) / slice;
      double at = curve().surfaceSquareMetres(low);
      double after = curve().surfaceSquareMetres(low + slice);
      double slack = 1e-6 * mean;
      assertTrue(
          slope >= Math.min(at, after) - slack && slope <= Math.max(at, after) + slack,
          () -> "slope " + slope + ", surface " + at + " at " + low + ", seed " + seed);
    }
  }

  @Test
  void surfaceRefusesNotANumber() {
    String message = Refusal.of(() -> curve().surfaceSquareMetres(Double.NaN));
    assertTrue(message.contains("NaN"), message);
  }
}
