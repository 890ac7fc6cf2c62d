package io.strapline.level.units;

/**
 * Units of volume. SI unit: cubic metre. There is no bare gallon and no bare barrel: the names say
 * which one.
 */
public enum VolumeUnit implements Unit {
  /** The SI unit. */
  CUBIC_METRE("cubic metre", "MTQ", Conversion.si(), "m³", "m3"),
  /** A cubic decimetre. */
  LITRE("litre", "LTR", Conversion.ratio(1, 1e3), "L", "l"),
  /** The litre by its other name. */
  CUBIC_DECIMETRE("cubic decimetre", "DMQ", Conversion.ratio(1, 1e3), "dm³", "dm3"),
  /** A millionth of a cubic metre. */
  CUBIC_CENTIMETRE("cubic centimetre", "CMQ", Conversion.ratio(1, 1e6), "cm³", "cm3"),
  /** A thousandth of a litre. */
  MILLILITRE("millilitre", "MLT", Conversion.ratio(1, 1e6), "mL", "ml"),
  /** A hundred litres. */
  HECTOLITRE("hectolitre", "HLT", Conversion.ratio(1, 10), "hL", "hl"),
  /** The cube of the inch. */
  CUBIC_INCH("cubic inch", "INQ", Conversion.ratio(16387064, 1e12), "in³", "in3"),
  /** The cube of the foot. */
  CUBIC_FOOT("cubic foot", "FTQ", Conversion.ratio(28316846592.0, 1e12), "ft³", "ft3"),
  /** The cube of the yard. */
  CUBIC_YARD("cubic yard", "YDQ", Conversion.ratio(764554857984.0, 1e12), "yd³", "yd3"),
  /** 231 cubic inches. */
  US_GALLON("US gallon", "GLL", Conversion.ratio(3785411784.0, 1e12), "US gal"),
  /** 4.546 09 litres exactly. */
  IMPERIAL_GALLON("imperial gallon", "GLI", Conversion.ratio(454609, 1e8), "imp gal"),
  /** The barrel of the oil trade, 42 US gallons. */
  OIL_BARREL("oil barrel", "BLL", Conversion.ratio(158987294928.0, 1e12), "oil bbl");

  @SuppressWarnings("ImmutableEnumChecker") // Immutable as its javadoc says.
  private final UnitDefinition definition;

  VolumeUnit(String label, String uneceCode, Conversion conversion, String... symbols) {
    definition = UnitDefinition.of(Dimension.VOLUME, label, uneceCode, conversion, symbols);
  }

  @Override
  public UnitDefinition definition() {
    return definition;
  }
}
