package io.strapline.level.loop;

import io.strapline.level.internal.Check;

/**
 * One reading of a calibration. Immutable.
 *
 * @param cycle number of the cycle, 1 or more
 * @param direction from which side the point was approached
 * @param ideal output that the input should give, in the unit of the span, finite
 * @param reading output that was read, in the same unit, finite
 */
public record CalibrationReading(int cycle, Direction direction, double ideal, double reading) {

  /** From which side a point is approached. */
  public enum Direction {
    /** With rising input. */
    UP,
    /** With falling input. */
    DOWN
  }

  /** Checks all parts. */
  public CalibrationReading {
    cycle =
        Check.between("CalibrationReading.cycle", cycle, "", 1, Integer.MAX_VALUE, "count from 1");
    Check.present("CalibrationReading.direction", direction, "give UP or DOWN");
    ideal = Check.finite("CalibrationReading.ideal", ideal, "", "enter the output wanted");
    reading = Check.finite("CalibrationReading.reading", reading, "", "enter what was read");
  }
}
