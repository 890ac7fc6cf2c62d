package io.strapline.level.vessel;

import io.strapline.level.internal.Check;

/**
 * Part of a vessel whose level area is known at two heights and taken to change along a straight
 * line between them, as surveyed by cross-sections. Immutable.
 *
 * <p>V = height [A0 (t - t^2 / 2) + A1 t^2 / 2], the integral of the straight line.
 *
 * @param bottomSquareMetres area at the lower edge, zero or greater
 * @param topSquareMetres area at the upper edge, zero or greater; not both are 0
 * @param heightMetres in [1e-6, 1e4]
 */
public record AreaSection(double bottomSquareMetres, double topSquareMetres, double heightMetres)
    implements Section {

  private static final double GREATEST_AREA = 1e8;

  /** Checks the dimensions. */
  public AreaSection {
    bottomSquareMetres = area("AreaSection.bottom", bottomSquareMetres);
    topSquareMetres = area("AreaSection.top", topSquareMetres);
    Dimensions.inside("AreaSection.height", heightMetres);
    if (bottomSquareMetres == 0 && topSquareMetres == 0) {
      throw Check.error(
          "AreaSection.top", 0, "m2", "must not be zero at both ends", "leave the part out");
    }
  }

  private static double area(String field, double squareMetres) {
    String fix = "give the inside area in square metres";
    return squareMetres == 0
        ? 0.0
        : Check.between(field, squareMetres, "m2", 1e-12, GREATEST_AREA, fix);
  }

  @Override
  public double volumeCubicMetres() {
    return heightMetres / 2 * (bottomSquareMetres + topSquareMetres);
  }

  @Override
  public double volumeBelow(double aboveBottomMetres) {
    double t = Math.min(Math.max(aboveBottomMetres / heightMetres, 0.0), 1.0);
    return heightMetres / 2 * (bottomSquareMetres * oneOrMore(t) + topSquareMetres * (t * t));
  }

  /** Returns 1 - (1 - t)^2. */
  private static double oneOrMore(double t) {
    if (t < 0.5) {
      double coarse = Math.min(Grid.coarse(t), 0.5);
      return coarse * (2 - coarse);
    }
    return 1 - (1 - t) * (1 - t);
  }

  @Override
  public double areaAt(double aboveBottomMetres) {
    double t = Math.min(Math.max(aboveBottomMetres / heightMetres, 0.0), 1.0);
    return (1 - t) * bottomSquareMetres + t * topSquareMetres;
  }

  /** Solves the quadratic in the form that loses no digits. */
  @Override
  public double aboutHeightOf(double cubicMetres) {
    double rise = (topSquareMetres - bottomSquareMetres) / heightMetres;
    double square = bottomSquareMetres * bottomSquareMetres + 2 * rise * cubicMetres;
    double sum = bottomSquareMetres + Math.sqrt(Math.max(square, 0));
    return sum > 0 ? Math.min(2 * cubicMetres / sum, heightMetres) : 0;
  }

  @Override
  public String describe() {
    return "area "
        + Dimensions.ratio(bottomSquareMetres)
        + " m2 to "
        + Dimensions.ratio(topSquareMetres)
        + " m2, "
        + Dimensions.text(heightMetres)
        + " high";
  }
}
