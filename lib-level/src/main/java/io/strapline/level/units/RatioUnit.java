package io.strapline.level.units;

/** Units of a ratio. The library computes in percent. */
public enum RatioUnit implements Unit {
  /** A hundredth of the whole. */
  PERCENT("percent", "P1", Conversion.si(), "%"),
  /** A thousandth of the whole. */
  PER_MILLE("per mille", "NX", Conversion.ratio(1, 10), "‰", "per mille"),
  /** A millionth of the whole. */
  PARTS_PER_MILLION("part per million", "59", Conversion.ratio(1, 1e4), "ppm");

  @SuppressWarnings("ImmutableEnumChecker") // Immutable as its javadoc says.
  private final UnitDefinition definition;

  RatioUnit(String label, String uneceCode, Conversion conversion, String... symbols) {
    definition = UnitDefinition.of(Dimension.RATIO, label, uneceCode, conversion, symbols);
  }

  @Override
  public UnitDefinition definition() {
    return definition;
  }
}
