package io.strapline.bridge.model;

import java.util.Set;

/**
 * Delivers samples of one or more points, each from its own thread. Faults of the device are caught
 * inside, told to the sink, and retried with bounded back-off; they never end the source.
 */
public interface Source extends AutoCloseable {

  /** Starts delivering; called once. */
  void start(SampleSink sink);

  /**
   * Stops delivering and frees threads and connections; safe to call twice. Returns within a few
   * seconds.
   */
  @Override
  void close();

  /**
   * Returns the tags of the points that live in the source's own time and not in the plant's, such
   * as those of a recorded series that is replayed with the times of its file. The plant's clock
   * does not judge their ages; the source calls {@link SampleSink#elapse} instead. None by default.
   */
  default Set<String> tagsInOwnTime() {
    return Set.of();
  }
}
