package io.strapline.level.units;

import java.util.Optional;

/**
 * A unit of measure with its exact conversion. The enums of this package are all there are.
 * Immutable.
 */
public sealed interface Unit
    permits LengthUnit,
        VolumeUnit,
        MassUnit,
        DensityUnit,
        TimeUnit,
        SpeedUnit,
        VolumeFlowUnit,
        MassFlowUnit,
        CurrentUnit,
        VoltageUnit,
        ResistanceUnit,
        TemperatureUnit,
        AngleUnit,
        RatioUnit {

  /** Returns all that makes the unit. */
  UnitDefinition definition();

  /** Returns what the unit measures. */
  default Dimension dimension() {
    return definition().dimension();
  }

  /** Returns the proper symbol, such as {@code m³} or {@code °C}. */
  default String symbol() {
    return definition().symbols().get(0);
  }

  /** Returns the symbol in ASCII, such as {@code m3} or {@code degC}. */
  default String asciiSymbol() {
    return definition().asciiSymbol();
  }

  /** Returns the unit's name in words, such as "cubic metre". */
  default String label() {
    return definition().label();
  }

  /** Returns the UNECE Recommendation 20 common code, such as {@code MTQ}; empty without one. */
  default Optional<String> uneceCode() {
    return definition().uneceCode();
  }

  /**
   * Converts to the unit the library computes in (see {@link Dimension}).
   *
   * @param value in this unit; NaN and infinities pass through
   */
  default double toSi(double value) {
    return definition().conversion().toSi(value);
  }

  /**
   * Converts from the unit the library computes in (see {@link Dimension}).
   *
   * @param si in the library's unit; NaN and infinities pass through
   */
  default double fromSi(double si) {
    return definition().conversion().fromSi(si);
  }
}
