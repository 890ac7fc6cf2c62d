package io.strapline.level.units;

/** Units of mass flow. SI unit: kilogram per second. */
public enum MassFlowUnit implements Unit {
  /** The SI unit. */
  KILOGRAM_PER_SECOND("kilogram per second", "KGS", Conversion.si(), "kg/s"),
  /** A sixtieth of a kilogram per second. */
  KILOGRAM_PER_MINUTE("kilogram per minute", "F31", Conversion.ratio(1, 60), "kg/min"),
  /** A 3600th of a kilogram per second. */
  KILOGRAM_PER_HOUR("kilogram per hour", "E93", Conversion.ratio(1, 3600), "kg/h"),
  /** A thousand kilograms in a minute. */
  TONNE_PER_MINUTE("tonne per minute", "L78", Conversion.ratio(1e3, 60), "t/min"),
  /** A thousand kilograms in an hour. */
  TONNE_PER_HOUR("tonne per hour", "E18", Conversion.ratio(1e3, 3600), "t/h"),
  /** A thousand kilograms in a day. */
  TONNE_PER_DAY("tonne per day", "L71", Conversion.ratio(1e3, 86400), "t/d"),
  /** 0.453 592 37 kg in an hour. */
  POUND_PER_HOUR("pound per hour", "4U", Conversion.ratio(45359237, 3600e8), "lb/h"),
  /** 2000 pounds in an hour. */
  SHORT_TON_PER_HOUR("short ton per hour", "4W", Conversion.ratio(90718474, 3600e5), "short ton/h"),
  /** 2240 pounds in an hour. */
  LONG_TON_PER_HOUR(
      "long ton per hour",
      UnitDefinition.NO_CODE,
      Conversion.ratio(10160469088.0, 3600e7),
      "long ton/h");

  @SuppressWarnings("ImmutableEnumChecker") // Immutable as its javadoc says.
  private final UnitDefinition definition;

  MassFlowUnit(String label, String uneceCode, Conversion conversion, String... symbols) {
    definition = UnitDefinition.of(Dimension.MASS_FLOW, label, uneceCode, conversion, symbols);
  }

  @Override
  public UnitDefinition definition() {
    return definition;
  }
}
