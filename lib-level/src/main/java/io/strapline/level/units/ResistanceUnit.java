package io.strapline.level.units;

/** Units of electric resistance. SI unit: ohm. */
public enum ResistanceUnit implements Unit {
  /** The SI unit. */
  OHM("ohm", "OHM", Conversion.si(), "Ω", "ohm"),
  /** A thousand ohms. */
  KILOHM("kilohm", "B49", Conversion.ratio(1e3, 1), "kΩ", "kohm");

  @SuppressWarnings("ImmutableEnumChecker") // Immutable as its javadoc says.
  private final UnitDefinition definition;

  ResistanceUnit(String label, String uneceCode, Conversion conversion, String... symbols) {
    definition = UnitDefinition.of(Dimension.RESISTANCE, label, uneceCode, conversion, symbols);
  }

  @Override
  public UnitDefinition definition() {
    return definition;
  }
}
