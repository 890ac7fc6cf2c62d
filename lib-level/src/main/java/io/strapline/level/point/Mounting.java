package io.strapline.level.point;

import io.strapline.level.internal.Check;

/**
 * Where the transmitter sits and where it looks. Immutable.
 *
 * <p>{@code level = reference height - distance * cos(beam angle)}: derived here from the right
 * triangle of beam and plumb line; the surface is taken as level where the beam meets it.
 *
 * @param referenceHeightMetres height of the reference point (where the transmitter counts distance
 *     from) above the datum
 * @param beamAngleDegrees between the beam and the plumb line, in [0, 80]
 */
public record Mounting(double referenceHeightMetres, double beamAngleDegrees) {

  /** Checks both numbers. */
  public Mounting {
    referenceHeightMetres =
        Check.finite(
            "Mounting.referenceHeight",
            referenceHeightMetres,
            "m",
            "enter the height of the transmitter's zero above the datum");
    beamAngleDegrees =
        Check.between(
            "Mounting.beamAngle",
            beamAngleDegrees,
            "deg",
            0,
            80,
            "enter the angle between the beam and the plumb line");
  }

  /** Returns a beam that points straight down. */
  public static Mounting plumb(double referenceHeightMetres) {
    return new Mounting(referenceHeightMetres, 0);
  }

  /** Returns the level above the datum for a distance along the beam, both in metres. */
  public double levelMetres(double distanceMetres) {
    return referenceHeightMetres - ullageMetres(distanceMetres);
  }

  /** Returns the distance along the beam for a level above the datum, both in metres. */
  public double distanceMetres(double levelMetres) {
    return (referenceHeightMetres - levelMetres) / cosine();
  }

  /** Returns the plumb distance from the reference point down to the surface, in metres. */
  public double ullageMetres(double distanceMetres) {
    return distanceMetres * cosine();
  }

  private double cosine() {
    return Math.cos(Math.toRadians(beamAngleDegrees));
  }
}
