package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import java.time.Instant;

/**
 * A fill or draw under way, to be shown, and to be saved and resumed over a stop. Immutable.
 *
 * @param direction FILLING or DRAWING
 * @param start newest sample before the content left its rest
 * @param startAmount content at rest before the start, in the content's unit
 * @param trust how well it was seen so far
 */
public record OpenBatch(
    FlowDirection direction, Instant start, double startAmount, Batch.Trust trust) {

  /** Refuses a batch without a direction. */
  public OpenBatch {
    Check.present("OpenBatch.direction", direction, "say which way");
    Check.present("OpenBatch.start", start, "give the start");
    startAmount = Check.finite("OpenBatch.startAmount", startAmount, "", "give the content");
    Check.present("OpenBatch.trust", trust, "say how well the batch was seen");
    if (direction == FlowDirection.STILL) {
      throw Check.error(
          "OpenBatch.direction", "STILL", "", "must fill or draw", "leave out a batch at rest");
    }
  }

  OpenBatch seen(Batch.Trust other) {
    return new OpenBatch(direction, start, startAmount, Batch.Trust.worst(trust, other));
  }

  Batch ended(Instant end, double endAmount) {
    double moved = direction.sign() * (endAmount - startAmount);
    return new Batch(
        direction, start, end.isBefore(start) ? start : end, Math.max(0, moved), trust);
  }
}
