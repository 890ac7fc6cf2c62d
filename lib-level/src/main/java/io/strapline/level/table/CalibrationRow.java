package io.strapline.level.table;

import java.util.OptionalDouble;

/**
 * One row of a calibration by liquid. Immutable.
 *
 * @param line of the reading
 * @param heightMetres as read
 * @param volumeCubicMetres by the meter, corrected, from empty
 * @param standardCubicMetres standard uncertainty of the volume at that height
 * @param residualCubicMetres volume less that of a smooth curve through the neighbours; empty for
 *     the first and last reading, which have neighbours on one side only
 */
public record CalibrationRow(
    int line,
    double heightMetres,
    double volumeCubicMetres,
    double standardCubicMetres,
    OptionalDouble residualCubicMetres) {}
