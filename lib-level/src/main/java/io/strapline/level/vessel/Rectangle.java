package io.strapline.level.vessel;

/**
 * The plan of a bin or outlet with right angles. A side of zero makes a point or a line, as where
 * hopper walls meet. Immutable.
 *
 * @param lengthMetres inside dimension along x, 0 or in [1e-6, 1e4]
 * @param widthMetres inside dimension along y, 0 or in [1e-6, 1e4]
 */
public record Rectangle(double lengthMetres, double widthMetres) {

  /** Checks the dimensions. */
  public Rectangle {
    lengthMetres = Dimensions.insideOrZero("Rectangle.length", lengthMetres);
    widthMetres = Dimensions.insideOrZero("Rectangle.width", widthMetres);
  }

  /** Returns the area in square metres, zero or greater. */
  public double areaSquareMetres() {
    return lengthMetres * widthMetres;
  }

  String describe() {
    return Dimensions.text(lengthMetres) + " x " + Dimensions.text(widthMetres);
  }
}
