package io.strapline.level.diagnosis;

import io.strapline.level.internal.Check;

/**
 * How long a symptom must stand before it is told, and be gone before that ends: one speck of dust
 * is no failure. Immutable.
 *
 * @param onSeconds finite, zero or more
 * @param offSeconds finite, zero or more
 */
public record HoldOff(double onSeconds, double offSeconds) {

  /** A minute each. */
  public static final HoldOff MINUTE = new HoldOff(60, 60);

  /** Checks both times. */
  public HoldOff {
    onSeconds =
        Check.notNegative("HoldOff.on", onSeconds, "s", "enter how long a symptom must stand");
    offSeconds =
        Check.notNegative("HoldOff.off", offSeconds, "s", "enter how long a symptom must be gone");
  }
}
