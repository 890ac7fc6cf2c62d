package io.strapline.level.signal;

import io.strapline.level.internal.Check;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What counts as a measurement. Immutable. Each limit itself still counts as a measurement.
 *
 * @param deadZoneMetres distance below which the transmitter cannot measure, finite, zero or more;
 *     zero means no dead zone, and a negative distance passes too
 * @param farLimitMetres distance beyond which a return is not believed, greater than the dead zone;
 *     infinite means no limit
 * @param leastStrength weakest believable return, finite, in the device's own unit; empty means no
 *     limit
 * @param invalidCodes raw values (as the source gives them, before any scaling) that mean "no
 *     measurement"; finite, because what is not finite is never a measurement
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
   * Checks all numbers.
   *
   * @throws IllegalArgumentException naming the setting that breaks its rule
   */
  public GateSettings {
    deadZoneMetres =
        Check.notNegative(
            "GateSettings.deadZone",
            deadZoneMetres,
            "m",
            "enter the nearest distance that the transmitter can measure");
    checkFarLimit(farLimitMetres, deadZoneMetres);
    Check.present("GateSettings.leastStrength", leastStrength, "give OptionalDouble.empty()");
    if (leastStrength.isPresent()) {
      Check.finite(
          "GateSettings.leastStrength",
          leastStrength.getAsDouble(),
          "",
          "enter the weakest believable return, or leave it out");
    }
    invalidCodes = checkedCodes(invalidCodes);
  }

  private static void checkFarLimit(double farLimit, double deadZone) {
    // Positive form: NaN is refused, an infinite limit is not.
    if (!(farLimit > deadZone)) {
      throw Check.error(
          "GateSettings.farLimit",
          farLimit,
          "m",
          "must be greater than the dead zone (" + deadZone + " m)",
          "enter the greatest distance to believe, or infinity for no limit");
    }
  }

  private static List<Double> checkedCodes(List<Double> codes) {
    String field = "GateSettings.invalidCodes";
    Check.present(field, codes, "give an empty list when the device sends no such code");
    for (int i = 0; i < codes.size(); i++) {
      String place = field + "[" + i + "]";
      Double code = Check.present(place, codes.get(i), "give the raw value of the code");
      Check.finite(place, code, "", "leave it out: what is not finite is refused anyway");
    }
    return List.copyOf(codes);
  }

  /**
   * Returns whether a raw value, as the source gives it before any scaling, means "no measurement".
   * Compared exactly: a code is a pattern that the device sends, not a measurement.
   *
   * @param raw any double
   */
  public boolean isInvalidCode(double raw) {
    for (double code : invalidCodes) {
      if (raw == code) {
        return true;
      }
    }
    return false;
  }
}
