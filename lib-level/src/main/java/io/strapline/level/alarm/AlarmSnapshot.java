package io.strapline.level.alarm;

import io.strapline.level.internal.Check;
import java.time.Instant;

/**
 * An alarm at one moment. Immutable.
 *
 * @param kind what it watches
 * @param state its ISA-18.2 state
 * @param heldBack whether it is not judged now, because there is no measurement: the signal is BAD,
 *     held or substituted, or no sample has come yet
 * @param since source time of the last change of {@code state}; the first evaluation when it never
 *     changed; {@link Instant#EPOCH} before that
 * @param occurrences how often it was announced since the start: each change to {@link
 *     AlarmState#UNACKNOWLEDGED} from a state that was not active
 */
public record AlarmSnapshot(
    AlarmKind kind, AlarmState state, boolean heldBack, Instant since, long occurrences) {

  /** Checks that all parts are there. */
  public AlarmSnapshot {
    Check.present("AlarmSnapshot.kind", kind, "say which alarm it is");
    Check.present("AlarmSnapshot.state", state, "give the state");
    Check.present("AlarmSnapshot.since", since, "give the time of the last change");
  }
}
