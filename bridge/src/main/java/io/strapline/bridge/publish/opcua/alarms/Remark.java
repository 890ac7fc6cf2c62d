package io.strapline.bridge.publish.opcua.alarms;

import java.time.Instant;

/**
 * The last comment on a condition. Immutable.
 *
 * @param text what was said, may be empty
 * @param by name of who said it; empty when nobody has yet
 * @param time when
 */
public record Remark(String text, String by, Instant time) {

  /** Nothing has been said. */
  static Remark none(Instant time) {
    return new Remark("", "", time);
  }
}
