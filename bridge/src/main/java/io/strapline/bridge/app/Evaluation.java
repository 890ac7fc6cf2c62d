package io.strapline.bridge.app;

import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.Cause;
import java.time.Instant;

/**
 * What turns the samples of one point into snapshots: a {@link MeasuringPoint}, or in tests one
 * that fails. Stateful, one thread at a time.
 */
interface Evaluation {

  /** Takes a sample that arrived at {@code now}. */
  PointSnapshot accept(Sample sample, Instant now);

  /** Lets time pass. */
  PointSnapshot tick(Instant now);

  /** Takes the news that there is no sample, and why. */
  PointSnapshot fail(Cause cause, Instant now);

  /** Acknowledges an alarm. */
  PointSnapshot acknowledge(AlarmKind kind, Instant now);

  /** Resets a latched alarm. */
  PointSnapshot reset(AlarmKind kind, Instant now);

  /** Returns the latest snapshot. */
  PointSnapshot snapshot();

  /** Makes the evaluation of a point that begins at a time. */
  interface Factory {

    /** Returns an evaluation that waits for its first sample. */
    Evaluation begin(PointSettings settings, Instant start);
  }

  /** Returns the evaluation by the library. */
  static Evaluation ofMeasuringPoint(PointSettings settings, Instant start) {
    MeasuringPoint point = MeasuringPoint.of(settings, start);
    return new Evaluation() {
      @Override
      public PointSnapshot accept(Sample sample, Instant now) {
        return point.accept(sample, now);
      }

      @Override
      public PointSnapshot tick(Instant now) {
        return point.tick(now);
      }

      @Override
      public PointSnapshot fail(Cause cause, Instant now) {
        return point.fail(cause, now);
      }

      @Override
      public PointSnapshot acknowledge(AlarmKind kind, Instant now) {
        return point.acknowledge(kind, now);
      }

      @Override
      public PointSnapshot reset(AlarmKind kind, Instant now) {
        return point.reset(kind, now);
      }

      @Override
      public PointSnapshot snapshot() {
        return point.snapshot();
      }
    };
  }
}
