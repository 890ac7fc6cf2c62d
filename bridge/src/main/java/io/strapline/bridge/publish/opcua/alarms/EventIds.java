package io.strapline.bridge.publish.opcua.alarms;

import io.strapline.level.alarm.AlarmKind;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The event ids of one condition, with what waited for being acknowledged when each was told: an
 * operator acknowledges what he has seen and nothing that came after. Used by one thread.
 */
final class EventIds {

  /** How many of the last notifications may still be answered. */
  static final int REMEMBERED = 50;

  private static final SecureRandom RANDOM = new SecureRandom();

  private final Map<String, Map<AlarmKind, Long>> told =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Map<AlarmKind, Long>> eldest) {
          return size() > REMEMBERED;
        }
      };

  /** Returns a new id and remembers what waits. */
  String next(Map<AlarmKind, Long> waiting) {
    byte[] bytes = new byte[16];
    RANDOM.nextBytes(bytes);
    String id = HexFormat.of().formatHex(bytes);
    told.put(id, waiting);
    return id;
  }

  /** Returns what waited at an event; null when the id is none of the last. */
  @Nullable Map<AlarmKind, Long> waitingAt(String eventId) {
    return told.get(eventId);
  }
}
