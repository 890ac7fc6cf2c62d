package io.strapline.level.signal;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What counts as a measurement. Immutable.
 *
 * @param deadZoneMetres distance below which the transmitter cannot measure, zero or more
 * @param farLimitMetres distance beyond which a return is not believed, greater than the dead zone;
 *     infinite means no limit
 * @param leastStrength weakest believable return, in the device's own unit; empty means no limit
 * @param invalidCodes raw values (as the source gives them, before any scaling) that mean "no
 *     measurement"
 */
public record GateSettings(
    double deadZoneMetres,
    double farLimitMetres,
    OptionalDouble leastStrength,
    List<Double> invalidCodes) {

  /** No gate. */
  public static final GateSettings OPEN =
      new GateSettings(0, Double.POSITIVE_INFINITY, OptionalDouble.empty(), List.of());

  /**
   * Returns whether a raw value, as the source gives it before any scaling, means "no measurement".
   */
  public boolean isInvalidCode(double raw) {
    return invalidCodes.contains(raw);
  }
}
