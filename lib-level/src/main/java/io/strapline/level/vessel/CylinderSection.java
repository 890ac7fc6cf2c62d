package io.strapline.level.vessel;

/**
 * An upright cylinder, as the shell of a silo or tank. Immutable.
 *
 * @param diameterMetres inside diameter, in [1e-6, 1e4]
 * @param heightMetres in [1e-6, 1e4]
 */
public record CylinderSection(double diameterMetres, double heightMetres) implements Section {

  /** Checks the dimensions. */
  public CylinderSection {
    Dimensions.inside("CylinderSection.diameter", diameterMetres);
    Dimensions.inside("CylinderSection.height", heightMetres);
  }

  private double area() {
    return Math.PI / 4 * diameterMetres * diameterMetres;
  }

  @Override
  public double volumeCubicMetres() {
    return area() * heightMetres;
  }

  @Override
  public double volumeBelow(double aboveBottomMetres) {
    return area() * Math.min(Math.max(aboveBottomMetres, 0.0), heightMetres);
  }

  @Override
  public double areaAt(double aboveBottomMetres) {
    return area();
  }

  @Override
  public double aboutHeightOf(double cubicMetres) {
    return cubicMetres / area();
  }

  @Override
  public String describe() {
    return "cylinder, diameter "
        + Dimensions.text(diameterMetres)
        + ", "
        + Dimensions.text(heightMetres)
        + " high";
  }
}
