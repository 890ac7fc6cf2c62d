package io.strapline.level.loop;

import java.util.OptionalDouble;

/**
 * What a calibration tells of the device, all in percent of span. Immutable. Definitions from
 * memory (IEC 61298-2 practice).
 *
 * @param inaccuracy range of the errors of all readings
 * @param measuredError average error at one point, over all cycles and both directions, where it is
 *     largest in size; with its sign
 * @param hysteresis largest difference of the rising and falling averages at one point; empty when
 *     no point was approached from both sides
 * @param repeatability largest spread of readings at one point in one direction; empty when none
 *     was read twice
 * @param conformity of the averages at the points
 */
public record CalibrationFigures(
    Inaccuracy inaccuracy,
    double measuredError,
    OptionalDouble hysteresis,
    OptionalDouble repeatability,
    Conformity conformity) {

  /**
   * Range of the errors of all readings.
   *
   * @param greatestPositive zero or more
   * @param greatestNegative zero or less
   */
  public record Inaccuracy(double greatestPositive, double greatestNegative) {}
}
