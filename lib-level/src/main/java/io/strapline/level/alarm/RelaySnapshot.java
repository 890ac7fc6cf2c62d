package io.strapline.level.alarm;

import java.time.Instant;

/**
 * A relay at one moment. Immutable.
 *
 * @param alarm whether it is in the alarm position
 * @param energised whether its coil carries current
 * @param reason why it is where it is
 * @param since time of the last change of position; the start when it never changed
 * @param changes how often it changed its position since the start: wear of the contact
 */
public record RelaySnapshot(
    boolean alarm, boolean energised, Reason reason, Instant since, long changes) {

  /** Why a relay is where it is. */
  public enum Reason {
    /** No measurement has come since the start. */
    START,
    /** By the level. */
    LEVEL,
    /** By its fallback, for want of a measurement; so from the end of the bad-signal delay. */
    BAD_SIGNAL
  }
}
