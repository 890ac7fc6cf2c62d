package io.strapline.bridge.source.modbus;

import java.io.IOException;

/** Bytes to and from a line that carries serial frames. Used by one thread; closed by any. */
interface RtuChannel extends AutoCloseable {

  /** Sends a whole frame. */
  void send(byte[] frame) throws IOException;

  /**
   * Waits a tenth of a second at most for bytes.
   *
   * @return how many were put into the buffer; 0 when none came
   * @throws IOException when the line is gone
   */
  int receive(byte[] buffer) throws IOException;

  /** Drops what can be read at once. */
  void drop() throws IOException;

  /** Frees the line; safe to call twice. */
  @Override
  void close();
}
