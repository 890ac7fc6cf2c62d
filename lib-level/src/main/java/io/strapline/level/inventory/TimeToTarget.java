package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import io.strapline.level.reading.Reading;
import java.util.OptionalDouble;

/**
 * How long until the content reaches a target, at the present flow and at the greatest flow there
 * can be. Immutable. {@code t = (target - content) / flow}; both in amounts and not in levels, so
 * that the cross-section is taken into account.
 *
 * @param target the target
 * @param outlook what the present flow does
 * @param secondsAtPresentFlow seconds; zero when reached; empty when standing, going away, unknown
 *     or later than {@value #HORIZON} s
 * @param secondsAtGreatestFlow least seconds in which the target can be reached whatever the
 *     present flow does; zero when reached; empty when the content is BAD
 */
public record TimeToTarget(
    Target target,
    Outlook outlook,
    OptionalDouble secondsAtPresentFlow,
    OptionalDouble secondsAtGreatestFlow) {

  /** Latest time that is still told, in seconds: about ten years. */
  public static final double HORIZON = 315_576_000;

  /** What the present flow does to the distance from the target. */
  public enum Outlook {
    /** The content is at the target or beyond it. */
    REACHED,
    /** The present flow leads to the target. */
    APPROACHING,
    /** The content stands. */
    STANDING,
    /** The present flow leads away from the target. */
    GOING_AWAY,
    /** Content or flow is BAD. */
    UNKNOWN
  }

  /**
   * Returns the time to a target.
   *
   * @param target the target
   * @param content present content, in the target's unit
   * @param flow present flow, in the target's unit per second, filling positive
   * @param greatestFlow greatest flow towards the target, in the target's unit per second; finite,
   *     greater than zero, without sign
   * @throws IllegalArgumentException if {@code greatestFlow} is out of its range
   */
  public static TimeToTarget of(Target target, Reading content, Reading flow, double greatestFlow) {
    Check.positive(
        "TimeToTarget.greatestFlow",
        greatestFlow,
        "per s",
        "give the greatest flow towards the target without a sign");
    if (content.quality().isBad()) {
      return new TimeToTarget(
          target, Outlook.UNKNOWN, OptionalDouble.empty(), OptionalDouble.empty());
    }
    double remaining = target.side().direction().sign() * (target.amount() - content.value());
    if (remaining <= 0) {
      OptionalDouble now = OptionalDouble.of(0);
      return new TimeToTarget(target, Outlook.REACHED, now, now);
    }
    Outlook outlook = outlook(target, flow);
    OptionalDouble present =
        outlook == Outlook.APPROACHING
            ? seconds(remaining, Math.abs(flow.value()))
            : OptionalDouble.empty();
    return new TimeToTarget(target, outlook, present, seconds(remaining, greatestFlow));
  }

  private static Outlook outlook(Target target, Reading flow) {
    if (flow.quality().isBad()) {
      return Outlook.UNKNOWN;
    }
    FlowDirection direction = FlowDirection.of(flow.value());
    if (direction == FlowDirection.STILL) {
      return Outlook.STANDING;
    }
    return direction == target.side().direction() ? Outlook.APPROACHING : Outlook.GOING_AWAY;
  }

  private static OptionalDouble seconds(double amount, double flow) {
    double seconds = amount / flow;
    return seconds <= HORIZON ? OptionalDouble.of(seconds) : OptionalDouble.empty();
  }
}
