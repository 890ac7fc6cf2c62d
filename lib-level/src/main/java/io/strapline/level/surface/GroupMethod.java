package io.strapline.level.surface;

/** How the levels of several beams become one level and one volume. */
public enum GroupMethod {
  /**
   * Each beam stands for the part of the plan that is nearer to it than to any other beam, with a
   * flat surface there. Needs two beams.
   */
  AREA_WEIGHTED,
  /**
   * One plane through all levels by least squares, for a surface that is tilted more than it is
   * heaped. Needs three beams that do not stand in line.
   */
  FITTED_PLANE
}
