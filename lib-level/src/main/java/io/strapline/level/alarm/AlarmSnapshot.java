package io.strapline.level.alarm;

import java.time.Instant;

/**
 * An alarm at one moment. Immutable.
 *
 * @param kind what it watches
 * @param state its ISA-18.2 state
 * @param heldBack whether it is not judged now, because the signal is BAD or nothing good has come
 *     yet
 * @param since source time of the last change of {@code state}; the first evaluation when it never
 *     changed
 * @param occurrences how often it became active since the start
 */
public record AlarmSnapshot(
    AlarmKind kind, AlarmState state, boolean heldBack, Instant since, long occurrences) {}
