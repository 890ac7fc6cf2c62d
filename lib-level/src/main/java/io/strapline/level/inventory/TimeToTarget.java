package io.strapline.level.inventory;

import io.strapline.level.reading.Quality;
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
 *     present flow does; zero when reached; empty when the content is BAD or the greatest flow
 *     unknown
 * @param quality worst quality of content and flow; the time at the greatest flow rests on the
 *     content alone
 */
public record TimeToTarget(
    Target target,
    Outlook outlook,
    OptionalDouble secondsAtPresentFlow,
    OptionalDouble secondsAtGreatestFlow,
    Quality quality) {

  /** Latest time that is still told, in seconds: about ten years. */
  public static final double HORIZON = 315_576_000;

  private static final OptionalDouble NEVER = OptionalDouble.empty();
  private static final OptionalDouble NOW = OptionalDouble.of(0);

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
   * @param greatest greatest flows, in the target's unit per second
   */
  public static TimeToTarget of(
      Target target, Reading content, Reading flow, GreatestFlows greatest) {
    Quality quality = Quality.worst(content.quality(), flow.quality());
    if (content.quality().isBad()) {
      return new TimeToTarget(target, Outlook.UNKNOWN, NEVER, NEVER, quality);
    }
    double remaining = target.side().direction().sign() * (target.amount() - content.value());
    if (remaining <= 0) {
      return new TimeToTarget(target, Outlook.REACHED, NOW, NOW, quality);
    }
    Outlook outlook = outlook(target, flow);
    boolean approaching = outlook == Outlook.APPROACHING;
    OptionalDouble present = approaching ? seconds(remaining, Math.abs(flow.value())) : NEVER;
    OptionalDouble most = greatest.towards(target);
    OptionalDouble least = most.isPresent() ? seconds(remaining, most.getAsDouble()) : NEVER;
    return new TimeToTarget(target, outlook, present, least, quality);
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
    return seconds <= HORIZON ? OptionalDouble.of(seconds) : NEVER;
  }
}
