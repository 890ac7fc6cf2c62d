package io.strapline.level.table;

/**
 * One reading of a calibration by liquid: a level and what the meter put in to reach it. Immutable.
 *
 * @param line where it stands in its record, or its number, from 1; for messages only
 * @param heightMetres level above the datum, read at rest
 * @param meteredCubicMetres what the meter indicated since the reading before; in the first reading
 *     the volume that was in the vessel already, which is not corrected by the meter's factor
 */
public record FillReading(int line, double heightMetres, double meteredCubicMetres) {}
