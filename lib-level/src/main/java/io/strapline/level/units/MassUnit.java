package io.strapline.level.units;

/** Units of mass. SI unit: kilogram. There is no bare ton: the names say which one. */
public enum MassUnit implements Unit {
  /** The SI unit. */
  KILOGRAM("kilogram", "KGM", Conversion.si(), "kg"),
  /** A thousandth of a kilogram. */
  GRAM("gram", "GRM", Conversion.ratio(1, 1e3), "g"),
  /** The metric ton, a thousand kilograms. */
  TONNE("tonne", "TNE", Conversion.ratio(1e3, 1), "t"),
  /** The avoirdupois pound, 0.453 592 37 kg exactly. */
  POUND("pound", "LBR", Conversion.ratio(45359237, 1e8), "lb"),
  /** 2000 pounds. */
  SHORT_TON("short ton", "STN", Conversion.ratio(90718474, 1e5), "short ton"),
  /** 2240 pounds. */
  LONG_TON("long ton", "LTN", Conversion.ratio(10160469088.0, 1e7), "long ton");

  @SuppressWarnings("ImmutableEnumChecker") // Immutable as its javadoc says.
  private final UnitDefinition definition;

  MassUnit(String label, String uneceCode, Conversion conversion, String... symbols) {
    definition = UnitDefinition.of(Dimension.MASS, label, uneceCode, conversion, symbols);
  }

  @Override
  public UnitDefinition definition() {
    return definition;
  }
}
