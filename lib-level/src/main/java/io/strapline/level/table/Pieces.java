package io.strapline.level.table;

/** The curve between the rows of a table. Immutable. */
abstract class Pieces {

  /** Returns the volume at a height above the first and below the last row. */
  abstract double volume(double height);

  /**
   * Returns the lowest height that gives a volume.
   *
   * @param row the first row whose volume is not below {@code volume}; not the first of the table
   */
  abstract double height(double volume, int row);

  /** Returns the pieces by the method. */
  static Pieces of(double[] heights, double[] volumes, Interpolation interpolation) {
    return switch (interpolation) {
      case LINEAR -> new LinearPieces(heights, volumes);
      case FRITSCH_CARLSON ->
          new CubicPieces(heights, volumes, FritschCarlson.slopes(heights, volumes));
    };
  }
}
