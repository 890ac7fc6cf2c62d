package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.Refusal;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** What every {@link CapacityCurve} keeps; extended by the tests of each shape and table. */
public abstract class CapacityCurveContract {

  private static final int TRIALS = 2_000;

  private static final double ROUND_TRIP = 1e-9;

  /** For the tests of each curve. */
  protected CapacityCurveContract() {}

  /** Returns the curve under test. */
  protected abstract CapacityCurve curve();

  @Test
  void hasAHeightAndACapacity() {
    assertTrue(curve().maxHeightMetres() > 0 && Double.isFinite(curve().maxHeightMetres()));
    assertTrue(curve().capacityCubicMetres() > 0 && Double.isFinite(curve().capacityCubicMetres()));
  }

  @Test
  void isExactAtBothEndsOfTheHeight() {
    assertEquals(0.0, curve().volumeCubicMetres(0));
    assertEquals(
        curve().capacityCubicMetres(), curve().volumeCubicMetres(curve().maxHeightMetres()));
  }

  @Test
  void findsTheEndsFromTheVolume() {
    assertEquals(0.0, curve().heightMetres(0));
    double full = curve().heightMetres(curve().capacityCubicMetres());
    assertTrue(full <= curve().maxHeightMetres());
    assertEquals(curve().capacityCubicMetres(), curve().volumeCubicMetres(full));
  }

  @Test
  void givesTheEndValueOutside() {
    double above = curve().maxHeightMetres();
    double capacity = curve().capacityCubicMetres();
    for (double beyond : new double[] {Math.ulp(above), 1e-9 * above, above, 1e300}) {
      assertEquals(0.0, curve().volumeCubicMetres(-beyond));
      assertEquals(capacity, curve().volumeCubicMetres(above + beyond));
    }
    assertEquals(0.0, curve().volumeCubicMetres(Double.NEGATIVE_INFINITY));
    assertEquals(capacity, curve().volumeCubicMetres(Double.POSITIVE_INFINITY));
    assertEquals(0.0, curve().heightMetres(Double.NEGATIVE_INFINITY));
    assertEquals(0.0, curve().heightMetres(-capacity));
    double full = curve().heightMetres(capacity);
    assertEquals(full, curve().heightMetres(2 * capacity));
    assertEquals(full, curve().heightMetres(Double.POSITIVE_INFINITY));
  }

  @Test
  void neverReturnsANegativeZero() {
    assertEquals(0L, Double.doubleToRawLongBits(curve().volumeCubicMetres(-0.0)));
    assertEquals(0L, Double.doubleToRawLongBits(curve().heightMetres(-0.0)));
  }

  @Test
  void refusesNotANumberByName() {
    String height = Refusal.of(() -> curve().volumeCubicMetres(Double.NaN));
    assertTrue(height.contains("NaN") && height.contains("eight"), height);
    String volume = Refusal.of(() -> curve().heightMetres(Double.NaN));
    assertTrue(volume.contains("NaN") && volume.contains("olume"), volume);
  }

  @Test
  void coversItsHeightsAndAHairMore() {
    double full = curve().maxHeightMetres();
    double hair = CapacityCurve.SNAP * full;
    for (double inside : new double[] {0, -0.0, full / 2, full, -0.999 * hair, full + 0.9 * hair}) {
      assertTrue(curve().covers(inside), "height " + inside);
    }
    for (double outside : new double[] {-1.01 * hair, full + 1.1 * hair, -1, full + 1, 1e300}) {
      assertFalse(curve().covers(outside), "height " + outside);
    }
    assertFalse(curve().covers(Double.NaN));
    assertFalse(curve().covers(Double.NEGATIVE_INFINITY));
    assertFalse(curve().covers(Double.POSITIVE_INFINITY));
  }

  @Test
  void volumeNeverFallsWithHeight() {
    neverFalls(curve()::volumeCubicMetres, curve().maxHeightMetres());
  }

  @Test
  void heightNeverFallsWithVolume() {
    neverFalls(curve()::heightMetres, curve().capacityCubicMetres());
  }

  /** Far apart, near together and neighbouring doubles, evenly and towards both ends. */
  private static void neverFalls(DoubleUnaryOperator function, double high) {
    long seed = 20_250_314;
    Random random = new Random(seed);
    for (int i = 0; i < TRIALS; i++) {
      double a = spread(random, high);
      double b = spread(random, high);
      rises(function, Math.min(a, b), Math.max(a, b), seed);
      rises(function, a, Math.min(a + a * 1e-15 * random.nextInt(1, 100), high), seed);
      double next = a;
      for (int step = 0; step < 8 && next < high; step++) {
        rises(function, next, Math.nextUp(next), seed);
        next = Math.nextUp(next);
      }
    }
  }

  private static void rises(DoubleUnaryOperator function, double low, double high, long seed) {
    double below = function.applyAsDouble(low);
    double above = function.applyAsDouble(high);
    assertTrue(
        below <= above,
        () -> "f(" + low + ") = " + below + " > f(" + high + ") = " + above + ", seed " + seed);
  }

  private static double spread(Random random, double high) {
    double even = random.nextDouble();
    double nearEnd = Math.pow(10, -12 * random.nextDouble());
    return high
        * switch (random.nextInt(3)) {
          case 0 -> even;
          case 1 -> nearEnd;
          default -> 1 - nearEnd;
        };
  }

  @Test
  void volumeToHeightAndBackGivesTheVolume() {
    long seed = 4_711;
    Random random = new Random(seed);
    double capacity = curve().capacityCubicMetres();
    for (int i = 0; i < TRIALS; i++) {
      double volume = spread(random, capacity);
      double height = curve().heightMetres(volume);
      assertTrue(height >= 0 && height <= curve().maxHeightMetres(), "height " + height);
      assertEquals(
          volume,
          curve().volumeCubicMetres(height),
          ROUND_TRIP * capacity,
          () -> "volume " + volume + ", height " + height + ", seed " + seed);
    }
  }

  /**
   * Where many heights hold one volume, the lowest is asked for: never one above the height. Close
   * under a point at the top (by the cube root of 1e-16) the volume is the capacity but for
   * rounding, and full is full.
   */
  @Test
  void heightToVolumeAndBackIsTheLowestHeight() {
    long seed = 1_009;
    Random random = new Random(seed);
    double top = curve().maxHeightMetres();
    for (int i = 0; i < TRIALS; i++) {
      double height = spread(random, top);
      double volume = curve().volumeCubicMetres(height);
      double back = curve().heightMetres(volume);
      boolean full = volume == curve().capacityCubicMetres() && height > (1 - 1e-5) * top;
      assertTrue(
          full || back <= height + ROUND_TRIP * top,
          () -> "height " + height + " came back as " + back + ", seed " + seed);
      assertEquals(
          volume, curve().volumeCubicMetres(back), ROUND_TRIP * curve().capacityCubicMetres());
    }
  }

  /** No jump: a step of a billionth of the height moves a small part of the capacity. */
  @Test
  void isContinuous() {
    long seed = 60_481;
    Random random = new Random(seed);
    double full = curve().maxHeightMetres();
    for (int i = 0; i < TRIALS; i++) {
      double height = spread(random, full);
      double up = curve().volumeCubicMetres(height + 1e-9 * full);
      double step = up - curve().volumeCubicMetres(height);
      assertTrue(
          step <= 1e-6 * curve().capacityCubicMetres(),
          () -> "jump of " + step + " m3 at " + height + ", seed " + seed);
    }
  }
}
