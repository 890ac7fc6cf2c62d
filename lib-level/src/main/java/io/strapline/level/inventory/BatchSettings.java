package io.strapline.level.inventory;

import io.strapline.level.internal.Check;

/**
 * When a movement of the content is a batch. Rates and amounts are in the content's unit.
 * Immutable.
 *
 * @param startRate flow at or above which a batch starts, per second, finite, greater than zero
 * @param stopRate flow at or below which it may have ended, per second, in [0, startRate)
 * @param quietSeconds how long the flow must stay at or below {@code stopRate}, in [0, 86400] s
 * @param minimumAmount smaller movements are no batches; finite, zero or more
 */
public record BatchSettings(
    double startRate, double stopRate, double quietSeconds, double minimumAmount) {

  private static final double DAY = 86_400;

  /** Refuses rates without hysteresis. */
  public BatchSettings {
    Check.positive("BatchSettings.startRate", startRate, "per s", "give a flow without a sign");
    stopRate =
        Check.notNegative("BatchSettings.stopRate", stopRate, "per s", "give a flow or zero");
    if (!(stopRate < startRate)) {
      throw Check.error(
          "BatchSettings.stopRate",
          stopRate,
          "per s",
          "must be less than startRate (" + startRate + " per s)",
          "lower it, so that a flow at the limit does not make a row of batches");
    }
    quietSeconds =
        Check.between(
            "BatchSettings.quiet", quietSeconds, "s", 0, DAY, "give the time at rest that ends it");
    minimumAmount =
        Check.notNegative("BatchSettings.minimumAmount", minimumAmount, "", "give an amount or 0");
  }
}
