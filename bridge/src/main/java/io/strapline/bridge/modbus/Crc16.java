package io.strapline.bridge.modbus;

import java.nio.ByteBuffer;

/**
 * The checksum of Modbus RTU (Modbus over Serial Line V1.02, section 6.2.2): polynomial A001 hex,
 * start value FFFF, sent low byte first. Stateless.
 */
public final class Crc16 {

  private static final int POLYNOMIAL = 0xA001;

  private Crc16() {}

  /** Returns the checksum of {@code count} bytes from index {@code start} on. */
  public static int of(ByteBuffer bytes, int start, int count) {
    int crc = 0xFFFF;
    for (int i = start; i < start + count; i++) {
      crc ^= bytes.get(i) & 0xFF;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 1) != 0 ? (crc >> 1) ^ POLYNOMIAL : crc >> 1;
      }
    }
    return crc;
  }

  /** Returns whether {@code count} bytes from index {@code start} on end with their checksum. */
  public static boolean isRight(ByteBuffer bytes, int start, int count) {
    if (count < 3) {
      return false;
    }
    int crc = of(bytes, start, count - 2);
    return (bytes.get(start + count - 2) & 0xFF) == (crc & 0xFF)
        && (bytes.get(start + count - 1) & 0xFF) == crc >> 8;
  }

  /** Puts the checksum of what lies between {@code start} and the position behind it. */
  public static void append(ByteBuffer bytes, int start) {
    int crc = of(bytes, start, bytes.position() - start);
    bytes.put((byte) crc).put((byte) (crc >> 8));
  }
}
