package io.strapline.level.units;

/** Units of plane angle. The library takes and gives degrees. */
public enum AngleUnit implements Unit {
  /** A 360th of a full turn. */
  DEGREE("degree", "DD", Conversion.si(), "°", "deg"),
  /** 180/pi degrees. */
  RADIAN("radian", "C81", Conversion.ratio(180, Math.PI), "rad");

  @SuppressWarnings("ImmutableEnumChecker") // Immutable as its javadoc says.
  private final UnitDefinition definition;

  AngleUnit(String label, String uneceCode, Conversion conversion, String... symbols) {
    definition = UnitDefinition.of(Dimension.ANGLE, label, uneceCode, conversion, symbols);
  }

  @Override
  public UnitDefinition definition() {
    return definition;
  }
}
