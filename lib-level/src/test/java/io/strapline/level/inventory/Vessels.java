package io.strapline.level.inventory;

import io.strapline.level.vessel.CapacityCurve;
import java.util.function.DoubleUnaryOperator;

/** Vessels whose volumes have a closed form, for tests. */
final class Vessels {

  private Vessels() {}

  /** A vessel given by its volume below a height; the inverse is found by bisection. */
  record Shape(double maxHeightMetres, DoubleUnaryOperator volume) implements CapacityCurve {

    @Override
    public double capacityCubicMetres() {
      return volume.applyAsDouble(maxHeightMetres);
    }

    @Override
    public double volumeCubicMetres(double heightMetres) {
      if (Double.isNaN(heightMetres)) {
        throw new IllegalArgumentException("Shape.height = NaN m: must be a number; give one");
      }
      return volume.applyAsDouble(Math.max(0, Math.min(heightMetres, maxHeightMetres)));
    }

    @Override
    public double heightMetres(double volumeCubicMetres) {
      if (Double.isNaN(volumeCubicMetres)) {
        throw new IllegalArgumentException("Shape.volume = NaN m3: must be a number; give one");
      }
      double low = 0;
      double high = maxHeightMetres;
      for (int i = 0; i < 100; i++) {
        double middle = (low + high) / 2;
        if (volume.applyAsDouble(middle) < volumeCubicMetres) {
          low = middle;
        } else {
          high = middle;
        }
      }
      return high;
    }
  }

  /** An upright prism or cylinder. */
  static CapacityCurve upright(double areaSquareMetres, double height) {
    return new Shape(height, h -> areaSquareMetres * h);
  }

  /** A cone on its tip with {@code V = factor h^3}. */
  static CapacityCurve cone(double factor, double height) {
    return new Shape(height, h -> factor * h * h * h);
  }

  /** A sphere: {@code V = pi h^2 (3 R - h) / 3}. */
  static CapacityCurve sphere(double radius) {
    return new Shape(2 * radius, h -> Math.PI * h * h * (3 * radius - h) / 3);
  }

  /** A lying cylinder with flat ends: {@code V = L (R^2 acos((R-h)/R) - (R-h) sqrt(2Rh - h^2))}. */
  static CapacityCurve lying(double radius, double length) {
    return new Shape(
        2 * radius,
        h ->
            length
                * (radius * radius * Math.acos(Math.max(-1, (radius - h) / radius))
                    - (radius - h) * Math.sqrt(Math.max(0, 2 * radius * h - h * h))));
  }
}
