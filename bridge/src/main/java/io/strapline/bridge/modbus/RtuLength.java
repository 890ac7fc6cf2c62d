package io.strapline.bridge.modbus;

import java.nio.ByteBuffer;

/**
 * How long an RTU frame is, address and checksum included, as told by its own first bytes (Modbus
 * Application Protocol V1.1b3, section 6). Stateless.
 */
public final class RtuLength {

  /** Longest frame. */
  public static final int MAX = 256;

  /** More bytes are needed to tell. */
  public static final int MORE = 0;

  /** The function is not known, so the length cannot be told. */
  public static final int UNKNOWN = -1;

  private RtuLength() {}

  /** Returns the length of the request that begins at {@code start}. */
  public static int ofRequest(ByteBuffer bytes, int start) {
    if (bytes.limit() - start < 2) {
      return MORE;
    }
    return switch (bytes.get(start + 1) & 0xFF) {
      case 0x01, 0x02, 0x03, 0x04, 0x05, 0x06, 0x08 -> 8;
      case 0x07, 0x0B, 0x0C, 0x11 -> 4;
      case 0x0F, 0x10 -> counted(bytes, start, 6);
      case 0x14, 0x15 -> counted(bytes, start, 2);
      case 0x16 -> 10;
      case 0x17 -> counted(bytes, start, 10);
      case 0x18 -> 6;
      case 0x2B -> 7;
      default -> UNKNOWN;
    };
  }

  /** Returns the length of the response that begins at {@code start}. */
  public static int ofResponse(ByteBuffer bytes, int start) {
    if (bytes.limit() - start < 2) {
      return MORE;
    }
    int function = bytes.get(start + 1) & 0xFF;
    if (function > 0x80) {
      return 5;
    }
    return switch (function) {
      case 0x01, 0x02, 0x03, 0x04, 0x0C, 0x11, 0x14, 0x15, 0x17 -> counted(bytes, start, 2);
      case 0x05, 0x06, 0x08, 0x0B, 0x0F, 0x10 -> 8;
      case 0x07 -> 5;
      case 0x16 -> 10;
      default -> UNKNOWN;
    };
  }

  /** The byte at this index counts those behind it; the checksum follows. */
  private static int counted(ByteBuffer bytes, int start, int index) {
    return bytes.limit() - start <= index
        ? MORE
        : index + 1 + (bytes.get(start + index) & 0xFF) + 2;
  }
}
