package io.strapline.level.uncertainty;

import io.strapline.level.internal.Check;
import io.strapline.level.vessel.CapacityCurve;

/**
 * The model of a content measured from above: level = reference height - distance x cos(tilt),
 * volume from the curve, mass = density x volume. Immutable.
 *
 * @param beam where the beam starts and what it measures
 * @param curve the volume against the level
 * @param densityKgPerCubicMetre density or bulk density, greater than zero
 * @param densityPerKelvin change of the density per kelvin, in kg/m3 per K, usually negative; 0
 *     where temperature does not matter
 */
public record MeasuredContent(
    Beam beam, CapacityCurve curve, double densityKgPerCubicMetre, double densityPerKelvin) {

  private static final double STEEPEST_DEGREES = 80;

  /**
   * The beam.
   *
   * @param distanceMetres measured along the beam, zero or more
   * @param tiltDegrees between beam and plumb line, in [0, 80]
   * @param referenceHeightMetres of its start above the datum of the curve, finite
   */
  public record Beam(double distanceMetres, double tiltDegrees, double referenceHeightMetres) {

    /** Checks the numbers. */
    public Beam {
      distanceMetres =
          Check.notNegative("Beam.distance", distanceMetres, "m", "give the measured distance");
      tiltDegrees =
          Check.between(
              "Beam.tilt", tiltDegrees, "deg", 0, STEEPEST_DEGREES, "give the angle to the plumb");
      referenceHeightMetres =
          Check.finite(
              "Beam.referenceHeight", referenceHeightMetres, "m", "measure it above the datum");
    }

    /** Returns the level above the datum, in metres. */
    public double levelMetres() {
      return referenceHeightMetres - distanceMetres * cosine();
    }

    double cosine() {
      return Math.cos(Math.toRadians(tiltDegrees));
    }

    /** Change of the level per degree of tilt, in metres: distance x sin(tilt). */
    double levelPerDegree() {
      double perRadian = distanceMetres * Math.sin(Math.toRadians(tiltDegrees));
      return Math.toRadians(perRadian);
    }

    /** Half the second derivative of the level, per square degree: distance x cos(tilt) / 2. */
    double halfBendPerSquareDegree() {
      return distanceMetres * cosine() / 2 * Math.toRadians(1) * Math.toRadians(1);
    }
  }

  /** Checks the fields. */
  public MeasuredContent {
    Check.present("MeasuredContent.beam", beam, "give the beam");
    Check.present("MeasuredContent.curve", curve, "give the vessel or its capacity table");
    Check.positive(
        "MeasuredContent.density", densityKgPerCubicMetre, "kg/m3", "give the product's density");
    densityPerKelvin =
        Check.finite(
            "MeasuredContent.densityPerKelvin", densityPerKelvin, "kg/m3 per K", "give 0 if none");
  }

  /** Returns the volume, in cubic metres; beyond the ends of the curve its end value. */
  public double volumeCubicMetres() {
    return curve.volumeCubicMetres(beam.levelMetres());
  }

  /** Returns the mass, in kilograms. */
  public double massKg() {
    return densityKgPerCubicMetre * volumeCubicMetres();
  }
}
