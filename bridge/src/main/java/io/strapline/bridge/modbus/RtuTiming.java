package io.strapline.bridge.modbus;

import io.strapline.bridge.config.SerialLine;

/**
 * Silences of Modbus RTU (Modbus over Serial Line V1.02, section 2.5.1.1), in nanoseconds.
 * Immutable.
 *
 * @param endNanos a frame ends after this silence: 3.5 characters, 1.75 ms above 19200 bit/s
 * @param tornNanos a frame that was silent longer inside is torn: 1.5 characters, 0.75 ms above
 *     19200 bit/s
 */
public record RtuTiming(long endNanos, long tornNanos) {

  /** A character has 11 bits: start, 8 data, parity or a second stop, stop. */
  private static final double CHARACTER_BITS = 11;

  private static final int FIXED_ABOVE_BAUD = 19_200;
  private static final long FIXED_END_NANOS = 1_750_000;
  private static final long FIXED_TORN_NANOS = 750_000;

  /** Returns the timing of a line; a silence of its own stands for both. */
  public static RtuTiming of(SerialLine line) {
    if (line.silenceSeconds().isPresent()) {
      long own = (long) (line.silenceSeconds().getAsDouble() * 1e9);
      return new RtuTiming(own, own);
    }
    if (line.baud() > FIXED_ABOVE_BAUD) {
      return new RtuTiming(FIXED_END_NANOS, FIXED_TORN_NANOS);
    }
    double character = CHARACTER_BITS / line.baud() * 1e9;
    return new RtuTiming((long) Math.ceil(3.5 * character), (long) Math.ceil(1.5 * character));
  }

  /** Returns how long so many bytes take on the line. */
  public static long nanos(SerialLine line, int bytes) {
    return (long) (bytes * CHARACTER_BITS / line.baud() * 1e9);
  }
}
