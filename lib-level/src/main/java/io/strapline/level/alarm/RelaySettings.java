package io.strapline.level.alarm;

import io.strapline.level.internal.Check;

/**
 * Settings of one relay on the level. Immutable.
 *
 * <p>The relay is in its alarm position from the pick-up point on and leaves it at the drop-out
 * point. A pick-up point above the drop-out point guards against a high level, one below it against
 * a low level; the distance of the two is the hysteresis. Both points count as reached by the level
 * itself.
 *
 * @param pickUpMetres level above the datum at which the relay goes into the alarm position, finite
 * @param dropOutMetres level at which it leaves it, finite, other than {@code pickUpMetres}
 * @param delays how long the level must stand there
 * @param coil whether the coil carries current in the alarm position
 * @param fallback what the relay does while there is no measurement
 */
public record RelaySettings(
    double pickUpMetres, double dropOutMetres, Delays delays, Coil coil, Fallback fallback) {

  /** What the coil does in the alarm position. */
  public enum Coil {
    /**
     * The coil drops in the alarm position, so that a lost supply or a broken wire looks like the
     * alarm: the safe choice (closed-circuit principle, common practice, no source).
     */
    DE_ENERGISED_IN_ALARM,
    /** The coil pulls in the alarm position; a lost supply hides the alarm. */
    ENERGISED_IN_ALARM
  }

  /** What the relay does while there is no measurement: BAD or substituted. */
  public enum Fallback {
    /** Goes into the alarm position: the safe choice. */
    ALARM,
    /** Keeps its position; at start, when there is none to keep, the alarm position. */
    HOLD,
    /** Goes into the normal position; hides an alarm. */
    NORMAL
  }

  /**
   * How long a level must stand before the relay acts. Times in seconds, finite, zero or more; a
   * level that has stood exactly as long as the delay counts.
   *
   * @param onSeconds at or beyond the pick-up point
   * @param offSeconds at or beyond the drop-out point
   * @param badSignalSeconds without a measurement, before the fallback
   */
  public record Delays(double onSeconds, double offSeconds, double badSignalSeconds) {

    /** At once. */
    public static final Delays NONE = new Delays(0, 0, 0);

    /** Checks all times. */
    public Delays {
      onSeconds = checked("on", onSeconds);
      offSeconds = checked("off", offSeconds);
      badSignalSeconds = checked("badSignal", badSignalSeconds);
    }

    private static double checked(String name, double seconds) {
      return Check.notNegative(
          "RelaySettings.delays." + name, seconds, "s", "enter 0 for no delay");
    }
  }

  /**
   * Checks all settings.
   *
   * @throws IllegalArgumentException naming the setting that breaks its rule
   */
  public RelaySettings {
    pickUpMetres =
        Check.finite("RelaySettings.pickUp", pickUpMetres, "m", "enter the level that means alarm");
    dropOutMetres =
        Check.finite(
            "RelaySettings.dropOut", dropOutMetres, "m", "enter the level that ends the alarm");
    if (pickUpMetres == dropOutMetres) {
      throw Check.error(
          "RelaySettings.dropOut",
          dropOutMetres,
          "m",
          "must differ from pickUp (" + pickUpMetres + " m)",
          "enter it below for a high level, above for a low level, by more than the noise");
    }
    Check.present("RelaySettings.delays", delays, "give Delays.NONE for none");
    Check.present("RelaySettings.coil", coil, "give DE_ENERGISED_IN_ALARM unless it must not be");
    Check.present("RelaySettings.fallback", fallback, "give ALARM unless it must not be");
  }

  /**
   * Returns the safe settings: no delays, coil de-energised in alarm, alarm position without a
   * measurement and at start.
   */
  public static RelaySettings safe(double pickUpMetres, double dropOutMetres) {
    return new RelaySettings(
        pickUpMetres, dropOutMetres, Delays.NONE, Coil.DE_ENERGISED_IN_ALARM, Fallback.ALARM);
  }

  /** Returns whether the relay guards against a high level. */
  public boolean isHigh() {
    return pickUpMetres > dropOutMetres;
  }

  boolean picksUpAt(double levelMetres) {
    return isHigh() ? levelMetres >= pickUpMetres : levelMetres <= pickUpMetres;
  }

  boolean dropsOutAt(double levelMetres) {
    return isHigh() ? levelMetres <= dropOutMetres : levelMetres >= dropOutMetres;
  }
}
