package io.strapline.bridge.model;

import java.io.IOException;

/** Serves the snapshots of the store to clients. */
public interface Publisher extends AutoCloseable {

  /**
   * Binds its address and starts serving.
   *
   * @throws IOException naming the address when it cannot be bound
   */
  void start() throws IOException;

  /**
   * Returns where clients connect, such as {@code opc.tcp://127.0.0.1:4840}; valid after {@link
   * #start}.
   */
  String endpoint();

  /** Stops serving and frees the port; safe to call twice. */
  @Override
  void close();
}
