package io.strapline.bridge.modbus;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.concurrent.locks.LockSupport;

/**
 * Reads what lies between two silences of a serial line. Used by one thread.
 *
 * <p>A silence is only counted while nothing was there each time that was looked, so a delay of
 * this thread never tears a frame.
 */
public final class BurstReader {

  private static final int LONGEST = 2048;
  private static final long LOOK_NANOS = 100_000;
  private static final byte[] NOTHING = {};

  private final RtuTiming timing;
  private final byte[] chunk = new byte[256];
  private final ByteBuffer burst = ByteBuffer.allocate(LONGEST);
  private boolean spoiled;

  /** Takes the silences of the line. */
  public BurstReader(RtuTiming timing) {
    this.timing = timing;
  }

  /**
   * Waits a tenth of a second at most for the first byte, then reads up to the next silence.
   *
   * @return the bytes; none when nothing came, when the frame was torn inside, or when it was
   *     longer than any sequence of frames can be
   * @throws IOException when the line is gone
   */
  public byte[] next(Wire wire) throws IOException {
    burst.clear();
    spoiled = false;
    int got = wire.read(chunk);
    if (got == 0) {
      return NOTHING;
    }
    take(got);
    readToSilence(wire);
    return spoiled ? NOTHING : java.util.Arrays.copyOf(burst.array(), burst.position());
  }

  private void readToSilence(Wire wire) throws IOException {
    long heard = System.nanoTime();
    long silentUntil = heard;
    while (silentUntil - heard < timing.endNanos()) {
      long looked = System.nanoTime();
      if (wire.available() > 0) {
        spoiled |= silentUntil - heard > timing.tornNanos();
        take(wire.read(chunk));
        heard = System.nanoTime();
        silentUntil = heard;
      } else {
        silentUntil = looked;
        LockSupport.parkNanos(LOOK_NANOS);
      }
    }
  }

  private void take(int got) {
    if (got > burst.remaining()) {
      spoiled = true;
      burst.clear();
    } else {
      burst.put(chunk, 0, got);
    }
  }
}
