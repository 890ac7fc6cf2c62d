package io.strapline.level.alarm;

import java.util.List;

/**
 * All alarms of one measuring point. Immutable.
 *
 * @param limits at most one per kind; set points in the order low-low, low, high, high-high
 * @param badSignalOnDelaySeconds how long the signal must be BAD, zero or more
 * @param badSignalHandling priority and latching of the bad-signal alarm
 */
public record AlarmSettings(
    List<AlarmLimit> limits, double badSignalOnDelaySeconds, AlarmHandling badSignalHandling) {

  /** No limit; the bad-signal alarm at once. */
  public static final AlarmSettings NONE = new AlarmSettings(List.of(), 0, AlarmHandling.DEFAULT);
}
