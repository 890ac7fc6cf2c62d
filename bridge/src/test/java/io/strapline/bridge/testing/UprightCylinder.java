package io.strapline.bridge.testing;

import io.strapline.level.vessel.CapacityCurve;

/**
 * A vessel of constant plan area, written down here so that tests of the bridge do not lean on the
 * library's shapes.
 *
 * @param areaSquareMetres plan area
 * @param maxHeightMetres full height
 */
public record UprightCylinder(double areaSquareMetres, double maxHeightMetres)
    implements CapacityCurve {

  @Override
  public double capacityCubicMetres() {
    return areaSquareMetres * maxHeightMetres;
  }

  @Override
  public double volumeCubicMetres(double heightMetres) {
    return areaSquareMetres * Math.max(0, Math.min(maxHeightMetres, heightMetres));
  }

  @Override
  public double heightMetres(double volumeCubicMetres) {
    return Math.max(0, Math.min(maxHeightMetres, volumeCubicMetres / areaSquareMetres));
  }
}
