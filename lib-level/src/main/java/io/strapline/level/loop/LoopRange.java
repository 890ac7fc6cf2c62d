package io.strapline.level.loop;

import io.strapline.level.internal.Check;

/**
 * What 4 mA and 20 mA mean: a straight line between the lower and the upper range value. Reverse
 * acting ranges (lower above upper) are allowed. Nothing is clamped. Immutable.
 *
 * <p>{@code percent = (I - 4) / 16 * 100}, {@code value = LRV + (I - 4) / 16 * (URV - LRV)}: open
 * PLC engineering course, module 14 "Analog Signals and Process I/O", section 2.3.
 *
 * @param measure what the current stands for
 * @param lowerMetres value at 4 mA, any finite number
 * @param upperMetres value at 20 mA, any finite number other than {@code lowerMetres}
 */
public record LoopRange(Measure measure, double lowerMetres, double upperMetres) {

  /** What the loop current of a level transmitter stands for. */
  public enum Measure {
    /** Distance along the beam from the reference point to the surface. */
    DISTANCE,
    /** Level above the datum. */
    LEVEL
  }

  static final double LIVE_ZERO_MILLIAMPS = 4;
  static final double FULL_SCALE_MILLIAMPS = 20;
  static final double SPAN_MILLIAMPS = FULL_SCALE_MILLIAMPS - LIVE_ZERO_MILLIAMPS;

  /** Checks that the two ends are finite and differ. */
  public LoopRange {
    Check.present("LoopRange.measure", measure, "give DISTANCE or LEVEL");
    lowerMetres =
        Check.finite("LoopRange.lower", lowerMetres, "m", "enter the value that belongs to 4 mA");
    upperMetres =
        Check.finite("LoopRange.upper", upperMetres, "m", "enter the value that belongs to 20 mA");
    if (lowerMetres == upperMetres) {
      throw Check.error(
          "LoopRange.upper",
          upperMetres,
          "m",
          "must differ from lower (" + lowerMetres + " m)",
          "enter the value that belongs to 20 mA");
    }
  }

  /** Returns the range of a distance: {@code at4} metres at 4 mA, {@code at20} metres at 20 mA. */
  public static LoopRange ofDistance(double at4, double at20) {
    return new LoopRange(Measure.DISTANCE, at4, at20);
  }

  /** Returns the range of a level: {@code at4} metres at 4 mA, {@code at20} metres at 20 mA. */
  public static LoopRange ofLevel(double at4, double at20) {
    return new LoopRange(Measure.LEVEL, at4, at20);
  }

  /** Returns the value in metres for a current in mA; beyond 4 and 20 mA the line goes on. */
  public double valueMetres(double currentMilliamps) {
    double part = (currentMilliamps - LIVE_ZERO_MILLIAMPS) / SPAN_MILLIAMPS;
    // The two-sided form is exact at both ends.
    return lowerMetres * (1 - part) + upperMetres * part;
  }

  /** Returns the current in mA for a value in metres; beyond the range the line goes on. */
  public double currentMilliamps(double valueMetres) {
    return LIVE_ZERO_MILLIAMPS + SPAN_MILLIAMPS * part(valueMetres);
  }

  /**
   * Returns the percent of span for a value in metres: 0 at the lower, 100 at the upper range
   * value.
   */
  public double percent(double valueMetres) {
    return 100 * part(valueMetres);
  }

  /** Returns the percent of span for a current in mA: 0 at 4 mA, 100 at 20 mA. */
  public static double percentOfCurrent(double currentMilliamps) {
    return (currentMilliamps - LIVE_ZERO_MILLIAMPS) / SPAN_MILLIAMPS * 100;
  }

  private double part(double valueMetres) {
    return (valueMetres - lowerMetres) / (upperMetres - lowerMetres);
  }
}
