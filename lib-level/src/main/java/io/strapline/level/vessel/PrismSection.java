package io.strapline.level.vessel;

import io.strapline.level.internal.Check;

/**
 * Straight walls over a rectangular plan, as of a bin or bunker. Immutable.
 *
 * @param plan both sides greater than zero
 * @param heightMetres in [1e-6, 1e4]
 */
public record PrismSection(Rectangle plan, double heightMetres) implements Section {

  /** Checks the dimensions. */
  public PrismSection {
    Check.positive(
        "PrismSection.plan", plan.areaSquareMetres(), "m2", "give a plan with two sides");
    Dimensions.inside("PrismSection.height", heightMetres);
  }

  @Override
  public double volumeCubicMetres() {
    return plan.areaSquareMetres() * heightMetres;
  }

  @Override
  public double volumeBelow(double aboveBottomMetres) {
    return plan.areaSquareMetres() * Math.min(Math.max(aboveBottomMetres, 0.0), heightMetres);
  }

  @Override
  public double areaAt(double aboveBottomMetres) {
    return plan.areaSquareMetres();
  }

  @Override
  public double aboutHeightOf(double cubicMetres) {
    return cubicMetres / plan.areaSquareMetres();
  }

  @Override
  public String describe() {
    return "straight walls " + plan.describe() + ", " + Dimensions.text(heightMetres) + " high";
  }
}
