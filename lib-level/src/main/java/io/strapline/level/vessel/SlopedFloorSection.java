package io.strapline.level.vessel;

import io.strapline.level.internal.Check;

/**
 * The lowest part of a rectangular bin whose flat floor slopes along one side or both, from its
 * lowest corner or edge up to its highest corner: bunker with an inclined or doubly inclined floor.
 * Immutable.
 *
 * <p>Derived here. With rises p &lt;= q over plan area A, the floor stands at z = p u + q v over
 * the unit square. The wetted area is A z^2 / (2pq) up to p, A (2z - p) / (2q) up to q, and from
 * there on A less the same at the height left. So the volume is A z^3 / (6pq), then A [p^2 / (6q) +
 * z (z - p) / (2q)], then the whole A (p + q) / 2 less A (g - g^3 / (6pq)) with g = p + q - z.
 *
 * @param plan both sides greater than zero
 * @param riseAlongLengthMetres how much higher the floor stands at the far end of the length, 0 or
 *     in [1e-6, 1e4]
 * @param riseAlongWidthMetres as along the length; not both are 0
 */
public record SlopedFloorSection(
    Rectangle plan, double riseAlongLengthMetres, double riseAlongWidthMetres) implements Section {

  /** Checks the dimensions. */
  public SlopedFloorSection {
    String fix = "give a plan with two sides";
    Check.positive("SlopedFloorSection.plan", plan.areaSquareMetres(), "m2", fix);
    riseAlongLengthMetres =
        Dimensions.insideOrZero("SlopedFloorSection.riseAlongLength", riseAlongLengthMetres);
    riseAlongWidthMetres =
        Dimensions.insideOrZero("SlopedFloorSection.riseAlongWidth", riseAlongWidthMetres);
    if (riseAlongLengthMetres == 0 && riseAlongWidthMetres == 0) {
      throw Check.error(
          "SlopedFloorSection.riseAlongWidth",
          0,
          "m",
          "must not be zero along both sides",
          "take straight walls on a flat floor");
    }
  }

  private double less() {
    return Math.min(riseAlongLengthMetres, riseAlongWidthMetres);
  }

  private double more() {
    return Math.max(riseAlongLengthMetres, riseAlongWidthMetres);
  }

  @Override
  public double heightMetres() {
    return riseAlongLengthMetres + riseAlongWidthMetres;
  }

  @Override
  public double volumeCubicMetres() {
    return plan.areaSquareMetres() * heightMetres() / 2;
  }

  @Override
  public double volumeBelow(double aboveBottomMetres) {
    double z = Math.min(Math.max(aboveBottomMetres, 0.0), heightMetres());
    if (z == 0 || z == heightMetres()) {
      return z == 0 ? 0 : volumeCubicMetres();
    }
    double low = plan.areaSquareMetres() * upTo(less());
    double high = plan.areaSquareMetres() * upTo(more());
    if (z <= less()) {
      double corner = Grid.coarse(z);
      double cubic = corner * corner * corner / (6 * less() * more());
      return Math.min(plan.areaSquareMetres() * cubic, low);
    }
    return z <= more() ? Math.min(Math.max(wedge(z), low), high) : Math.max(aboveBoth(z), high);
  }

  /** The middle part is right at both of its ends. */
  private double upTo(double z) {
    return less() * less() / (6 * more()) + z * (z - less()) / (2 * more());
  }

  private double wedge(double z) {
    return plan.areaSquareMetres() * upTo(Grid.coarse(z));
  }

  private double aboveBoth(double z) {
    double left = Math.min(Grid.coarse(heightMetres() - z), less());
    double dry = left * (1 - left * left / (6 * less() * more()));
    return volumeCubicMetres() - plan.areaSquareMetres() * dry;
  }

  @Override
  public double areaAt(double aboveBottomMetres) {
    double z = Math.min(Math.max(aboveBottomMetres, 0.0), heightMetres());
    double part;
    if (z <= less()) {
      part = less() == 0 ? 0 : z * z / (2 * less() * more());
    } else if (z <= more()) {
      part = (2 * z - less()) / (2 * more());
    } else {
      double left = heightMetres() - z;
      part = 1 - left * left / (2 * less() * more());
    }
    return plan.areaSquareMetres() * part;
  }

  @Override
  public double aboutHeightOf(double cubicMetres) {
    return heightMetres() * Math.sqrt(Math.min(cubicMetres / volumeCubicMetres(), 1));
  }

  @Override
  public String describe() {
    return "sloped floor "
        + plan.describe()
        + ", rising "
        + Dimensions.text(riseAlongLengthMetres)
        + " along and "
        + Dimensions.text(riseAlongWidthMetres)
        + " across";
  }
}
