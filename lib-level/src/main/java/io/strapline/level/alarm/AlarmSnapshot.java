package io.strapline.level.alarm;

import io.strapline.level.internal.Check;
import java.time.Instant;

/**
 * An alarm at one moment. Immutable.
 *
 * @param kind what it watches
 * @param state its ISA-18.2 state; goes on while the alarm is suppressed
 * @param heldBack whether it is not judged now, because there is no measurement: the signal is BAD,
 *     held or substituted, or no sample has come yet
 * @param since source time of the last change of {@code state}; the first evaluation when it never
 *     changed; {@link Instant#EPOCH} before that
 * @param occurrences how often it has become active since the start: each change to {@link
 *     AlarmState#UNACKNOWLEDGED} from a state that was not active, suppressed or not
 * @param suppressedBy what keeps it from being announced
 */
public record AlarmSnapshot(
    AlarmKind kind,
    AlarmState state,
    boolean heldBack,
    Instant since,
    long occurrences,
    AlarmSuppression suppressedBy) {

  /** Checks that all parts are there. */
  public AlarmSnapshot {
    Check.present("AlarmSnapshot.kind", kind, "say which alarm it is");
    Check.present("AlarmSnapshot.state", state, "give the state");
    Check.present("AlarmSnapshot.since", since, "give the time of the last change");
    Check.present("AlarmSnapshot.suppressedBy", suppressedBy, "give AlarmSuppression.NONE");
  }

  /** Returns the strongest reason for which it is not announced. */
  public Suppression suppression() {
    return suppressedBy.effective();
  }

  /** Returns whether people are to be called: not acknowledged and not suppressed. */
  public boolean isAnnounced() {
    return !state.isAcknowledged() && suppression() == Suppression.NONE;
  }
}
