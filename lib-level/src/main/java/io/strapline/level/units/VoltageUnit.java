package io.strapline.level.units;

/** Units of voltage. SI unit: volt. */
public enum VoltageUnit implements Unit {
  /** The SI unit. */
  VOLT("volt", "VLT", Conversion.si(), "V"),
  /** A thousandth of a volt. */
  MILLIVOLT("millivolt", "2Z", Conversion.ratio(1, 1e3), "mV");

  @SuppressWarnings("ImmutableEnumChecker") // Immutable as its javadoc says.
  private final UnitDefinition definition;

  VoltageUnit(String label, String uneceCode, Conversion conversion, String... symbols) {
    definition = UnitDefinition.of(Dimension.VOLTAGE, label, uneceCode, conversion, symbols);
  }

  @Override
  public UnitDefinition definition() {
    return definition;
  }
}
