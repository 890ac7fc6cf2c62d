package io.strapline.level.surface;

import io.strapline.level.internal.Check;

/**
 * How wide a beam is. Width at a distance d: exit diameter + 2 d tan(divergence / 2), the cone of a
 * beam whose edge spreads at half the full divergence angle; derived here. Immutable.
 *
 * @param exitDiameterMetres where the beam leaves the device, in [0, 1]
 * @param divergenceDegrees full angle between opposite edges, in [0, 45]
 */
public record BeamSpread(double exitDiameterMetres, double divergenceDegrees) {

  /** A beam without width. */
  public static final BeamSpread THIN = new BeamSpread(0, 0);

  /** Checks both numbers. */
  public BeamSpread {
    exitDiameterMetres =
        Check.between(
            "BeamSpread.exitDiameter",
            exitDiameterMetres,
            "m",
            0,
            1,
            "give the beam's width at the device in metres");
    divergenceDegrees =
        Check.between(
            "BeamSpread.divergence",
            divergenceDegrees,
            "deg",
            0,
            45,
            "give the full angle; one milliradian is 0.0573 degrees");
  }

  /** Returns the width at a distance along the beam, both in metres. */
  public double widthMetres(double distanceMetres) {
    double half = Math.toRadians(divergenceDegrees) / 2;
    return exitDiameterMetres + 2 * distanceMetres * Math.tan(half);
  }
}
