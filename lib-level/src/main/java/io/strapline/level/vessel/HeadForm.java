package io.strapline.level.vessel;

import io.strapline.level.internal.Check;

/**
 * A head on a shell of known diameter: its volume filled from either end while it stands, and from
 * the side while it lies. Immutable. The formulas are accurate near empty; {@link HeadSection} and
 * {@link LyingHead} put them together for all fillings.
 */
interface HeadForm {

  /** Inside depth in metres. */
  double depth();

  /** Whole volume in cubic metres. */
  double volume();

  /**
   * Volume within a distance of the apex, measured along the axis.
   *
   * @param distance in [0, {@link #apexReach}]
   */
  double nearApex(double distance);

  /**
   * Volume within a distance of the tangent line, measured along the axis.
   *
   * @param distance in [0, depth - {@link #apexReach}]
   */
  double nearRim(double distance);

  /** Distance from the apex up to which {@link #nearApex} is to be used. */
  double apexReach();

  /** Area of a section square to the axis at a distance from the apex in [0, depth]. */
  double areaNearApex(double distance);

  /**
   * Volume filled while the axis lies level.
   *
   * @param depth of the liquid above the lowest line of the shell, in [0, radius of the shell]
   */
  double lowerLying(double depth);

  /** Area of the level surface while the axis lies level, at a depth in [0, diameter]. */
  double surfaceLying(double depth);

  /** Returns whether the lower half, turned over, is the upper one while the axis lies level. */
  default boolean symmetricLying() {
    return true;
  }

  /** Returns the form of a head; refuses one that its shell cannot have. */
  static HeadForm of(Head head, double diameter) {
    Dimensions.inside("Head.diameter", diameter);
    if (head instanceof Head.Conical cone) {
      return new ConeForm(diameter, cone.depthMetres());
    }
    if (head instanceof Head.EccentricConical cone) {
      return new EccentricConeForm(new ConeForm(diameter, cone.depthMetres()));
    }
    if (head instanceof Head.SphericalDish dish) {
      double depth = atMost("Head.SphericalDish.depth", dish.depthMetres(), diameter / 2);
      return new DishForm(diameter, depth);
    }
    if (head instanceof Head.Torispherical tori) {
      return new TorisphericalForm(diameter, tori.crownRatio(), tori.knuckleRatio());
    }
    return new SpheroidForm(diameter, spheroidDepth(head, diameter));
  }

  /** Depth of the heads that are half a spheroid; a flat one has none. */
  private static double spheroidDepth(Head head, double diameter) {
    if (head instanceof Head.Hemispherical) {
      return diameter / 2;
    }
    if (head instanceof Head.SemiEllipsoidal) {
      return diameter / 4;
    }
    if (head instanceof Head.Ellipsoidal free) {
      return atMost("Head.Ellipsoidal.depth", free.depthMetres(), diameter);
    }
    if (head instanceof Head.Flat) {
      return 0;
    }
    throw new IllegalStateException("no form for " + head.describe());
  }

  private static double atMost(String field, double depth, double limit) {
    if (!(depth <= limit)) {
      throw Check.error(
          field,
          depth,
          "m",
          "must not be greater than " + Dimensions.text(limit) + " on this shell",
          "give the inside depth in metres from the tangent line, without the straight flange");
    }
    return depth;
  }
}
