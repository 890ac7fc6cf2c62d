package io.strapline.level.vessel;

/**
 * A spherical crown of radius f D and a knuckle of radius k D that touches crown and shell.
 *
 * <p>With c = (1/2 - k) D, p = k D and sin A = (1/2 - k) / (f - k), derived here from the two
 * tangent circles: depth = D (2 f k + 1/4 - k) / (f + C), C = sqrt((f - 1/2)(f + 1/2 - 2k)), which
 * is D (f - C) without loss of digits; the joint lies p cos A from the tangent line. Standing, the
 * crown is a spherical cap; from the rim the knuckle holds pi [(c^2 + p^2) x - x^3 / 3 + c (x
 * sqrt(p^2 - x^2) + p^2 asin(x / p))], the integral of (c + sqrt(p^2 - x^2))^2.
 *
 * <p>Where sources disagree: a dished-head data sheet prints 0.0778 D^3 for a knuckle of 0.1 D, and
 * handbooks are remembered with 0.0847 D^3 for one of 0.06 D; the geometry gives 0.0990 and 0.0810,
 * a printed 0.0809 agrees. The geometry is used.
 *
 * <p>Lying: the crown is a {@link LyingCap}; the knuckle is summed over slices at the knuckle's
 * angle a, radius r = c + p cos a, x = p sin a. The liquid reaches the angle w with p (1 - cos w) =
 * depth. With a = w cos d the integrand is analytic; for knuckles up to 0.45 D r &gt;= 3, and 24
 * points leave 1e-20.
 */
final class TorisphericalForm implements HeadForm {

  private static final GaussLegendre POINTS = new GaussLegendre(24);

  private final double radius;
  private final double depth;
  private final double crown;
  private final double knuckle;
  private final double offset;

  /** Angle of the knuckle from the shell to the joint. */
  private final double turn;

  /** Distance of the joint from the tangent line, and from the apex. */
  private final double joint;

  private final double cap;

  /** Depth at which liquid in a lying head reaches the crown. */
  private final double crownFrom;

  private final double crownRim;
  private final LyingCap lying;

  TorisphericalForm(double diameter, double f, double k) {
    double root = Math.sqrt((f - 0.5) * (f + 0.5 - 2 * k));
    double sine = (0.5 - k) / (f - k);
    double cosine = root / (f - k);
    radius = diameter / 2;
    crown = f * diameter;
    knuckle = k * diameter;
    offset = (0.5 - k) * diameter;
    depth = diameter * (2 * f * k + 0.25 - k) / (f + root);
    turn = Math.atan2(cosine, sine);
    joint = knuckle * cosine;
    cap = crown * sine * sine / (1 + cosine);
    // 1 - sine without loss of digits.
    crownFrom = knuckle * cosine * cosine / (1 + sine);
    crownRim = crown * sine;
    lying = new LyingCap(crownRim, crown * cosine);
  }

  @Override
  public double depth() {
    return depth;
  }

  @Override
  public double volume() {
    return capVolume(cap) + knuckleVolume(joint);
  }

  private double capVolume(double g) {
    return Math.PI / 3 * g * g * (3 * crown - g);
  }

  private double knuckleVolume(double x) {
    double square = knuckle * knuckle;
    double root = Math.sqrt((knuckle - x) * (knuckle + x));
    double bend = x * root + square * Math.asin(x / knuckle);
    return Math.PI * (x * (offset * offset + square - x * x / 3) + offset * bend);
  }

  @Override
  public double nearApex(double distance) {
    return capVolume(Grid.coarse(distance));
  }

  @Override
  public double nearRim(double distance) {
    return knuckleVolume(Math.min(Grid.coarse(distance), joint));
  }

  @Override
  public double apexReach() {
    return cap;
  }

  @Override
  public double areaNearApex(double distance) {
    if (distance <= cap) {
      return Math.PI * distance * (2 * crown - distance);
    }
    double x = depth - distance;
    double r = offset + Math.sqrt((knuckle - x) * (knuckle + x));
    return Math.PI * r * r;
  }

  @Override
  public double lowerLying(double liquid) {
    double inKnuckle =
        overKnuckle(
            liquid,
            (r, above) -> {
              double part = Math.min(Math.max(above / (2 * r), 0.0), 1.0);
              double u = 4 * Math.asin(Math.sqrt(part));
              return r * r * CircleSegment.angleLessSine(u) / 2;
            });
    return inKnuckle + lying.lower(Math.min(liquid - crownFrom, crownRim));
  }

  @Override
  public double surfaceLying(double liquid) {
    double y = Math.abs(radius - liquid);
    double lower = Math.min(liquid, 2 * radius - liquid);
    double inKnuckle =
        overKnuckle(lower, (r, above) -> 2 * Math.sqrt(Math.max(above * (2 * r - above), 0.0)));
    return inKnuckle + (y < crownRim ? lying.areaAt(y) : 0);
  }

  private interface Slice {
    /**
     * Returns the area or width of a slice of radius r with liquid so high above its lowest point.
     */
    double at(double r, double above);
  }

  private double overKnuckle(double liquid, Slice slice) {
    double wet = liquid < 2 * knuckle ? 2 * Math.asin(Math.sqrt(liquid / (2 * knuckle))) : Math.PI;
    double from = turn < wet ? Math.acos(turn / wet) : 0;
    double sum =
        POINTS.integrate(
            d -> {
              double a = wet * Math.cos(d);
              double sine = Math.sin(a / 2);
              double drop = 2 * knuckle * sine * sine;
              return slice.at(radius - drop, liquid - drop) * Math.cos(a) * Math.sin(d);
            },
            from,
            Math.PI / 2);
    return knuckle * wet * sum;
  }
}
