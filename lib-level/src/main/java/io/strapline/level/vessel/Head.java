package io.strapline.level.vessel;

import io.strapline.level.internal.Check;

/**
 * The end of a cylindrical vessel, between its tangent line and the outermost inside point: flat
 * end, cone, hemisphere, ellipsoidal, spherical or torispherical dish. Depths are inside depths
 * measured along the axis from the tangent line; a straight flange belongs to the shell, see {@link
 * Shell#withStraightFlanges}. A head stands below, above or at the side of a shell, whose diameter
 * completes it. All heads are immutable.
 *
 * <p>What each dimension means is drawn in {@code docs/vessels.md}.
 */
public sealed interface Head
    permits Head.Flat,
        Head.Conical,
        Head.EccentricConical,
        Head.Hemispherical,
        Head.SemiEllipsoidal,
        Head.Ellipsoidal,
        Head.SphericalDish,
        Head.Torispherical {

  /**
   * Returns the inside depth from the tangent line.
   *
   * @param diameterMetres inside diameter of the shell, in [1e-6, 1e4]
   * @return metres, zero for a flat head only
   * @throws IllegalArgumentException if the head cannot have this diameter
   */
  default double depthMetres(double diameterMetres) {
    return HeadForm.of(this, diameterMetres).depth();
  }

  /**
   * Returns the inside volume beyond the tangent line.
   *
   * @param diameterMetres inside diameter of the shell, in [1e-6, 1e4]
   * @return cubic metres, zero for a flat head only
   * @throws IllegalArgumentException if the head cannot have this diameter
   */
  default double volumeCubicMetres(double diameterMetres) {
    return HeadForm.of(this, diameterMetres).volume();
  }

  /** Returns the head in a short English phrase. */
  String describe();

  /** A flat end or bottom. */
  record Flat() implements Head {
    @Override
    public String describe() {
      return "flat";
    }
  }

  /**
   * A cone with its apex on the axis of the shell.
   *
   * @param depthMetres from the tangent line to the apex, in [1e-6, 1e4]
   */
  record Conical(double depthMetres) implements Head {
    /** Checks the depth. */
    public Conical {
      Dimensions.inside("Head.Conical.depth", depthMetres);
    }

    @Override
    public String describe() {
      return "cone " + Dimensions.text(depthMetres) + " deep";
    }
  }

  /**
   * A cone whose apex is level with the top of a lying shell, so that the top line runs on straight
   * and the bottom line rises. On an upright vessel it holds what any cone of its depth holds.
   *
   * @param depthMetres along the axis from the tangent line to the apex, in [1e-6, 1e4]
   */
  record EccentricConical(double depthMetres) implements Head {
    /** Checks the depth. */
    public EccentricConical {
      Dimensions.inside("Head.EccentricConical.depth", depthMetres);
    }

    @Override
    public String describe() {
      return "eccentric cone " + Dimensions.text(depthMetres) + " deep";
    }
  }

  /** Half a sphere: as deep as the radius of the shell. */
  record Hemispherical() implements Head {
    @Override
    public String describe() {
      return "hemispherical";
    }
  }

  /** The 2:1 ellipsoidal head: half a spheroid, a quarter of the diameter deep. */
  record SemiEllipsoidal() implements Head {
    @Override
    public String describe() {
      return "2:1 ellipsoidal";
    }
  }

  /**
   * Half a spheroid of any depth.
   *
   * @param depthMetres from the tangent line, in [1e-6, 1e4], at most the diameter of the shell (a
   *     limit of ours against slips of unit; common practice, no source)
   */
  record Ellipsoidal(double depthMetres) implements Head {
    /** Checks the depth. */
    public Ellipsoidal {
      Dimensions.inside("Head.Ellipsoidal.depth", depthMetres);
    }

    @Override
    public String describe() {
      return "ellipsoidal " + Dimensions.text(depthMetres) + " deep";
    }
  }

  /**
   * A part of one sphere, without a knuckle. The sphere's radius is (depth^2 + R^2) / (2 depth).
   *
   * @param depthMetres from the tangent line, in [1e-6, 1e4], at most the radius of the shell: a
   *     deeper part would be wider than the shell
   */
  record SphericalDish(double depthMetres) implements Head {
    /** Checks the depth. */
    public SphericalDish {
      Dimensions.inside("Head.SphericalDish.depth", depthMetres);
    }

    @Override
    public String describe() {
      return "spherical dish " + Dimensions.text(depthMetres) + " deep";
    }
  }

  /**
   * A spherical crown and a knuckle that leads it over into the shell: the common dished end. Both
   * radii are inside radii, as ratios of the inside diameter. From D = 1: depth = f - sqrt((f -
   * 1/2) (f + 1/2 - 2k)), derived here from the two tangent circles.
   *
   * @param crownRatio f, crown (dish) radius / inside diameter, in [0.5, 10]
   * @param knuckleRatio k, knuckle radius / inside diameter, in [1e-4, 0.45]; with 0.5 the head
   *     would be a hemisphere
   */
  record Torispherical(double crownRatio, double knuckleRatio) implements Head {

    /**
     * Torispherical head with crown radius 1.0 D and knuckle radius 0.06 D, the common flanged and
     * dished head. The ratios are as listed in the documentation of the fluids library; the
     * standard itself was not read.
     */
    public static final Torispherical ASME_F_AND_D = new Torispherical(1.0, 0.06);

    /**
     * Torispherical head with crown radius 1.0 D and knuckle radius 0.1 D. The standard takes D as
     * the outside diameter (from memory, the standard was not read): for a wall that is not thin
     * use {@link #onInsideOf}.
     */
    public static final Torispherical DIN_28011 = new Torispherical(1.0, 0.1);

    /**
     * Torispherical head with crown radius 0.8 D and knuckle radius 0.154 D. As for {@link
     * #DIN_28011} D is the outside diameter (from memory).
     */
    public static final Torispherical DIN_28013 = new Torispherical(0.8, 0.154);

    private static final double LEAST_CROWN = 0.5;
    private static final double GREATEST_CROWN = 10;
    private static final double LEAST_KNUCKLE = 1e-4;
    private static final double GREATEST_KNUCKLE = 0.45;

    /** Checks the ratios. */
    public Torispherical {
      Check.between(
          "Head.Torispherical.crownRatio",
          crownRatio,
          "of the diameter",
          LEAST_CROWN,
          GREATEST_CROWN,
          "give crown radius / inside diameter; a smaller crown does not span the shell");
      Check.between(
          "Head.Torispherical.knuckleRatio",
          knuckleRatio,
          "of the diameter",
          LEAST_KNUCKLE,
          GREATEST_KNUCKLE,
          "give knuckle radius / inside diameter, or take a spherical dish or a hemispherical head");
    }

    /**
     * Returns this head with its ratios taken as ratios of the outside diameter, converted to the
     * inside of a shell: f = ratio x outside / inside diameter, and so for the knuckle. Both radii
     * stay inside radii.
     *
     * @param outsideDiameterMetres in [1e-6, 1e4]
     * @param wallThicknessMetres zero or greater, less than half the outside diameter
     */
    public Torispherical onInsideOf(double outsideDiameterMetres, double wallThicknessMetres) {
      double inside = Shell.insideDiameter(outsideDiameterMetres, wallThicknessMetres);
      double scale = outsideDiameterMetres / inside;
      return new Torispherical(crownRatio * scale, knuckleRatio * scale);
    }

    @Override
    public String describe() {
      return "torispherical, crown "
          + Dimensions.ratio(crownRatio)
          + " D, knuckle "
          + Dimensions.ratio(knuckleRatio)
          + " D";
    }
  }
}
