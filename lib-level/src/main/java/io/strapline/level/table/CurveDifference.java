package io.strapline.level.table;

/**
 * Where two curves part, and by how much. Immutable.
 *
 * @param heightMetres above the datum
 * @param firstCubicMetres volume of the first curve there
 * @param secondCubicMetres volume of the second curve there
 */
public record CurveDifference(
    double heightMetres, double firstCubicMetres, double secondCubicMetres) {

  /** Returns the second volume less the first, in cubic metres. */
  public double cubicMetres() {
    return secondCubicMetres - firstCubicMetres;
  }
}
