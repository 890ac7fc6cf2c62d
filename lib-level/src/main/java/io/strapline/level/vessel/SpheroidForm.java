package io.strapline.level.vessel;

/**
 * Half a spheroid: hemispherical, ellipsoidal and, with no depth at all, flat head.
 *
 * <p>Standing, with s = distance from the apex / depth a: r^2 = R^2 s (2 - s), V = pi R^2 a s^2 (3
 * - s) / 3. From the rim, with q = distance / a: V = pi R^2 a q (3 - q^2) / 3. Lying, half of the
 * sphere stretched by a / R along the axis: V = (a / R) pi h^2 (3R - h) / 6 (standard mensuration
 * each; D. Jones, Calculating Tank Volume, is the usual reference, of which only the first page
 * could be read).
 *
 * @param diameter of the shell
 * @param depth of the head, zero for a flat one
 */
record SpheroidForm(double diameter, double depth) implements HeadForm {

  @Override
  public double volume() {
    return Math.PI / 6 * diameter * diameter * depth;
  }

  @Override
  public double nearApex(double distance) {
    // s^2 (3 - s) / 2 is t^2 (3 - 2t) x 2 at t = s / 2.
    return volume() * (2 * UnitCubics.atLeastTwo(distance / depth / 2));
  }

  @Override
  public double nearRim(double distance) {
    double part = Grid.coarse(distance / depth);
    return volume() * (part * (3 - part * part) / 2);
  }

  @Override
  public double apexReach() {
    return depth / 2;
  }

  @Override
  public double areaNearApex(double distance) {
    double part = distance / depth;
    return Math.PI / 4 * diameter * diameter * part * (2 - part);
  }

  @Override
  public double lowerLying(double liquid) {
    return volume() * UnitCubics.atLeastTwo(liquid / diameter);
  }

  @Override
  public double surfaceLying(double liquid) {
    return Math.PI * depth / diameter * liquid * (diameter - liquid);
  }
}
