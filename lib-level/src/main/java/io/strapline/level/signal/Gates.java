package io.strapline.level.signal;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.util.OptionalDouble;

/**
 * Decides whether a sample is a measurement. Immutable.
 *
 * <p>The gates stand in this order, and the first that refuses names the cause:
 *
 * <ol>
 *   <li>not finite: {@link Cause#NOT_A_NUMBER};
 *   <li>distance less than the dead zone: {@link Cause#DEAD_ZONE};
 *   <li>distance greater than the far limit: {@link Cause#FAR_LIMIT};
 *   <li>strength less than the least strength: {@link Cause#WEAK_RETURN}.
 * </ol>
 *
 * <p>A distance or strength exactly on a limit passes. While a least strength is set, a strength
 * that is missing or not finite counts as too weak: a device that does not tell its strength must
 * not slip through a gate which was set to look at it.
 *
 * <p>{@link GateSettings#isInvalidCode} stands before all of them, because the codes are raw values
 * and can be recognised only before scaling.
 */
public final class Gates {

  private static final Quality NOT_A_NUMBER = Quality.bad(Cause.NOT_A_NUMBER);
  private static final Quality DEAD_ZONE = Quality.bad(Cause.DEAD_ZONE);
  private static final Quality FAR_LIMIT = Quality.bad(Cause.FAR_LIMIT);
  private static final Quality WEAK_RETURN = Quality.bad(Cause.WEAK_RETURN);

  private final GateSettings settings;

  private Gates(GateSettings settings) {
    this.settings = settings;
  }

  /** Returns gates with these settings. */
  public static Gates of(GateSettings settings) {
    return new Gates(settings);
  }

  /**
   * Judges a reading: a BAD one keeps its own quality, the value of any other goes through the
   * gates.
   *
   * @return GOOD when it passed, else BAD with the cause
   */
  public Quality judge(Reading distance, OptionalDouble strength) {
    return distance.quality().isBad() ? distance.quality() : judge(distance.value(), strength);
  }

  /**
   * Judges a distance.
   *
   * @param distanceMetres along the beam, any double
   * @param strength of the return in the device's own unit, if known, any double
   * @return GOOD when it passed, else BAD with the cause
   */
  public Quality judge(double distanceMetres, OptionalDouble strength) {
    if (!Double.isFinite(distanceMetres)) {
      return NOT_A_NUMBER;
    }
    if (settings.deadZoneMetres() > 0 && distanceMetres < settings.deadZoneMetres()) {
      return DEAD_ZONE;
    }
    if (distanceMetres > settings.farLimitMetres()) {
      return FAR_LIMIT;
    }
    return isStrongEnough(strength) ? Quality.GOOD : WEAK_RETURN;
  }

  private boolean isStrongEnough(OptionalDouble strength) {
    if (settings.leastStrength().isEmpty()) {
      return true;
    }
    double value = strength.orElse(Double.NaN);
    return Double.isFinite(value) && value >= settings.leastStrength().getAsDouble();
  }
}
