package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.level.inventory.BulkDensity;
import io.strapline.level.inventory.TabulatedDensity;
import io.strapline.level.units.Dimension;
import java.util.List;
import java.util.Optional;

/** Reads how heavy the material in a vessel is. Stateless. */
final class MaterialReader {

  private MaterialReader() {}

  /** Returns the density, constant or by depth; empty after a problem. */
  static Optional<BulkDensity> read(Section material) {
    Optional<String> way = material.one(Keys.MATERIAL.names());
    if (way.isEmpty()) {
      return Optional.empty();
    }
    return switch (way.get()) {
      case "packing" -> material.section("packing", Keys.PACKING).flatMap(MaterialReader::packing);
      case "density-by-depth" -> byDepth(material);
      default -> constant(material);
    };
  }

  private static Optional<BulkDensity> constant(Section material) {
    double density = material.quantity("density", Dimension.DENSITY);
    return material.build(() -> BulkDensity.constant(density));
  }

  private static Optional<BulkDensity> packing(Section keys) {
    double surface = keys.quantity("surface", Dimension.DENSITY);
    double deep = keys.quantity("deep", Dimension.DENSITY);
    double depth = keys.quantity("depth-constant", Dimension.LENGTH);
    return keys.build(() -> BulkDensity.packing(surface, deep, depth));
  }

  private static Optional<BulkDensity> byDepth(Section material) {
    List<Section> items = material.sections("density-by-depth", Keys.DENSITY_BY_DEPTH);
    List<TabulatedDensity.Row> rows = items.stream().flatMap(keys -> row(keys).stream()).toList();
    if (items.isEmpty() && material.isSound()) {
      material.error(
          "density-by-depth",
          Reason.MISSING,
          "has no row",
          "give at least the density at the surface, depth 0 m");
    }
    if (!material.isSound()) {
      return Optional.empty();
    }
    for (int i = 0; i < rows.size(); i++) {
      refuseOrder(items.get(i), rows.get(i), i == 0 ? null : rows.get(i - 1));
    }
    return material.build(() -> BulkDensity.byDepth(rows));
  }

  private static Optional<TabulatedDensity.Row> row(Section keys) {
    double depth = keys.quantity("depth", Dimension.LENGTH);
    double density = keys.quantity("density", Dimension.DENSITY);
    return keys.build(() -> new TabulatedDensity.Row(depth, density));
  }

  private static void refuseOrder(
      Section keys,
      TabulatedDensity.Row row,
      TabulatedDensity.@org.jspecify.annotations.Nullable Row above) {
    if (above == null && row.depthMetres() != 0) {
      keys.error(
          "depth", Reason.OUT_OF_RANGE, "must be 0 m in the first row", "begin at the surface");
    }
    if (above != null && row.depthMetres() <= above.depthMetres()) {
      keys.error(
          "depth",
          Reason.CONFLICT,
          "must be greater than that of the row before, " + Figures.metres(above.depthMetres()),
          "give the rows from the surface down");
    }
    if (above != null && row.kilogramsPerCubicMetre() < above.kilogramsPerCubicMetre()) {
      keys.error(
          "density",
          Reason.CONFLICT,
          "must not be less than that of the row before",
          "check the row: the weight above packs the material");
    }
  }
}
