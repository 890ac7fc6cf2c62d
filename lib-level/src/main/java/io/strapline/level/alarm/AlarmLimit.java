package io.strapline.level.alarm;

import io.strapline.level.internal.Check;

/**
 * Settings of one level alarm. Immutable. Set when the level is at or beyond the set point without
 * a break for the on-delay; cleared when it is back by more than the deadband without a break for
 * the off-delay (open PLC engineering course, module on analog signals, section 6.2). A condition
 * that has lasted exactly as long as the delay counts.
 *
 * @param kind a limit, not {@link AlarmKind#BAD_SIGNAL}
 * @param setPointMetres level above the datum, finite
 * @param deadbandMetres finite, zero or more
 * @param onDelaySeconds finite, zero or more; adds to the response time
 * @param offDelaySeconds finite, zero or more
 * @param handling priority and latching
 */
public record AlarmLimit(
    AlarmKind kind,
    double setPointMetres,
    double deadbandMetres,
    double onDelaySeconds,
    double offDelaySeconds,
    AlarmHandling handling) {

  /**
   * Checks all settings.
   *
   * @throws IllegalArgumentException naming the setting that breaks its rule
   */
  public AlarmLimit {
    checkKind(kind);
    setPointMetres =
        Check.finite("AlarmLimit.setPoint", setPointMetres, "m", "enter the level above the datum");
    deadbandMetres =
        Check.notNegative(
            "AlarmLimit.deadband", deadbandMetres, "m", "enter a little more than the noise");
    onDelaySeconds =
        Check.notNegative("AlarmLimit.onDelay", onDelaySeconds, "s", "enter 0 for no delay");
    offDelaySeconds =
        Check.notNegative("AlarmLimit.offDelay", offDelaySeconds, "s", "enter 0 for no delay");
    Check.present("AlarmLimit.handling", handling, "give priority and latching");
  }

  private static void checkKind(AlarmKind kind) {
    Check.present("AlarmLimit.kind", kind, "give HIGH_HIGH, HIGH, LOW or LOW_LOW");
    if (kind == AlarmKind.BAD_SIGNAL) {
      throw Check.error(
          "AlarmLimit.kind",
          kind.name(),
          "",
          "has no set point",
          "set the bad-signal alarm in AlarmSettings");
    }
  }

  /**
   * Returns the level at which the alarm still stands but beyond which it clears: the set point
   * less the deadband for a high alarm, plus the deadband for a low one.
   */
  public double clearPointMetres() {
    return kind.isHigh() ? setPointMetres - deadbandMetres : setPointMetres + deadbandMetres;
  }

  boolean isSetBy(double levelMetres) {
    return kind.isHigh() ? levelMetres >= setPointMetres : levelMetres <= setPointMetres;
  }

  boolean isClearedBy(double levelMetres) {
    return kind.isHigh() ? levelMetres < clearPointMetres() : levelMetres > clearPointMetres();
  }
}
