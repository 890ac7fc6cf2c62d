package io.strapline.level.units;

/** Units of time. SI unit: second. */
public enum TimeUnit implements Unit {
  /** The SI unit. */
  SECOND("second", "SEC", Conversion.si(), "s"),
  /** A thousandth of a second. */
  MILLISECOND("millisecond", "C26", Conversion.ratio(1, 1e3), "ms"),
  /** Sixty seconds. */
  MINUTE("minute", "MIN", Conversion.ratio(60, 1), "min"),
  /** Sixty minutes. */
  HOUR("hour", "HUR", Conversion.ratio(3600, 1), "h"),
  /** Twenty-four hours. */
  DAY("day", "DAY", Conversion.ratio(86400, 1), "d");

  @SuppressWarnings("ImmutableEnumChecker") // Immutable as its javadoc says.
  private final UnitDefinition definition;

  TimeUnit(String label, String uneceCode, Conversion conversion, String... symbols) {
    definition = UnitDefinition.of(Dimension.TIME, label, uneceCode, conversion, symbols);
  }

  @Override
  public UnitDefinition definition() {
    return definition;
  }
}
