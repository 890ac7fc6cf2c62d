package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import java.util.OptionalDouble;

/**
 * The greatest flows that pumps, conveyors and valves can bring, in the content's unit per second
 * and without sign. Immutable.
 *
 * @param filling greatest flow in, finite, greater than zero; empty if unknown
 * @param drawing greatest flow out, finite, greater than zero; empty if unknown
 */
public record GreatestFlows(OptionalDouble filling, OptionalDouble drawing) {

  /** Neither flow is known. */
  public static final GreatestFlows UNKNOWN =
      new GreatestFlows(OptionalDouble.empty(), OptionalDouble.empty());

  /** Refuses flows that are not greater than zero. */
  public GreatestFlows {
    Check.present("GreatestFlows.filling", filling, "leave it empty if unknown");
    Check.present("GreatestFlows.drawing", drawing, "leave it empty if unknown");
    filling.ifPresent(flow -> checked("filling", flow));
    drawing.ifPresent(flow -> checked("drawing", flow));
  }

  /** Returns two known flows. */
  public static GreatestFlows of(double filling, double drawing) {
    return new GreatestFlows(OptionalDouble.of(filling), OptionalDouble.of(drawing));
  }

  /** Returns the greatest flow that leads to a target. */
  OptionalDouble towards(Target target) {
    return switch (target.side()) {
      case FROM_BELOW -> filling;
      case FROM_ABOVE -> drawing;
    };
  }

  private static void checked(String name, double flow) {
    Check.positive("GreatestFlows." + name, flow, "per s", "give a flow without a sign");
  }
}
