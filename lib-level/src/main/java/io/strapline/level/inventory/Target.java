package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import io.strapline.level.vessel.CapacityCurve;

/**
 * A content that the vessel may reach: full, empty, or the set point of an alarm. Immutable.
 *
 * @param name what people call it, not blank
 * @param amount content in the unit of the {@link Content}, finite, zero or more
 * @param side where the content comes from when it reaches the target
 */
public record Target(String name, double amount, Side side) {

  /** The side from which a target is reached. */
  public enum Side {
    /** The content rises to it: full, high alarms. */
    FROM_BELOW(FlowDirection.FILLING),
    /** The content falls to it: empty, low alarms. */
    FROM_ABOVE(FlowDirection.DRAWING);

    private final FlowDirection direction;

    Side(FlowDirection direction) {
      this.direction = direction;
    }

    /** Returns the direction of flow that leads to the target. */
    public FlowDirection direction() {
      return direction;
    }
  }

  /** Refuses a target without name or with an amount that cannot be. */
  public Target {
    name = Check.text("Target.name", name, "name the target").strip();
    amount = Check.notNegative("Target.amount", amount, "", "give the content at the target");
    Check.present("Target.side", side, "say whether the content rises or falls to it");
  }

  /** Returns the full vessel, in cubic metres. */
  public static Target full(CapacityCurve vessel) {
    return new Target("full", vessel.capacityCubicMetres(), Side.FROM_BELOW);
  }

  /** Returns the empty vessel. */
  public static Target empty() {
    return new Target("empty", 0, Side.FROM_ABOVE);
  }

  /**
   * Returns the target at a level.
   *
   * @param heightMetres level above the datum, finite
   * @param content the content against the level, in the unit wanted
   */
  public static Target atLevel(String name, double heightMetres, Content content, Side side) {
    Check.finite("Target.level", heightMetres, "m", "give the level above the datum");
    return new Target(name, content.at(heightMetres), side);
  }
}
