package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import java.util.List;

/**
 * Bulk density that nears a greatest packing with depth: {@code rho(z) = deep - (deep - surface)
 * exp(-z / L)}. The form is the simplest that starts at the loose density and saturates, since the
 * silo's wall carries the weight of what lies far above (common practice, no source); its three
 * numbers are to be fitted to weighings. Immutable.
 *
 * @param surface loose density at the surface, kg/m3, in [{@link BulkDensity#LEAST}, {@link
 *     BulkDensity#GREATEST}]
 * @param deep density that is neared far below, kg/m3, same range and not below {@code surface}
 * @param depthConstantMetres depth L in metres, greater than zero, at which 63.2 % of the gain is
 *     reached
 */
public record PackedDensity(double surface, double deep, double depthConstantMetres)
    implements BulkDensity {

  /** Refuses what cannot be densities or a depth. */
  public PackedDensity {
    surface = BulkDensity.checked("PackedDensity.surface", surface);
    deep = BulkDensity.checked("PackedDensity.deep", deep);
    Check.positive(
        "PackedDensity.depthConstant",
        depthConstantMetres,
        "m",
        "give the depth at which 63.2 % of the packing is reached");
    if (deep < surface) {
      throw Check.error(
          "PackedDensity.deep",
          deep,
          "kg/m3",
          "must not be below the density at the surface (" + surface + " kg/m3)",
          "exchange the two");
    }
  }

  @Override
  public double atDepth(double depthMetres) {
    // expm1 keeps the digits close to the surface.
    return surface
        - (deep - surface)
            * Math.expm1(-BulkDensity.checkedDepth(depthMetres) / depthConstantMetres);
  }

  @Override
  public double gradientAtDepth(double depthMetres) {
    return (deep - surface)
        / depthConstantMetres
        * Math.exp(-BulkDensity.checkedDepth(depthMetres) / depthConstantMetres);
  }

  @Override
  public List<Double> breakDepthsMetres() {
    return List.of();
  }
}
