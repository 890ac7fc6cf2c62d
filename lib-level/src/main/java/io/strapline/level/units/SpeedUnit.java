package io.strapline.level.units;

/** Units of speed, as of a rising surface. SI unit: metre per second. */
public enum SpeedUnit implements Unit {
  /** The SI unit. */
  METRE_PER_SECOND("metre per second", "MTS", Conversion.si(), "m/s"),
  /** A sixtieth of a metre per second. */
  METRE_PER_MINUTE("metre per minute", "2X", Conversion.ratio(1, 60), "m/min"),
  /** A 3600th of a metre per second. */
  METRE_PER_HOUR("metre per hour", "M60", Conversion.ratio(1, 3600), "m/h"),
  /** A hundredth of a metre per second. */
  CENTIMETRE_PER_SECOND("centimetre per second", "2M", Conversion.ratio(1, 100), "cm/s"),
  /** A thousandth of a metre per second. */
  MILLIMETRE_PER_SECOND("millimetre per second", "C16", Conversion.ratio(1, 1e3), "mm/s"),
  /** A thousandth of a metre per minute. */
  MILLIMETRE_PER_MINUTE("millimetre per minute", "H81", Conversion.ratio(1, 60e3), "mm/min"),
  /** 0.3048 m/s exactly. */
  FOOT_PER_SECOND("foot per second", "FS", Conversion.ratio(3048, 1e4), "ft/s"),
  /** A sixtieth of a foot per second. */
  FOOT_PER_MINUTE("foot per minute", "FR", Conversion.ratio(3048, 60e4), "ft/min"),
  /** A 3600th of a foot per second. */
  FOOT_PER_HOUR("foot per hour", "K14", Conversion.ratio(3048, 3600e4), "ft/h"),
  /** 0.0254 m/s exactly. */
  INCH_PER_SECOND("inch per second", "IU", Conversion.ratio(254, 1e4), "in/s"),
  /** A sixtieth of an inch per second. */
  INCH_PER_MINUTE("inch per minute", "M63", Conversion.ratio(254, 60e4), "in/min");

  @SuppressWarnings("ImmutableEnumChecker") // Immutable as its javadoc says.
  private final UnitDefinition definition;

  SpeedUnit(String label, String uneceCode, Conversion conversion, String... symbols) {
    definition = UnitDefinition.of(Dimension.SPEED, label, uneceCode, conversion, symbols);
  }

  @Override
  public UnitDefinition definition() {
    return definition;
  }
}
