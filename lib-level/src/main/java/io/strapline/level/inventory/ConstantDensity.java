package io.strapline.level.inventory;

import java.util.List;

/**
 * One bulk density for all depths: liquids, and solids that do not pack. Immutable.
 *
 * @param kilogramsPerCubicMetre in [{@link BulkDensity#LEAST}, {@link BulkDensity#GREATEST}]
 */
public record ConstantDensity(double kilogramsPerCubicMetre) implements BulkDensity {

  /** Refuses what cannot be a density. */
  public ConstantDensity {
    kilogramsPerCubicMetre = BulkDensity.checked("ConstantDensity.value", kilogramsPerCubicMetre);
  }

  @Override
  public double atDepth(double depthMetres) {
    BulkDensity.checkedDepth(depthMetres);
    return kilogramsPerCubicMetre;
  }

  @Override
  public double gradientAtDepth(double depthMetres) {
    BulkDensity.checkedDepth(depthMetres);
    return 0;
  }

  @Override
  public List<Double> breakDepthsMetres() {
    return List.of();
  }
}
