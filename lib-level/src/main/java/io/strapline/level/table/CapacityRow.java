package io.strapline.level.table;

/**
 * One row of a capacity table. Immutable. It may hold anything: {@link CapacityTable#check} judges
 * it together with its neighbours.
 *
 * @param line where the row stands in its file, or its number, from 1; for messages only
 * @param heightMetres height above the datum, in metres
 * @param volumeCubicMetres volume below that height, in cubic metres
 */
public record CapacityRow(int line, double heightMetres, double volumeCubicMetres) {}
