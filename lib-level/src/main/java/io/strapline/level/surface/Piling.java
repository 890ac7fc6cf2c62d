package io.strapline.level.surface;

import io.strapline.level.internal.Check;

/**
 * Where and how steeply solids pile up and run out. Immutable.
 *
 * @param fillPoint place in plan where the stream falls
 * @param drawPoint place in plan over the outlet in use
 * @param fillReposeDegrees angle of the heap to the horizontal, in (0, 80]
 * @param drawReposeDegrees angle of the funnel to the horizontal, in (0, 80]; often steeper than
 *     the heap's
 */
public record Piling(
    PlanPoint fillPoint, PlanPoint drawPoint, double fillReposeDegrees, double drawReposeDegrees) {

  /** Checks the places and the angles. */
  public Piling {
    Check.present("Piling.fillPoint", fillPoint, "give the place where the stream falls");
    Check.present("Piling.drawPoint", drawPoint, "give the place over the outlet");
    repose("Piling.fillRepose", fillReposeDegrees);
    repose("Piling.drawRepose", drawReposeDegrees);
  }

  /** Returns filling and drawing on the vessel's axis with the same angle. */
  public static Piling central(double reposeDegrees) {
    return new Piling(PlanPoint.CENTRE, PlanPoint.CENTRE, reposeDegrees, reposeDegrees);
  }

  private static void repose(String field, double degrees) {
    if (!(degrees > 0 && degrees <= ConeSurface.STEEPEST_REPOSE_DEGREES)) {
      throw Check.error(
          field,
          degrees,
          "deg",
          "must be greater than 0 and at most " + ConeSurface.STEEPEST_REPOSE_DEGREES,
          "give the angle to the horizontal; for no correction choose ALWAYS_FLAT");
    }
  }

  ConeSurface heap() {
    return ConeSurface.heap(fillPoint, 0, fillReposeDegrees);
  }

  ConeSurface funnel() {
    return ConeSurface.funnel(drawPoint, 0, drawReposeDegrees);
  }
}
