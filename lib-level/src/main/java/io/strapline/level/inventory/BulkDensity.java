package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import java.util.List;

/**
 * Bulk density of what lies in a vessel, against the depth below its surface: the weight above
 * packs the material. Immutable.
 *
 * <p>Every density must lie in [{@value #LEAST}, {@value #GREATEST}] kg/m3, which holds the
 * lightest foams and the heaviest ores; a density of 1.6 given in t/m3 is refused that way. It
 * never falls with the depth.
 */
public sealed interface BulkDensity permits ConstantDensity, TabulatedDensity, PackedDensity {

  /** Least density that is accepted, in kg/m3. */
  double LEAST = 5;

  /** Greatest density that is accepted, in kg/m3: above that of osmium, the densest element. */
  double GREATEST = 23_000;

  /**
   * Returns the density at a depth.
   *
   * @param depthMetres depth below the surface, finite, zero or more
   * @return kg/m3
   * @throws IllegalArgumentException if {@code depthMetres} is negative or not finite
   */
  double atDepth(double depthMetres);

  /**
   * Returns how fast the density grows at a depth, in kg/m3 per metre, zero or more; at a break
   * either side's value.
   *
   * @param depthMetres depth below the surface, finite, zero or more
   */
  double gradientAtDepth(double depthMetres);

  /** Returns the depths at which the gradient jumps, in metres, rising, all greater than zero. */
  List<Double> breakDepthsMetres();

  /** Returns the density at the surface, in kg/m3. */
  default double atSurface() {
    return atDepth(0);
  }

  /**
   * Returns one density for all depths.
   *
   * @param kilogramsPerCubicMetre in [{@link #LEAST}, {@link #GREATEST}]
   * @throws IllegalArgumentException if the density is out of its range
   */
  static BulkDensity constant(double kilogramsPerCubicMetre) {
    return new ConstantDensity(kilogramsPerCubicMetre);
  }

  /**
   * Returns a density by depth, linear between the rows and constant below the last.
   *
   * @param rows see {@link TabulatedDensity}
   * @throws IllegalArgumentException if a row breaks a rule; the message names the row
   */
  static BulkDensity byDepth(List<TabulatedDensity.Row> rows) {
    return new TabulatedDensity(rows);
  }

  /**
   * Returns a density that nears a greatest packing with depth, see {@link PackedDensity}.
   *
   * @throws IllegalArgumentException if an argument is out of its range
   */
  static BulkDensity packing(double surface, double deep, double depthConstantMetres) {
    return new PackedDensity(surface, deep, depthConstantMetres);
  }

  /** Returns the density if it can be one. */
  static double checked(String field, double kilogramsPerCubicMetre) {
    return Check.between(
        field,
        kilogramsPerCubicMetre,
        "kg/m3",
        LEAST,
        GREATEST,
        "give the density in kg/m3 (1 t/m3 is 1000 kg/m3)");
  }

  /** Returns the depth if it is one. */
  static double checkedDepth(double depthMetres) {
    return Check.notNegative(
        "BulkDensity.depth", depthMetres, "m", "give the depth below the surface");
  }
}
