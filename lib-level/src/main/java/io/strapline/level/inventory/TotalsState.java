package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import java.time.Instant;
import java.util.Optional;

/**
 * All that {@link Totals} must remember, to be saved and restored over a stop or a kill. Immutable.
 *
 * @param filled sum of all that went in, zero or more
 * @param drawn sum of all that went out, zero or more
 * @param turning the turning point the next amount counts from; empty before the first sample
 * @param doubtful whether an UNCERTAIN level was counted since the last clearing
 */
public record TotalsState(
    CompensatedSum filled, CompensatedSum drawn, Optional<Turning> turning, boolean doubtful) {

  /** Nothing counted yet. */
  public static final TotalsState NONE =
      new TotalsState(CompensatedSum.ZERO, CompensatedSum.ZERO, Optional.empty(), false);

  /**
   * The farthest level of the present movement.
   *
   * @param direction direction of the movement, STILL before the first one
   * @param heightMetres the level in metres above the datum, finite
   * @param lastTime time of the newest sample taken
   */
  public record Turning(FlowDirection direction, double heightMetres, Instant lastTime) {

    /** Refuses a level that is not finite. */
    public Turning {
      Check.present("TotalsState.direction", direction, "restore what was saved");
      heightMetres =
          Check.finite("TotalsState.height", heightMetres, "m", "restore what was saved");
      Check.present("TotalsState.lastTime", lastTime, "restore what was saved");
    }
  }

  /** Refuses sums below zero. */
  public TotalsState {
    Check.present("TotalsState.filled", filled, "restore what was saved");
    Check.present("TotalsState.drawn", drawn, "restore what was saved");
    Check.present("TotalsState.turning", turning, "restore what was saved");
    Check.notNegative("TotalsState.filled", filled.value(), "", "restore what was saved");
    Check.notNegative("TotalsState.drawn", drawn.value(), "", "restore what was saved");
  }

  /** Returns all that went in, in the content's unit. */
  public double filledAmount() {
    return filled.value();
  }

  /** Returns all that went out, in the content's unit. */
  public double drawnAmount() {
    return drawn.value();
  }
}
