package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Values are checked through {@link LyingCylinderTest}. */
class CircleSegmentTest {

  /** Long runs of neighbouring doubles where the formula changes: series, sine, upper half. */
  @ParameterizedTest
  @ValueSource(doubles = {1e-9, 0.01, 0.0612, 0.06120871905481, 0.0613, 0.2, 0.5, 0.9387, 0.99})
  void neverFallsBetweenNeighbours(double start) {
    double t = start;
    double part = CircleSegment.part(t);
    for (int i = 0; i < 50_000; i++) {
      t = Math.nextUp(t);
      double next = CircleSegment.part(t);
      assertTrue(next >= part, "at " + t);
      part = next;
    }
  }

  @Test
  void isExactAtTheEndsAndTheMiddle() {
    assertEquals(0.0, CircleSegment.part(0));
    assertEquals(0.5, CircleSegment.part(0.5));
    assertEquals(1.0, CircleSegment.part(1));
  }
}
