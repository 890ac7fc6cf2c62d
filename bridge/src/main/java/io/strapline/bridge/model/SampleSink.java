package io.strapline.bridge.model;

import io.strapline.level.point.Sample;
import io.strapline.level.reading.Cause;
import java.time.Instant;

/** Where a source puts what it read. Safe for any thread; never throws. */
public interface SampleSink {

  /** Takes a sample of the point {@code tag}. */
  void accept(String tag, Sample sample);

  /** Takes the news that nothing can be read for the point {@code tag} now, and why. */
  void fail(String tag, Cause cause, String detail);

  /**
   * Lets the time of the point {@code tag} pass up to {@code time} without a sample, so that ages,
   * holds and delays run out. Only for a source that brings its own time (see {@link
   * Source#tagsInOwnTime()}); the plant's clock does it for all others. Does nothing by default.
   */
  default void elapse(String tag, Instant time) {}
}
