package io.strapline.level.vessel;

import io.strapline.level.internal.Check;

/**
 * The plan of an outlet or bin with rounded corners: rectangle, circle, slot with round ends or
 * anything between. Immutable.
 *
 * @param lengthMetres overall inside length along x, 0 or in [1e-6, 1e4]
 * @param widthMetres overall inside width along y, 0 or in [1e-6, 1e4]
 * @param cornerRadiusMetres inside radius of the four corners, 0 or at most half of the shorter
 *     side
 */
public record Outline(double lengthMetres, double widthMetres, double cornerRadiusMetres) {

  /** Checks the dimensions. */
  public Outline {
    lengthMetres = Dimensions.insideOrZero("Outline.length", lengthMetres);
    widthMetres = Dimensions.insideOrZero("Outline.width", widthMetres);
    double greatest = Math.min(lengthMetres, widthMetres) / 2;
    if (!(cornerRadiusMetres >= 0 && cornerRadiusMetres <= greatest)) {
      throw Check.error(
          "Outline.cornerRadius",
          cornerRadiusMetres,
          "m",
          "must lie between 0 and half of the shorter side, " + Dimensions.text(greatest),
          "give the inside radius of the corners, 0 for sharp ones");
    }
    cornerRadiusMetres += 0.0;
  }

  /** Returns a circle. */
  public static Outline circle(double diameterMetres) {
    Dimensions.inside("Outline.diameter", diameterMetres);
    return new Outline(diameterMetres, diameterMetres, diameterMetres / 2);
  }

  /** Returns a rectangle; a side of zero makes a line or a point. */
  public static Outline rectangle(double lengthMetres, double widthMetres) {
    return new Outline(lengthMetres, widthMetres, 0);
  }

  /**
   * Returns a slot with semicircular ends.
   *
   * @param overallLengthMetres over both ends, at least the width
   * @param widthMetres across
   */
  public static Outline roundEndedSlot(double overallLengthMetres, double widthMetres) {
    Dimensions.inside("Outline.width", widthMetres);
    if (!(overallLengthMetres >= widthMetres)) {
      throw Check.error(
          "Outline.overallLength",
          overallLengthMetres,
          "m",
          "must not be less than the width of " + Dimensions.text(widthMetres),
          "give the length over both round ends");
    }
    return new Outline(overallLengthMetres, widthMetres, widthMetres / 2);
  }

  /** Returns the area in square metres, zero or greater. */
  public double areaSquareMetres() {
    return mixedArea(this);
  }

  /**
   * Returns the mixed area with another outline of parallel sides. Each outline is a rectangle a x
   * b with a disc of radius r added all round, of area ab + 2 r (a + b) + pi r^2 (Steiner's
   * formula); the mixed area is the symmetric bilinear form that belongs to it.
   */
  double mixedArea(Outline other) {
    double a = lengthMetres - 2 * cornerRadiusMetres;
    double b = widthMetres - 2 * cornerRadiusMetres;
    double c = other.lengthMetres - 2 * other.cornerRadiusMetres;
    double d = other.widthMetres - 2 * other.cornerRadiusMetres;
    return (a * d + b * c) / 2
        + cornerRadiusMetres * (c + d)
        + other.cornerRadiusMetres * (a + b)
        + Math.PI * cornerRadiusMetres * other.cornerRadiusMetres;
  }

  String describe() {
    if (cornerRadiusMetres > 0
        && lengthMetres == widthMetres
        && cornerRadiusMetres == lengthMetres / 2) {
      return "round " + Dimensions.text(lengthMetres);
    }
    String size = Dimensions.text(lengthMetres) + " x " + Dimensions.text(widthMetres);
    return cornerRadiusMetres == 0
        ? size
        : size + " with corner radius " + Dimensions.text(cornerRadiusMetres);
  }
}
