package io.strapline.level.vessel;

import io.strapline.level.internal.Check;

/**
 * The straight cylindrical part of a tank between its tangent lines, by inside dimensions.
 * Immutable.
 *
 * @param diameterMetres inside diameter, in [1e-6, 1e4]
 * @param lengthMetres tangent line to tangent line: the height of an upright, the length of a lying
 *     tank, in [1e-6, 1e4]
 */
public record Shell(double diameterMetres, double lengthMetres) {

  /** Checks the dimensions. */
  public Shell {
    Dimensions.inside("Shell.diameter", diameterMetres);
    Dimensions.inside("Shell.length", lengthMetres);
  }

  /**
   * Returns the shell whose diameter was taken outside, as round the tank with a tape.
   *
   * @param outsideDiameterMetres in [1e-6, 1e4]
   * @param wallThicknessMetres of the wall with its lining, zero or greater, less than half the
   *     outside diameter
   * @param lengthMetres as of the shell; it is not changed by the wall
   */
  public static Shell fromOutside(
      double outsideDiameterMetres, double wallThicknessMetres, double lengthMetres) {
    return new Shell(insideDiameter(outsideDiameterMetres, wallThicknessMetres), lengthMetres);
  }

  /**
   * Returns this shell with the straight flanges of its two heads added, for a shell length that
   * was taken from weld to weld. A straight flange is the short cylinder pressed onto a head.
   *
   * @param firstMetres straight flange of the bottom or left head, zero or greater
   * @param secondMetres straight flange of the top or right head, zero or greater
   */
  public Shell withStraightFlanges(double firstMetres, double secondMetres) {
    String fix = "give the length of the cylinder on the head, 0 if there is none";
    Check.notNegative("Shell.firstStraightFlange", firstMetres, "m", fix);
    Check.notNegative("Shell.secondStraightFlange", secondMetres, "m", fix);
    return new Shell(diameterMetres, lengthMetres + firstMetres + secondMetres);
  }

  static double insideDiameter(double outsideDiameterMetres, double wallThicknessMetres) {
    Dimensions.inside("Shell.outsideDiameter", outsideDiameterMetres);
    if (!(wallThicknessMetres >= 0 && 2 * wallThicknessMetres < outsideDiameterMetres)) {
      throw Check.error(
          "Shell.wallThickness",
          wallThicknessMetres,
          "m",
          "must be zero or greater and less than half the outside diameter of "
              + Dimensions.text(outsideDiameterMetres),
          "give the thickness of one wall in metres");
    }
    return outsideDiameterMetres - 2 * wallThicknessMetres;
  }
}
