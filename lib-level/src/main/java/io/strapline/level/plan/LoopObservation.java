package io.strapline.level.plan;

import io.strapline.level.internal.Check;
import java.util.OptionalDouble;

/**
 * One moment at a loop, all three read while the surface stands still. Immutable.
 *
 * @param referenceMetres true level above the datum, by tape or dip; finite
 * @param currentMilliamps measured in the loop; finite, zero or more
 * @param shownMetres level that the receiver shows, finite; empty when it shows a fault
 */
public record LoopObservation(
    double referenceMetres, double currentMilliamps, OptionalDouble shownMetres) {

  /** Checks all three. */
  public LoopObservation {
    referenceMetres =
        Check.finite(
            "LoopObservation.reference", referenceMetres, "m", "enter the level by tape or dip");
    currentMilliamps =
        Check.notNegative(
            "LoopObservation.current", currentMilliamps, "mA", "enter the measured loop current");
    Check.present("LoopObservation.shown", shownMetres, "give OptionalDouble.empty() for a fault");
    if (shownMetres.isPresent()) {
      Check.finite(
          "LoopObservation.shown", shownMetres.getAsDouble(), "m", "leave it out for a fault");
    }
  }
}
