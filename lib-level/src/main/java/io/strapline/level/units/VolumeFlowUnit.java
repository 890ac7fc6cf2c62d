package io.strapline.level.units;

/** Units of volume flow. SI unit: cubic metre per second. */
public enum VolumeFlowUnit implements Unit {
  /** The SI unit. */
  CUBIC_METRE_PER_SECOND("cubic metre per second", "MQS", Conversion.si(), "m³/s", "m3/s"),
  /** A sixtieth of a cubic metre per second. */
  CUBIC_METRE_PER_MINUTE(
      "cubic metre per minute", "G53", Conversion.ratio(1, 60), "m³/min", "m3/min"),
  /** A 3600th of a cubic metre per second. */
  CUBIC_METRE_PER_HOUR("cubic metre per hour", "MQH", Conversion.ratio(1, 3600), "m³/h", "m3/h"),
  /** A cubic metre in 86 400 seconds. */
  CUBIC_METRE_PER_DAY("cubic metre per day", "G52", Conversion.ratio(1, 86400), "m³/d", "m3/d"),
  /** A thousandth of a cubic metre per second. */
  LITRE_PER_SECOND("litre per second", "G51", Conversion.ratio(1, 1e3), "L/s", "l/s"),
  /** A sixtieth of a litre per second. */
  LITRE_PER_MINUTE("litre per minute", "L2", Conversion.ratio(1, 60e3), "L/min", "l/min"),
  /** A 3600th of a litre per second. */
  LITRE_PER_HOUR("litre per hour", "E32", Conversion.ratio(1, 3600e3), "L/h", "l/h"),
  /** 231 cubic inches in a minute. */
  US_GALLON_PER_MINUTE(
      "US gallon per minute", "G2", Conversion.ratio(3785411784.0, 60e12), "US gal/min"),
  /** 231 cubic inches in an hour. */
  US_GALLON_PER_HOUR(
      "US gallon per hour", "G50", Conversion.ratio(3785411784.0, 3600e12), "US gal/h"),
  /** 4.546 09 litres in a minute. */
  IMPERIAL_GALLON_PER_MINUTE(
      "imperial gallon per minute", "G3", Conversion.ratio(454609, 60e8), "imp gal/min"),
  /** 4.546 09 litres in an hour. */
  IMPERIAL_GALLON_PER_HOUR(
      "imperial gallon per hour", "K27", Conversion.ratio(454609, 3600e8), "imp gal/h"),
  /** 42 US gallons in an hour. */
  OIL_BARREL_PER_HOUR(
      "oil barrel per hour", "J62", Conversion.ratio(158987294928.0, 3600e12), "oil bbl/h"),
  /** 42 US gallons in a day. */
  OIL_BARREL_PER_DAY(
      "oil barrel per day", "B1", Conversion.ratio(158987294928.0, 86400e12), "oil bbl/d"),
  /** The cube of the foot in a second. */
  CUBIC_FOOT_PER_SECOND(
      "cubic foot per second", "E17", Conversion.ratio(28316846592.0, 1e12), "ft³/s", "ft3/s"),
  /** The cube of the foot in a minute. */
  CUBIC_FOOT_PER_MINUTE(
      "cubic foot per minute", "2L", Conversion.ratio(28316846592.0, 60e12), "ft³/min", "ft3/min"),
  /** The cube of the foot in an hour. */
  CUBIC_FOOT_PER_HOUR(
      "cubic foot per hour", "2K", Conversion.ratio(28316846592.0, 3600e12), "ft³/h", "ft3/h");

  @SuppressWarnings("ImmutableEnumChecker") // Immutable as its javadoc says.
  private final UnitDefinition definition;

  VolumeFlowUnit(String label, String uneceCode, Conversion conversion, String... symbols) {
    definition = UnitDefinition.of(Dimension.VOLUME_FLOW, label, uneceCode, conversion, symbols);
  }

  @Override
  public UnitDefinition definition() {
    return definition;
  }
}
