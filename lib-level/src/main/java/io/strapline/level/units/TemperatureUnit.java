package io.strapline.level.units;

/**
 * Units of temperature, as points on a scale and not as differences. The library computes in
 * degrees Celsius.
 */
public enum TemperatureUnit implements Unit {
  /** The unit of the library. */
  DEGREE_CELSIUS("degree Celsius", "CEL", Conversion.si(), "°C", "degC"),
  /** Celsius by (F - 32) x 5/9. */
  DEGREE_FAHRENHEIT("degree Fahrenheit", "FAH", new Conversion(-32, 5, 9), "°F", "degF"),
  /** Celsius by K - 273.15. */
  KELVIN("kelvin", "KEL", new Conversion(-273.15, 1, 1), "K");

  @SuppressWarnings("ImmutableEnumChecker") // Immutable as its javadoc says.
  private final UnitDefinition definition;

  TemperatureUnit(String label, String uneceCode, Conversion conversion, String... symbols) {
    definition = UnitDefinition.of(Dimension.TEMPERATURE, label, uneceCode, conversion, symbols);
  }

  @Override
  public UnitDefinition definition() {
    return definition;
  }
}
