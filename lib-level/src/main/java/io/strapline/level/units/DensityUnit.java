package io.strapline.level.units;

/** Units of density and bulk density. SI unit: kilogram per cubic metre. */
public enum DensityUnit implements Unit {
  /** The SI unit. */
  KILOGRAM_PER_CUBIC_METRE("kilogram per cubic metre", "KMQ", Conversion.si(), "kg/m³", "kg/m3"),
  /** A thousand kilograms per cubic metre. */
  TONNE_PER_CUBIC_METRE("tonne per cubic metre", "D41", Conversion.ratio(1e3, 1), "t/m³", "t/m3"),
  /** A thousand kilograms per cubic metre. */
  GRAM_PER_CUBIC_CENTIMETRE(
      "gram per cubic centimetre", "23", Conversion.ratio(1e3, 1), "g/cm³", "g/cm3"),
  /** A thousand kilograms per cubic metre. */
  KILOGRAM_PER_LITRE("kilogram per litre", "B35", Conversion.ratio(1e3, 1), "kg/L", "kg/l"),
  /** A thousand kilograms per cubic metre. */
  KILOGRAM_PER_CUBIC_DECIMETRE(
      "kilogram per cubic decimetre", "B34", Conversion.ratio(1e3, 1), "kg/dm³", "kg/dm3"),
  /** One kilogram per cubic metre. */
  GRAM_PER_LITRE("gram per litre", "GL", Conversion.si(), "g/L", "g/l"),
  /** The pound over the cube of the foot. */
  POUND_PER_CUBIC_FOOT(
      "pound per cubic foot",
      "87",
      Conversion.ratio(453592370e3, 28316846592.0),
      "lb/ft³",
      "lb/ft3"),
  /** The pound over 231 cubic inches. */
  POUND_PER_US_GALLON(
      "pound per US gallon", "GE", Conversion.ratio(453592370e3, 3785411784.0), "lb/US gal");

  @SuppressWarnings("ImmutableEnumChecker") // Immutable as its javadoc says.
  private final UnitDefinition definition;

  DensityUnit(String label, String uneceCode, Conversion conversion, String... symbols) {
    definition = UnitDefinition.of(Dimension.DENSITY, label, uneceCode, conversion, symbols);
  }

  @Override
  public UnitDefinition definition() {
    return definition;
  }
}
