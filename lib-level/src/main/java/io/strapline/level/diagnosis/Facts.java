package io.strapline.level.diagnosis;

import io.strapline.level.internal.Check;
import java.time.Instant;
import java.util.OptionalDouble;

/**
 * What one sample tells to diagnosis. Immutable. Numbers that are not finite count as not there.
 *
 * @param time when the device measured
 * @param distanceMetres along the beam as measured, before any filter; empty when the sample is no
 *     measurement
 * @param strength of the return in the device's own unit
 * @param currentMilliamps loop current as measured
 * @param lost whether the device saw no surface
 */
public record Facts(
    Instant time,
    OptionalDouble distanceMetres,
    OptionalDouble strength,
    OptionalDouble currentMilliamps,
    boolean lost) {

  /** Checks that all parts are there and drops numbers that are not finite. */
  public Facts {
    Check.present("Facts.time", time, "give the source time");
    distanceMetres = finite("Facts.distance", distanceMetres);
    strength = finite("Facts.strength", strength);
    currentMilliamps = finite("Facts.current", currentMilliamps);
  }

  private static OptionalDouble finite(String field, OptionalDouble value) {
    Check.present(field, value, "give OptionalDouble.empty() when unknown");
    return value.isPresent() && !Double.isFinite(value.getAsDouble())
        ? OptionalDouble.empty()
        : value;
  }

  /** Returns the facts of a distance without anything else. */
  public static Facts distance(Instant time, double metres) {
    OptionalDouble none = OptionalDouble.empty();
    return new Facts(time, OptionalDouble.of(metres), none, none, false);
  }

  /** Returns the facts of a lost return. */
  public static Facts lost(Instant time) {
    OptionalDouble none = OptionalDouble.empty();
    return new Facts(time, none, none, none, true);
  }

  /** Returns these facts with the strength of the return, in the device's own unit. */
  public Facts withStrength(double newStrength) {
    return new Facts(time, distanceMetres, OptionalDouble.of(newStrength), currentMilliamps, lost);
  }

  /** Returns these facts with the loop current in mA. */
  public Facts withCurrent(double milliamps) {
    return new Facts(time, distanceMetres, strength, OptionalDouble.of(milliamps), lost);
  }
}
