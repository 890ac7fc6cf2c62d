package io.strapline.level.vessel;

/**
 * A cone whose apex is level with the top of the lying shell.
 *
 * <p>Lying, derived here: each slice is a circle of diameter q D that touches the top line, and
 * holds the part of a circle that is empty to the depth g / q, where g = 1 - t and t = h / D.
 * Integrated by parts the empty part of the whole is S(g) + 16 / (3 pi) (g (1 - g))^(3/2), S being
 * the part of a circle below a chord, and the filled part F = S(t) - 16 / (3 pi) (t (1 - t))^(3/2).
 * Its slope is 16 / pi t^(3/2) (1 - t)^(1/2), so F is the regularized incomplete beta function
 * I_t(5/2, 3/2). Near empty both terms cancel, and the series of that function is taken: F = 16 /
 * pi t^(5/2) times the sum over k of binom(1/2, k) (-t)^k / (k + 5/2), whose terms after the first
 * are all negative and small.
 *
 * @param cone the same cone with its apex on the axis: it holds as much while it stands
 */
record EccentricConeForm(ConeForm cone) implements HeadForm {

  /** Up to this part of the diameter the series is taken. */
  private static final double SERIES_LIMIT = 0.25;

  /** Terms of the series: the next one is under 0.25^28 x 1e-3. */
  private static final int TERMS = 28;

  private static final double FACTOR = 16 / (3 * Math.PI);

  @Override
  public double depth() {
    return cone.depth();
  }

  @Override
  public double volume() {
    return cone.volume();
  }

  @Override
  public double nearApex(double distance) {
    return cone.nearApex(distance);
  }

  @Override
  public double nearRim(double distance) {
    return cone.nearRim(distance);
  }

  @Override
  public double apexReach() {
    return cone.apexReach();
  }

  @Override
  public double areaNearApex(double distance) {
    return cone.areaNearApex(distance);
  }

  @Override
  public boolean symmetricLying() {
    return false;
  }

  /** Here up to the full diameter, since the upper half is not the lower one turned over. */
  @Override
  public double lowerLying(double liquid) {
    double diameter = cone.diameter();
    double t = liquid / diameter;
    if (t <= SERIES_LIMIT) {
      return volume() * Math.min(series(t), middle(SERIES_LIMIT));
    }
    if (t <= 0.5) {
      return volume() * Math.min(middle(t), 1 - empty(0.5));
    }
    double g = Grid.coarse((diameter - liquid) / diameter);
    return volume() * (1 - Math.min(empty(g), empty(0.5)));
  }

  private static double series(double t) {
    double sum = 0;
    double binomial = 1;
    for (int k = 0; k < TERMS; k++) {
      sum += binomial / (k + 2.5);
      binomial *= -t * (0.5 - k) / (k + 1);
    }
    return 16 / Math.PI * t * t * Math.sqrt(t) * sum;
  }

  private static double middle(double t) {
    double product = t * (1 - t);
    return CircleSegment.part(t) - FACTOR * product * Math.sqrt(product);
  }

  private static double empty(double g) {
    double product = g * (1 - g);
    return CircleSegment.part(g) + FACTOR * product * Math.sqrt(product);
  }

  @Override
  public double surfaceLying(double liquid) {
    double t = liquid / cone.diameter();
    return volume() / cone.diameter() * 16 / Math.PI * t * Math.sqrt(t * Math.max(1 - t, 0));
  }
}
