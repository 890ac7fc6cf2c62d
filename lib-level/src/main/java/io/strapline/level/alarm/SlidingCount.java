package io.strapline.level.alarm;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;

/**
 * Counts events of the last stretch of time: one at t counts while {@code 0 <= now - t < window}.
 * Keeps at most {@value #MOST} events; more than that are dropped, oldest first, and the count
 * stays at that number. Stateful, one thread at a time.
 */
final class SlidingCount {

  static final int MOST = 100_000;

  private final Duration window;
  private final ArrayDeque<Instant> events = new ArrayDeque<>();

  SlidingCount(Duration window) {
    this.window = window;
  }

  void add(Instant time) {
    events.addLast(time);
    if (events.size() > MOST) {
      events.removeFirst();
    }
  }

  /** Returns when the oldest event leaves the window; far in the future without one. */
  Instant nextExpiry() {
    Instant oldest = events.peekFirst();
    return oldest == null ? Instant.MAX : oldest.plus(window);
  }

  /** Drops what has left the window. */
  void advance(Instant now) {
    while (!nextExpiry().isAfter(now)) {
      events.removeFirst();
    }
  }

  int count() {
    return events.size();
  }
}
