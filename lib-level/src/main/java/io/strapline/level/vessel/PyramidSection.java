package io.strapline.level.vessel;

import io.strapline.level.internal.Check;

/**
 * Four flat or twisted walls between two level rectangles with parallel sides: pyramid hopper,
 * wedge hopper over a slot, one-sided chute, hopper whose outlet has another proportion than the
 * bin. Where the outlet lies in plan changes no volume. The frustum formula with the root of the
 * two areas holds only for equal proportions and is not used. Immutable.
 *
 * @param bottom plan at the lower edge, also a line or a point
 * @param top plan at the upper edge, also a line or a point
 * @param heightMetres upright height, in [1e-6, 1e4]
 */
public record PyramidSection(Rectangle bottom, Rectangle top, double heightMetres)
    implements Section {

  /** Checks the dimensions. */
  public PyramidSection {
    Dimensions.inside("PyramidSection.height", heightMetres);
    Check.positive(
        "PyramidSection.volume",
        taper(bottom, top, heightMetres).volume(),
        "m3",
        "give each side a length at one end at least");
  }

  private static Taper taper(Rectangle bottom, Rectangle top, double height) {
    double mixed =
        (bottom.lengthMetres() * top.widthMetres() + top.lengthMetres() * bottom.widthMetres()) / 2;
    return new Taper(height, bottom.areaSquareMetres(), mixed, top.areaSquareMetres());
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
    return "taper, "
        + bottom.describe()
        + " to "
        + top.describe()
        + ", "
        + Dimensions.text(heightMetres)
        + " high";
  }
}
