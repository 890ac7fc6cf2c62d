package io.strapline.level.vessel;

import io.strapline.level.internal.Check;

/**
 * The frustum of an upright cone between two diameters: a conical hopper with its outlet, a cone
 * that comes to a point, a conical roof. An eccentric outlet changes no volume. Immutable.
 *
 * @param bottomDiameterMetres inside diameter at the lower edge, 0 for a point or in [1e-6, 1e4]
 * @param topDiameterMetres inside diameter at the upper edge, 0 for a point or in [1e-6, 1e4]; not
 *     both are 0
 * @param heightMetres upright height, in [1e-6, 1e4]
 */
public record ConeSection(
    double bottomDiameterMetres, double topDiameterMetres, double heightMetres) implements Section {

  /** Checks the dimensions. */
  public ConeSection {
    bottomDiameterMetres =
        Dimensions.insideOrZero("ConeSection.bottomDiameter", bottomDiameterMetres);
    topDiameterMetres = Dimensions.insideOrZero("ConeSection.topDiameter", topDiameterMetres);
    Dimensions.inside("ConeSection.height", heightMetres);
    if (bottomDiameterMetres == 0 && topDiameterMetres == 0) {
      throw Check.error(
          "ConeSection.topDiameter", 0, "m", "must not be zero at both ends", "give the wide end");
    }
  }

  /**
   * Returns the cone whose wall stands at an angle to the vertical, half the included angle at the
   * apex: the hopper half angle.
   *
   * @param bottomDiameterMetres as of the cone
   * @param topDiameterMetres as of the cone, other than the bottom
   * @param halfAngleDegrees between wall and vertical, in (0, 90)
   */
  public static ConeSection withHalfAngleToVertical(
      double bottomDiameterMetres, double topDiameterMetres, double halfAngleDegrees) {
    Dimensions.acute(
        "ConeSection.halfAngleToVertical",
        halfAngleDegrees,
        "give the angle between wall and vertical, half the included angle");
    double spread = spread(bottomDiameterMetres, topDiameterMetres);
    double height = spread / Math.tan(Math.toRadians(halfAngleDegrees));
    return new ConeSection(bottomDiameterMetres, topDiameterMetres, height);
  }

  /**
   * Returns the cone whose wall stands at an angle to the horizontal, as the slope of a hopper wall
   * or a roof is given.
   *
   * @param bottomDiameterMetres as of the cone
   * @param topDiameterMetres as of the cone, other than the bottom
   * @param wallAngleDegrees between wall and horizontal, in (0, 90)
   */
  public static ConeSection withWallAngleToHorizontal(
      double bottomDiameterMetres, double topDiameterMetres, double wallAngleDegrees) {
    Dimensions.acute(
        "ConeSection.wallAngleToHorizontal",
        wallAngleDegrees,
        "give the angle between wall and horizontal");
    double spread = spread(bottomDiameterMetres, topDiameterMetres);
    double height = spread * Math.tan(Math.toRadians(wallAngleDegrees));
    return new ConeSection(bottomDiameterMetres, topDiameterMetres, height);
  }

  private static double spread(double bottomDiameterMetres, double topDiameterMetres) {
    Dimensions.insideOrZero("ConeSection.bottomDiameter", bottomDiameterMetres);
    Dimensions.insideOrZero("ConeSection.topDiameter", topDiameterMetres);
    if (bottomDiameterMetres == topDiameterMetres) {
      throw Check.error(
          "ConeSection.topDiameter",
          topDiameterMetres,
          "m",
          "must differ from the bottom diameter when the cone is given by an angle",
          "give the height, or take a cylinder");
    }
    return Math.abs(topDiameterMetres - bottomDiameterMetres) / 2;
  }

  private Taper taper() {
    double quarter = Math.PI / 4;
    return new Taper(
        heightMetres,
        quarter * bottomDiameterMetres * bottomDiameterMetres,
        quarter * bottomDiameterMetres * topDiameterMetres,
        quarter * topDiameterMetres * topDiameterMetres);
  }

  @Override
  public double volumeCubicMetres() {
    return taper().volume();
  }

  @Override
  public double volumeBelow(double aboveBottomMetres) {
    return taper().volumeBelow(aboveBottomMetres);
  }

  @Override
  public double areaAt(double aboveBottomMetres) {
    return taper().areaAt(aboveBottomMetres);
  }

  @Override
  public double aboutHeightOf(double cubicMetres) {
    return taper().aboutHeightOf(cubicMetres);
  }

  @Override
  public String describe() {
    return "cone, diameter "
        + Dimensions.text(bottomDiameterMetres)
        + " to "
        + Dimensions.text(topDiameterMetres)
        + ", "
        + Dimensions.text(heightMetres)
        + " high";
  }
}
