package io.strapline.bridge.publish.opcua.alarms;

import java.time.Instant;

/**
 * The last notification of a condition. Immutable.
 *
 * @param eventId 32 hexadecimal digits; never the same twice, over restarts too
 * @param message what happened, for people
 * @param time when it happened by the clock of the point
 * @param received when it was noticed by the clock of the machine
 */
public record Notice(String eventId, String message, Instant time, Instant received) {}
