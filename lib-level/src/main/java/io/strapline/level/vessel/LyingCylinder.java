package io.strapline.level.vessel;

/**
 * A cylinder that lies level on its side, with flat ends. The datum is the lowest line of the
 * shell. Immutable.
 *
 * @param diameterMetres inside diameter, in [1e-6, 1e4]
 * @param lengthMetres inside length between the ends, in [1e-6, 1e4]
 */
public record LyingCylinder(double diameterMetres, double lengthMetres) implements Vessel {

  /** Checks the dimensions. */
  public LyingCylinder {
    Dimensions.inside("LyingCylinder.diameter", diameterMetres);
    Dimensions.inside("LyingCylinder.length", lengthMetres);
  }

  @Override
  public double maxHeightMetres() {
    return diameterMetres;
  }

  @Override
  public double capacityCubicMetres() {
    return Math.PI / 4 * diameterMetres * diameterMetres * lengthMetres;
  }

  @Override
  public double volumeCubicMetres(double heightMetres) {
    double height = Dimensions.clamp("LyingCylinder.height", heightMetres, "m", diameterMetres);
    return capacityCubicMetres() * CircleSegment.part(height / diameterMetres);
  }

  @Override
  public double surfaceSquareMetres(double heightMetres) {
    double height = Dimensions.clamp("LyingCylinder.height", heightMetres, "m", diameterMetres);
    return 2 * Math.sqrt(height * (diameterMetres - height)) * lengthMetres;
  }

  @Override
  public double heightMetres(double volumeCubicMetres) {
    double capacity = capacityCubicMetres();
    double volume = Dimensions.clamp("LyingCylinder.volume", volumeCubicMetres, "m3", capacity);
    if (volume == 0 || volume == capacity) {
      return volume == 0 ? 0 : diameterMetres;
    }
    HeightSearch search =
        new HeightSearch(this::volumeCubicMetres, this::surfaceSquareMetres, diameterMetres);
    return search.lowest(volume, diameterMetres * about(volume / capacity));
  }

  /**
   * Returns this shell with two heads.
   *
   * @param left head at one end
   * @param right head at the other end
   * @throws IllegalArgumentException if a head cannot have this diameter
   */
  public LyingTank withHeads(Head left, Head right) {
    return LyingTank.of(new Shell(diameterMetres, lengthMetres), left, right);
  }

  /** First term of the series at the nearer end: part = 16 / (3 pi) t^(3/2). */
  static double about(double part) {
    double nearer = Math.min(part, 1 - part);
    double t = Math.min(Math.pow(nearer * 3 * Math.PI / 16, 2 / 3.0), 0.5);
    return part <= 0.5 ? t : 1 - t;
  }

  @Override
  public String describe() {
    return "lying cylinder, diameter "
        + Dimensions.text(diameterMetres)
        + ", "
        + Dimensions.text(lengthMetres)
        + " long, flat ends";
  }
}
