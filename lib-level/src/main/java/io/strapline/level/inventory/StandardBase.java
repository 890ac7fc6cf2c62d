package io.strapline.level.inventory;

import io.strapline.level.units.TemperatureUnit;

/**
 * The temperature that volumes and densities of a liquid are referred to. Each has its own set of
 * constants, {@link ProductGroup} keeps them apart.
 */
public enum StandardBase {
  /** 60 degF, with differences in degF. */
  SIXTY_FAHRENHEIT(TemperatureUnit.DEGREE_FAHRENHEIT, 60),
  /** 15 degC, with differences in degC. */
  FIFTEEN_CELSIUS(TemperatureUnit.DEGREE_CELSIUS, 15);

  private final TemperatureUnit unit;
  private final double degrees;

  StandardBase(TemperatureUnit unit, double degrees) {
    this.unit = unit;
    this.degrees = degrees;
  }

  /** Returns the scale that belongs to the base. */
  public TemperatureUnit unit() {
    return unit;
  }

  /** Returns the base temperature on its own scale: 60 or 15. */
  public double degrees() {
    return degrees;
  }

  /** Returns the base temperature in degC: 15.5556 or 15. */
  public double celsius() {
    return unit.toSi(degrees);
  }

  /** Returns how far a temperature lies above the base, in degrees of the base's own scale. */
  double above(double celsius) {
    return unit.fromSi(celsius) - degrees;
  }

  /** Returns the base in words for messages, such as {@code 60 degF}. */
  public String text() {
    return Math.round(degrees) + " " + unit.asciiSymbol();
  }
}
