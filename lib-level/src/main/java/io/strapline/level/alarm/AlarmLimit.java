package io.strapline.level.alarm;

/**
 * Settings of one level alarm. Immutable. Set when the level is at or beyond the set point for the
 * on-delay; cleared when it is back by more than the deadband for the off-delay.
 *
 * @param kind a limit, not {@link AlarmKind#BAD_SIGNAL}
 * @param setPointMetres level above the datum
 * @param deadbandMetres zero or more
 * @param onDelaySeconds zero or more
 * @param offDelaySeconds zero or more
 * @param handling priority and latching
 */
public record AlarmLimit(
    AlarmKind kind,
    double setPointMetres,
    double deadbandMetres,
    double onDelaySeconds,
    double offDelaySeconds,
    AlarmHandling handling) {}
