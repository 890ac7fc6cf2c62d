package io.strapline.level.point;

import io.strapline.level.vessel.CapacityCurve;

/** A vessel of constant cross-section, so that expected volumes can be worked out in the head. */
record PrismCurve(double areaSquareMetres, double maxHeightMetres) implements CapacityCurve {

  @Override
  public double capacityCubicMetres() {
    return areaSquareMetres * maxHeightMetres;
  }

  @Override
  public double volumeCubicMetres(double heightMetres) {
    return areaSquareMetres * Math.min(Math.max(heightMetres, 0), maxHeightMetres);
  }

  @Override
  public double heightMetres(double volumeCubicMetres) {
    return Math.min(Math.max(volumeCubicMetres / areaSquareMetres, 0), maxHeightMetres);
  }
}
