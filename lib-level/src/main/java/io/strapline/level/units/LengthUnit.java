package io.strapline.level.units;

/** Units of length and level. SI unit: metre. */
public enum LengthUnit implements Unit {
  /** The SI unit. */
  METRE("metre", "MTR", Conversion.si(), "m"),
  /** A thousandth of a metre. */
  MILLIMETRE("millimetre", "MMT", Conversion.ratio(1, 1e3), "mm"),
  /** A hundredth of a metre. */
  CENTIMETRE("centimetre", "CMT", Conversion.ratio(1, 100), "cm"),
  /** A thousand metres. */
  KILOMETRE("kilometre", "KMT", Conversion.ratio(1e3, 1), "km"),
  /** The international inch, 0.0254 m exactly. */
  INCH("inch", "INH", Conversion.ratio(254, 1e4), "in"),
  /** The international foot, 0.3048 m exactly. */
  FOOT("foot", "FOT", Conversion.ratio(3048, 1e4), "ft"),
  /** Three feet, 0.9144 m exactly. */
  YARD("yard", "YRD", Conversion.ratio(9144, 1e4), "yd");

  @SuppressWarnings("ImmutableEnumChecker") // Immutable as its javadoc says.
  private final UnitDefinition definition;

  LengthUnit(String label, String uneceCode, Conversion conversion, String... symbols) {
    definition = UnitDefinition.of(Dimension.LENGTH, label, uneceCode, conversion, symbols);
  }

  @Override
  public UnitDefinition definition() {
    return definition;
  }
}
