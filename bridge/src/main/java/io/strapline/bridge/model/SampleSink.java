package io.strapline.bridge.model;

import io.strapline.level.point.Sample;
import io.strapline.level.reading.Cause;

/** Where a source puts what it read. Safe for any thread; never throws. */
public interface SampleSink {

  /** Takes a sample of the point {@code tag}. */
  void accept(String tag, Sample sample);

  /** Takes the news that nothing can be read for the point {@code tag} now, and why. */
  void fail(String tag, Cause cause, String detail);
}
