package io.strapline.level.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class QuadratureTest {

  /** The 15-point Kronrod rule is exact up to degree 22: QUADPACK, QK15. */
  @Test
  void isExactForPolynomials() {
    for (int degree = 0; degree <= 22; degree++) {
      int power = degree;
      Quadrature one = new Quadrature(x -> Math.pow(x, power), 1, 100);
      assertEquals(1.0 / (degree + 1), one.over(0, 1), 1e-15, "degree " + degree);
    }
  }

  @Test
  void halvesUntilKinksAndEndsOfInfiniteSlopeAreSmall() {
    Quadrature kink = new Quadrature(x -> Math.abs(x - 0.3), 1e-12, 100_000);
    assertEquals((0.09 + 0.49) / 2, kink.over(0, 1), 1e-10);
    Quadrature root = new Quadrature(Math::sqrt, 1e-12, 100_000);
    assertEquals(2 / 3.0, root.over(0, 1), 1e-10);
  }

  /** When the cap is hit, the stated error tells of it. */
  @Test
  void stopsAtTheCapAndStatesTheError() {
    Quadrature capped = new Quadrature(x -> x < 0.3 ? 0 : 1, 1e-15, 30);
    double value = capped.over(0, 1);
    assertTrue(Math.abs(value - 0.7) <= capped.error(), () -> value + " +- " + capped.error());
  }

  @Test
  void findsKinksBetweenSamples() {
    Breaks breaks = new Breaks(0, 2);
    breaks.add(1);
    breaks.add(5);
    breaks.addSignChanges(x -> x - Math.sqrt(2));
    double[] rising = breaks.rising();
    assertEquals(4, rising.length);
    assertEquals(Math.sqrt(2), rising[2], 1e-14);
  }
}
