package io.strapline.level.alarm;

import io.strapline.level.internal.Check;
import java.time.Instant;
import java.util.Optional;

/**
 * All that keeps an alarm from being announced; the three reasons may stand at once. Immutable.
 *
 * @param shelvedUntil when shelving ends at the latest; empty when not shelved
 * @param oneShot whether shelving ends already when the alarm's condition goes; only if shelved
 * @param byDesign whether the plant's logic suppresses it
 * @param outOfService whether it is out of service
 */
public record AlarmSuppression(
    Optional<Instant> shelvedUntil, boolean oneShot, boolean byDesign, boolean outOfService) {

  /** Nothing: the alarm is announced. */
  public static final AlarmSuppression NONE =
      new AlarmSuppression(Optional.empty(), false, false, false);

  /** Checks that one-shot goes with shelving. */
  public AlarmSuppression {
    Check.present("AlarmSuppression.shelvedUntil", shelvedUntil, "give Optional.empty() for none");
    if (oneShot && shelvedUntil.isEmpty()) {
      throw Check.error(
          "AlarmSuppression.oneShot", "true", "", "goes with shelving only", "give shelvedUntil");
    }
  }

  /** Returns the strongest reason: out of service, then by design, then shelved. */
  public Suppression effective() {
    if (outOfService) {
      return Suppression.OUT_OF_SERVICE;
    }
    if (byDesign) {
      return Suppression.SUPPRESSED_BY_DESIGN;
    }
    return shelvedUntil.isPresent() ? Suppression.SHELVED : Suppression.NONE;
  }
}
