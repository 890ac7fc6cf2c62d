package io.strapline.bridge.modbus;

import io.strapline.bridge.config.SerialLine;
import java.io.IOException;

/** An open serial line. Used by one thread; closed by any. */
public interface Wire extends AutoCloseable {

  /** Opens lines. */
  interface Opener {
    /**
     * Opens a line.
     *
     * @throws IOException naming the port when it cannot be opened
     */
    Wire open(SerialLine line) throws IOException;
  }

  /**
   * Waits a tenth of a second at most for the first byte, then takes what is there.
   *
   * @return how many bytes were put into the buffer; 0 when nothing came
   * @throws IOException when the line is gone
   */
  int read(byte[] buffer) throws IOException;

  /**
   * Returns how many bytes can be read at once.
   *
   * @throws IOException when the line is gone
   */
  int available() throws IOException;

  /**
   * Sends all bytes.
   *
   * @throws IOException when the line is gone
   */
  void write(byte[] bytes) throws IOException;

  /** Frees the port; safe to call twice. */
  @Override
  void close();
}
