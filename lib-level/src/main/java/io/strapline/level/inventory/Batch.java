package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import java.time.Instant;

/**
 * One fill or draw, from rest to rest. Immutable.
 *
 * @param direction FILLING or DRAWING
 * @param start newest sample before the content left its rest
 * @param end first sample at which the content was at its new rest; not before {@code start}
 * @param amount what moved, in the content's unit, without sign
 * @param trust how well the batch was seen
 */
public record Batch(
    FlowDirection direction, Instant start, Instant end, double amount, Trust trust) {

  /** How well a batch was seen, best first. */
  public enum Trust {
    /** Start and end were seen on good samples. */
    FULL,
    /** Samples with an UNCERTAIN quality took part. */
    UNCERTAIN_INPUT,
    /** The start was not seen, or samples were missing: the amount is net and may be incomplete. */
    PARTLY_SEEN;

    static Trust worst(Trust a, Trust b) {
      return a.compareTo(b) >= 0 ? a : b;
    }
  }

  /** Refuses a batch without a direction or one that ends before it starts. */
  public Batch {
    Check.present("Batch.direction", direction, "say which way");
    Check.present("Batch.start", start, "give the start");
    Check.present("Batch.end", end, "give the end");
    Check.present("Batch.trust", trust, "say how well the batch was seen");
    amount = Check.notNegative("Batch.amount", amount, "", "give the amount without a sign");
    if (direction == FlowDirection.STILL || end.isBefore(start)) {
      throw Check.error(
          "Batch.direction",
          direction + " from " + start + " to " + end,
          "",
          "must fill or draw and not end before it starts",
          "check the order of the times");
    }
  }
}
