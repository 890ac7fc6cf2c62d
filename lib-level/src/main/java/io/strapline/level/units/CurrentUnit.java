package io.strapline.level.units;

/** Units of electric current. The library computes in milliamps, the unit of the loop. */
public enum CurrentUnit implements Unit {
  /** The unit of the current loop. */
  MILLIAMPERE("milliampere", "4K", Conversion.si(), "mA"),
  /** A thousand milliamps. */
  AMPERE("ampere", "AMP", Conversion.ratio(1e3, 1), "A"),
  /** A thousandth of a milliamp. */
  MICROAMPERE("microampere", "B84", Conversion.ratio(1, 1e3), "µA", "uA");

  @SuppressWarnings("ImmutableEnumChecker") // Immutable as its javadoc says.
  private final UnitDefinition definition;

  CurrentUnit(String label, String uneceCode, Conversion conversion, String... symbols) {
    definition = UnitDefinition.of(Dimension.CURRENT, label, uneceCode, conversion, symbols);
  }

  @Override
  public UnitDefinition definition() {
    return definition;
  }
}
