package io.strapline.level.vessel;

/**
 * A spherical tank. Immutable.
 *
 * <p>V = pi h^2 (3R - h) / 3 (standard mensuration), written with t = h / D as pi/6 D^3 x t^2 (3 -
 * 2t); above the middle as the whole less the empty cap, so that no digits are lost at either end.
 *
 * @param diameterMetres inside diameter, in [1e-6, 1e4]
 */
public record Sphere(double diameterMetres) implements Vessel {

  /** Checks the dimension. */
  public Sphere {
    Dimensions.inside("Sphere.diameter", diameterMetres);
  }

  @Override
  public double maxHeightMetres() {
    return diameterMetres;
  }

  @Override
  public double capacityCubicMetres() {
    return Math.PI / 6 * diameterMetres * diameterMetres * diameterMetres;
  }

  @Override
  public double volumeCubicMetres(double heightMetres) {
    double height = Dimensions.clamp("Sphere.height", heightMetres, "m", diameterMetres);
    return capacityCubicMetres() * UnitCubics.atLeastTwo(height / diameterMetres);
  }

  @Override
  public double surfaceSquareMetres(double heightMetres) {
    double height = Dimensions.clamp("Sphere.height", heightMetres, "m", diameterMetres);
    return Math.PI * height * (diameterMetres - height);
  }

  @Override
  public double heightMetres(double volumeCubicMetres) {
    double capacity = capacityCubicMetres();
    double volume = Dimensions.clamp("Sphere.volume", volumeCubicMetres, "m3", capacity);
    if (volume == 0 || volume == capacity) {
      return volume == 0 ? 0 : diameterMetres;
    }
    HeightSearch search =
        new HeightSearch(this::volumeCubicMetres, this::surfaceSquareMetres, diameterMetres);
    return search.lowest(volume, diameterMetres * about(volume / capacity));
  }

  /** Solves t^2 (3 - 2t) = part: near the ends by its first term, else by the sine of a third. */
  private static double about(double part) {
    if (part < 1e-3) {
      return Math.sqrt(part / 3);
    }
    return 0.5 - Math.sin(Math.asin(1 - 2 * part) / 3);
  }

  @Override
  public String describe() {
    return "sphere, diameter " + Dimensions.text(diameterMetres);
  }
}
