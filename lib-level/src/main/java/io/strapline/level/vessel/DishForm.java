package io.strapline.level.vessel;

/**
 * A part of one sphere of radius S = (a^2 + R^2) / (2a), a being the depth.
 *
 * <p>Standing, at a distance g from the apex V = pi g^2 (3S - g) / 3 (standard mensuration); from
 * the rim, with m = S - a: V = pi x (R^2 - m x - x^2 / 3), derived here from r^2 = S^2 - (m + x)^2.
 * Lying: {@link LyingCap}.
 */
final class DishForm implements HeadForm {

  private final double radius;
  private final double depth;
  private final double sphere;
  private final double centre;
  private final LyingCap lying;

  DishForm(double diameter, double depth) {
    this.radius = diameter / 2;
    this.depth = depth;
    sphere = (depth * depth + radius * radius) / (2 * depth);
    centre = (radius - depth) * (radius + depth) / (2 * depth);
    lying = new LyingCap(radius, centre);
  }

  @Override
  public double depth() {
    return depth;
  }

  @Override
  public double volume() {
    return Math.PI / 6 * depth * (3 * radius * radius + depth * depth);
  }

  @Override
  public double nearApex(double distance) {
    double g = Grid.coarse(distance);
    return Math.PI / 3 * g * g * (3 * sphere - g);
  }

  @Override
  public double nearRim(double distance) {
    double x = Grid.coarse(distance);
    return Math.PI * x * (radius * radius - x * (centre + x / 3));
  }

  @Override
  public double apexReach() {
    return depth / 2;
  }

  @Override
  public double areaNearApex(double distance) {
    return Math.PI * distance * (2 * sphere - distance);
  }

  @Override
  public double lowerLying(double liquid) {
    return lying.lower(liquid);
  }

  @Override
  public double surfaceLying(double liquid) {
    return lying.areaAt(radius - liquid);
  }
}
