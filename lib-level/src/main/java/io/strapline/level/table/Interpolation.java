package io.strapline.level.table;

/** How volumes between the rows of a capacity table are found. Both pass through every row. */
public enum Interpolation {
  /**
   * Straight lines between the rows: the usual way to use a strapping table, and the one that an
   * auditor can repeat by hand.
   */
  LINEAR,
  /**
   * Cubic pieces with a continuous slope that never overshoot, by the method of F. N. Fritsch and
   * R. E. Carlson, "Monotone piecewise cubic interpolation", SIAM J. Numer. Anal. 17 (1980): slopes
   * start as the mean of the neighbouring secants (at the ends, the secant itself) and are cut back
   * to the circle of radius 3 where the piece would not be monotone. The curve of {@code
   * splinefun(method = "monoH.FC")} in R; other methods called monotone cubic give other curves.
   */
  FRITSCH_CARLSON
}
