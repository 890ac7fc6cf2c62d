package io.strapline.level.table;

import io.strapline.level.vessel.CapacityCurve;

/**
 * A capacity (strapping) table: volume against height by interpolation, never beyond its ends.
 * Immutable.
 */
public final class CapacityTable implements CapacityCurve {

  private CapacityTable() {}

  @Override
  public double maxHeightMetres() {
    throw new UnsupportedOperationException("later in this commit series");
  }

  @Override
  public double capacityCubicMetres() {
    throw new UnsupportedOperationException("later in this commit series");
  }

  @Override
  public double volumeCubicMetres(double heightMetres) {
    throw new UnsupportedOperationException("later in this commit series");
  }

  @Override
  public double heightMetres(double volumeCubicMetres) {
    throw new UnsupportedOperationException("later in this commit series");
  }
}
