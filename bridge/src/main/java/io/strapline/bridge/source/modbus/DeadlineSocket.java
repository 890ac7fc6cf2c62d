package io.strapline.bridge.source.modbus;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.util.concurrent.TimeUnit;

/**
 * A socket whose reads end at a deadline, however slowly bytes arrive: the protocol library only
 * knows a time-out for each byte. Used by one thread, but may be closed by any.
 */
final class DeadlineSocket extends Socket {

  private long deadline;
  private int received;

  /** Sets how long all reads from now on may take together, and counts their bytes from 0. */
  void allow(long nanos) {
    deadline = System.nanoTime() + nanos;
    received = 0;
  }

  /** Returns how many bytes have arrived since {@link #allow}. */
  int received() {
    return received;
  }

  /** Does nothing: the deadline counts, whatever the library sets. */
  @Override
  public void setSoTimeout(int millis) {}

  @Override
  public InputStream getInputStream() throws IOException {
    return new FilterInputStream(super.getInputStream()) {
      @Override
      public int read() throws IOException {
        limit();
        return counted(in.read(), 1);
      }

      @Override
      public int read(byte[] bytes, int from, int length) throws IOException {
        limit();
        int got = in.read(bytes, from, length);
        return counted(got, got);
      }
    };
  }

  private int counted(int result, int bytes) {
    received += result < 0 ? 0 : bytes;
    return result;
  }

  private void limit() throws SocketException, SocketTimeoutException {
    long millis = TimeUnit.NANOSECONDS.toMillis(deadline - System.nanoTime());
    if (millis <= 0) {
      throw new SocketTimeoutException("no complete answer in time");
    }
    super.setSoTimeout((int) Math.min(millis, Integer.MAX_VALUE));
  }
}
