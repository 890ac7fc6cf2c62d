package io.strapline.level.vessel;

import io.strapline.level.internal.Check;

/**
 * A hopper between two different outlines with parallel sides: round to slot, round to square,
 * rectangle to round, also straight walls over an outline. Immutable.
 *
 * <p>The walls are the usual plate development, the convex hull of both outlines. A level section
 * at the part t of the height is their Minkowski mix (1 - t) bottom + t top, of area (1 - t)^2 A0 +
 * 2 t (1 - t) Am + t^2 A1, Am being the mixed area of {@link Outline#mixedArea}. Between a circle
 * of radius r and an outline of perimeter P, 2 Am is r P and the volume is height (A0 / 3 + r P / 6
 * + A1 / 3) (theory of mixed volumes, Brunn and Minkowski). A hopper built with other surfaces
 * holds another volume. Where the outlet lies in plan changes no volume.
 *
 * @param bottom outline at the lower edge
 * @param top outline at the upper edge
 * @param heightMetres upright height, in [1e-6, 1e4]
 */
public record TransitionSection(Outline bottom, Outline top, double heightMetres)
    implements Section {

  /** Checks the dimensions. */
  public TransitionSection {
    Dimensions.inside("TransitionSection.height", heightMetres);
    Check.positive(
        "TransitionSection.volume",
        taper(bottom, top, heightMetres).volume(),
        "m3",
        "give each side a length at one end at least");
  }

  private static Taper taper(Outline bottom, Outline top, double height) {
    return new Taper(
        height, bottom.areaSquareMetres(), bottom.mixedArea(top), top.areaSquareMetres());
  }

  private Taper taper() {
    return taper(bottom, top, heightMetres);
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
    String height = ", " + Dimensions.text(heightMetres) + " high";
    return bottom.equals(top)
        ? "straight walls " + bottom.describe() + height
        : "transition, " + bottom.describe() + " to " + top.describe() + height;
  }
}
