package io.strapline.bridge.testing;

import io.strapline.bridge.model.SampleSink;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.Cause;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** Keeps what sources deliver. Safe for any thread. */
public final class RecordingSink implements SampleSink {

  private final List<Sample> samples = new CopyOnWriteArrayList<>();
  private final List<Cause> failures = new CopyOnWriteArrayList<>();
  private final List<Instant> elapsed = new CopyOnWriteArrayList<>();

  @Override
  public void accept(String tag, Sample sample) {
    samples.add(sample);
  }

  @Override
  public void fail(String tag, Cause cause, String detail) {
    failures.add(cause);
  }

  @Override
  public void elapse(String tag, Instant time) {
    elapsed.add(time);
  }

  /** Returns the samples so far. */
  public List<Sample> samples() {
    return List.copyOf(samples);
  }

  /** Returns the causes told so far. */
  public List<Cause> failures() {
    return List.copyOf(failures);
  }

  /** Returns the times passed without a sample so far. */
  public List<Instant> elapsed() {
    return List.copyOf(elapsed);
  }
}
