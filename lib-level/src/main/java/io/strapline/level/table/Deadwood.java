package io.strapline.level.table;

import io.strapline.level.internal.Check;
import io.strapline.level.vessel.CapacityCurve;
import java.util.Optional;

/**
 * Something in or on a vessel that its curve does not hold: what displaces product (a pipe, an
 * agitator, a mixer's shaft, a floor frame) or what adds room (a manhole's neck, a sump).
 * Immutable.
 *
 * <p>Without a shape its volume is spread evenly from its bottom to its top.
 *
 * @param name for messages
 * @param bottomMetres its lowest point above the datum, zero or more
 * @param topMetres its highest point, above the bottom
 * @param cubicMetres its whole volume: positive where it adds room, negative where it displaces
 * @param shape how the volume is divided by height, from its own bottom up; empty when evenly
 */
public record Deadwood(
    String name,
    double bottomMetres,
    double topMetres,
    double cubicMetres,
    Optional<CapacityCurve> shape) {

  /** Checks the fields. */
  public Deadwood {
    Check.text("Deadwood.name", name, "name it, such as agitator");
    bottomMetres =
        Check.notNegative(
            "Deadwood.bottom", bottomMetres, "m", "measure its lowest point above the datum");
    Check.finite("Deadwood.top", topMetres, "m", "measure its highest point above the datum");
    Check.finite("Deadwood.volume", cubicMetres, "m3", "below zero where it displaces product");
    Check.present("Deadwood.shape", shape, "use evenly() or shaped()");
    if (!(topMetres > bottomMetres)) {
      throw Check.error(
          "Deadwood.top",
          topMetres,
          "m",
          "must lie above the bottom (" + bottomMetres + " m)",
          "measure its highest point above the datum");
    }
    if (cubicMetres == 0) {
      throw Check.error(
          "Deadwood.volume", cubicMetres, "m3", "changes nothing", "enter it or leave it out");
    }
  }

  /**
   * Returns deadwood whose volume is spread evenly over its height.
   *
   * @param cubicMetres positive where it adds room, negative where it displaces product
   */
  public static Deadwood evenly(
      String name, double bottomMetres, double topMetres, double cubicMetres) {
    return new Deadwood(name, bottomMetres, topMetres, cubicMetres, Optional.empty());
  }

  /** Returns a shape that displaces product, standing with its own datum at a height. */
  public static Deadwood displacing(String name, double bottomMetres, CapacityCurve shape) {
    return shaped(name, bottomMetres, shape, -1);
  }

  /** Returns a shape that adds room, standing with its own datum at a height. */
  public static Deadwood adding(String name, double bottomMetres, CapacityCurve shape) {
    return shaped(name, bottomMetres, shape, 1);
  }

  private static Deadwood shaped(
      String name, double bottomMetres, CapacityCurve shape, double sign) {
    Check.present("Deadwood.shape", shape, "pass its shape");
    return new Deadwood(
        name,
        bottomMetres,
        bottomMetres + shape.maxHeightMetres(),
        sign * shape.capacityCubicMetres(),
        Optional.of(shape));
  }

  /** Returns how much of it lies below a height, with its sign, in cubic metres. */
  public double belowCubicMetres(double heightMetres) {
    if (heightMetres >= topMetres) {
      return cubicMetres;
    }
    if (!(heightMetres > bottomMetres)) {
      return 0;
    }
    double above = heightMetres - bottomMetres;
    return shape
        .map(curve -> Math.signum(cubicMetres) * curve.volumeCubicMetres(above))
        .orElse(cubicMetres * above / (topMetres - bottomMetres));
  }
}
