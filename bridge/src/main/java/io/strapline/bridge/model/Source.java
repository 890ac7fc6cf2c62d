package io.strapline.bridge.model;

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
}
