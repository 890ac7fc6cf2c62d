package io.strapline.level.surface;

import io.strapline.level.internal.Check;

/**
 * What several beams on one vessel may differ by. A pile stands no steeper than its angle of
 * repose, so two levels can differ by the slope times the distance of the beams in plan, and by a
 * limit that allows for the measurement. Immutable.
 *
 * @param limitMetres allowance on top of the slope, greater than zero
 * @param steepestDegrees steepest slope that the surface can have, in [0, 80]; 0 for a liquid
 * @param fewestBeams beams that must give a usable level, at least 1; with fewer the result is BAD
 * @param levelUncertaintyMetres uncertainty of one beam's level, zero or more; the least
 *     uncertainty of the group
 */
public record BeamAgreement(
    double limitMetres, double steepestDegrees, int fewestBeams, double levelUncertaintyMetres) {

  /** Most beams that a group may have. */
  public static final int MOST_BEAMS = 64;

  /** Checks the numbers. */
  public BeamAgreement {
    Check.positive(
        "BeamAgreement.limit", limitMetres, "m", "give a few times the uncertainty of a level");
    steepestDegrees =
        Check.between(
            "BeamAgreement.steepest",
            steepestDegrees,
            "deg",
            0,
            ConeSurface.STEEPEST_REPOSE_DEGREES,
            "give the steepest angle of repose, 0 for a liquid");
    Check.between(
        "BeamAgreement.fewestBeams",
        fewestBeams,
        "",
        1,
        MOST_BEAMS,
        "say how many beams must be left");
    levelUncertaintyMetres =
        Check.notNegative(
            "BeamAgreement.levelUncertainty",
            levelUncertaintyMetres,
            "m",
            "give the uncertainty of one beam's level");
  }

  /** Returns the greatest difference of two levels at this distance in plan, both in metres. */
  double allowedMetres(double apartMetres) {
    return steepness() * apartMetres + limitMetres;
  }

  double steepness() {
    return Math.tan(Math.toRadians(steepestDegrees));
  }
}
