package io.strapline.level.table;

/**
 * A range of heights in which two curves differ by more than a limit, in one direction. Immutable.
 *
 * @param fromMetres where it begins
 * @param toMetres where it ends
 * @param greatest the greatest difference in it
 */
public record DifferenceRange(double fromMetres, double toMetres, CurveDifference greatest) {}
