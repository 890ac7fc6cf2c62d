package io.strapline.level.surface;

import io.strapline.level.internal.Check;

/**
 * Where a transmitter sits and where its beam looks, in space. The direction is (sin t cos a, sin t
 * sin a, -cos t) with t the tilt and a its azimuth: derived here. Immutable.
 *
 * @param heightMetres of the transmitter's reference point above the datum; finite
 * @param position of the reference point in plan
 * @param tiltDegrees between the beam and the plumb line, in [0, 80]
 * @param azimuthDegrees towards which the beam is tilted, anticlockwise from the x axis seen from
 *     above, in [-360, 360]; of no effect without tilt
 * @param spread of the beam
 */
public record Beam(
    double heightMetres,
    PlanPoint position,
    double tiltDegrees,
    double azimuthDegrees,
    BeamSpread spread) {

  /** Steepest tilt; a beam flatter than this measures no level. */
  public static final double MOST_TILT_DEGREES = 80;

  /** Checks the numbers. */
  public Beam {
    heightMetres =
        Check.finite(
            "Beam.height", heightMetres, "m", "give the reference point's height above the datum");
    Check.present("Beam.position", position, "give the place in plan");
    Check.present("Beam.spread", spread, "give the spread, THIN to leave it out");
    tiltDegrees =
        Check.between(
            "Beam.tilt",
            tiltDegrees,
            "deg",
            0,
            MOST_TILT_DEGREES,
            "give the angle between the beam and the plumb line");
    azimuthDegrees =
        Check.between(
            "Beam.azimuth",
            azimuthDegrees,
            "deg",
            -360,
            360,
            "give the direction of the tilt, anticlockwise from the x axis");
  }

  /** Returns a thin beam that points straight down. */
  public static Beam plumb(double heightMetres, PlanPoint position) {
    return new Beam(heightMetres, position, 0, 0, BeamSpread.THIN);
  }

  /** Returns this beam aimed otherwise. */
  public Beam aimed(double newTiltDegrees, double newAzimuthDegrees) {
    return new Beam(heightMetres, position, newTiltDegrees, newAzimuthDegrees, spread);
  }

  /** Returns the metres downwards per metre of beam: the cosine of the tilt. */
  double down() {
    return Math.cos(Math.toRadians(tiltDegrees));
  }

  double alongX() {
    return Math.sin(Math.toRadians(tiltDegrees)) * Math.cos(Math.toRadians(azimuthDegrees));
  }

  double alongY() {
    return Math.sin(Math.toRadians(tiltDegrees)) * Math.sin(Math.toRadians(azimuthDegrees));
  }

  /** Returns the level above the datum at a distance along the beam, both in metres. */
  public double levelMetres(double distanceMetres) {
    return heightMetres - plumbMetres(distanceMetres);
  }

  /** Returns the plumb distance down that belongs to a distance along the beam, in metres. */
  public double plumbMetres(double distanceMetres) {
    return distanceMetres * down();
  }

  /** Returns the distance along the beam to a level, both in metres; negative above the beam. */
  public double distanceMetres(double levelMetres) {
    return (heightMetres - levelMetres) / down();
  }

  /** Returns the place in plan at a distance along the beam. */
  public PlanPoint placeAt(double distanceMetres) {
    return new PlanPoint(
        position.xMetres() + distanceMetres * alongX(),
        position.yMetres() + distanceMetres * alongY());
  }

  /** Returns the place in plan where the beam passes a level. */
  public PlanPoint footAt(double levelMetres) {
    return tiltDegrees == 0 ? position : placeAt(distanceMetres(levelMetres));
  }
}
