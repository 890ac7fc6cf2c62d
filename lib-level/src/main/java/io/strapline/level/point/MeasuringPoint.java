package io.strapline.level.point;

import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.reading.Cause;
import java.time.Instant;

/**
 * One measuring point: a sample in, a snapshot out. Stateful, one thread at a time; the snapshots
 * are immutable. Calls must come in time order; one that goes back in time is marked and changes
 * nothing else.
 */
public final class MeasuringPoint {

  private final PointSettings settings;

  private MeasuringPoint(PointSettings settings) {
    this.settings = settings;
  }

  /** Returns a point that waits for its first sample. */
  public static MeasuringPoint of(PointSettings settings, Instant start) {
    return new MeasuringPoint(settings);
  }

  /** Returns the settings. */
  public PointSettings settings() {
    return settings;
  }

  /** Takes a sample; {@code now} is when it arrived. */
  public PointSnapshot accept(Sample sample, Instant now) {
    throw new UnsupportedOperationException("later in this commit series");
  }

  /** Takes a sample that arrived when it was measured. */
  public PointSnapshot accept(Sample sample) {
    return accept(sample, sample.time());
  }

  /** Lets time pass without a sample: holds, delays and ages run on. */
  public PointSnapshot tick(Instant now) {
    throw new UnsupportedOperationException("later in this commit series");
  }

  /**
   * Marks the point BAD with this cause (such as {@link Cause#NO_COMMUNICATION} or {@link
   * Cause#PROCESSING_ERROR}) until the next sample.
   */
  public PointSnapshot fail(Cause cause, Instant now) {
    throw new UnsupportedOperationException("later in this commit series");
  }

  /** Acknowledges an alarm; nothing happens when there is nothing to acknowledge. */
  public PointSnapshot acknowledge(AlarmKind kind, Instant now) {
    throw new UnsupportedOperationException("later in this commit series");
  }

  /** Resets a latched alarm; nothing happens when there is nothing to reset. */
  public PointSnapshot reset(AlarmKind kind, Instant now) {
    throw new UnsupportedOperationException("later in this commit series");
  }

  /** Returns the latest snapshot. */
  public PointSnapshot snapshot() {
    throw new UnsupportedOperationException("later in this commit series");
  }
}
