package io.strapline.level.alarm;

import io.strapline.level.reading.Reading;
import java.time.Instant;
import java.util.List;

/**
 * The alarms of one measuring point: its limits and the bad-signal alarm, which holds the limits
 * back while it is active. Nothing is judged before the first reading that is not BAD; then on
 * state, not on change.
 */
public final class AlarmGroup {

  private final AlarmSettings settings;

  private AlarmGroup(AlarmSettings settings) {
    this.settings = settings;
  }

  /** Returns alarms that have seen nothing yet. */
  public static AlarmGroup of(AlarmSettings settings) {
    return new AlarmGroup(settings);
  }

  /**
   * Judges the next level, in time order, and returns all alarms in the order of {@link AlarmKind}.
   */
  public List<AlarmSnapshot> judge(Reading level) {
    throw new UnsupportedOperationException(settings.toString());
  }

  /** Acknowledges one alarm; returns false when there is nothing to acknowledge. */
  public boolean acknowledge(AlarmKind kind, Instant time) {
    throw new UnsupportedOperationException(settings.toString());
  }

  /** Resets one latched alarm; returns false when there is nothing to reset. */
  public boolean reset(AlarmKind kind, Instant time) {
    throw new UnsupportedOperationException(settings.toString());
  }

  /** Returns all alarms as they stand, in the order of {@link AlarmKind}. */
  public List<AlarmSnapshot> snapshot() {
    throw new UnsupportedOperationException(settings.toString());
  }
}
