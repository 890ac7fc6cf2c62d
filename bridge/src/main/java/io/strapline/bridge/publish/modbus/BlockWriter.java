package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.config.ModbusSettings.WordOrder;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Writes the values of one block into registers. Used by one thread. */
final class BlockWriter {

  private static final int TEXT_BYTES = 16;

  private final ByteBuffer words;
  private final int start;
  private final WordOrder order;

  /**
   * Makes a writer.
   *
   * @param words all registers, high byte first
   * @param start address of the block
   * @param order of values wider than one register
   */
  BlockWriter(ByteBuffer words, int start, WordOrder order) {
    this.words = words;
    this.start = start;
    this.order = order;
  }

  /**
   * Writes a number in the type and step of its row; NaN becomes the row's way to say that there is
   * no value.
   *
   * @return whether the number lay outside what the type can hold
   */
  boolean number(RegisterRow row, double value) {
    return number(row, value, order);
  }

  /** Writes a number in an order of its own, for the test constants. */
  boolean number(RegisterRow row, double value, WordOrder own) {
    return switch (row.type()) {
      case FLOAT32 -> float32(row, value, own);
      case FLOAT64 -> float64(row, value, own);
      case UINT16, BITS16, INT16, UINT32, INT32 -> integer(row, value / row.step(), own);
      case TEXT16 -> throw new IllegalArgumentException(row + " holds text");
    };
  }

  private boolean integer(RegisterRow row, double counts, WordOrder own) {
    WireType.Narrowed narrowed = row.type().narrow(counts);
    if (row.type().width() == 1) {
      words.putShort(2 * (start + row.offset()), (short) narrowed.value());
    } else {
      put(row, ByteBuffer.allocate(4).putInt((int) narrowed.value()).array(), own);
    }
    return narrowed.saturated();
  }

  private boolean float32(RegisterRow row, double value, WordOrder own) {
    boolean tooLarge = Math.abs(value) > Float.MAX_VALUE;
    float narrowed = tooLarge ? Math.copySign(Float.MAX_VALUE, (float) value) : (float) value;
    put(row, ByteBuffer.allocate(4).putInt(Float.floatToIntBits(narrowed)).array(), own);
    return tooLarge;
  }

  private boolean float64(RegisterRow row, double value, WordOrder own) {
    put(row, ByteBuffer.allocate(8).putLong(Double.doubleToLongBits(value)).array(), own);
    return false;
  }

  /** Writes up to 16 characters; what US-ASCII has not becomes a question mark. */
  void text(RegisterRow row, String text) {
    byte[] ascii = text.getBytes(StandardCharsets.US_ASCII);
    words.put(2 * (start + row.offset()), Arrays.copyOf(ascii, TEXT_BYTES));
  }

  private void put(RegisterRow row, byte[] value, WordOrder own) {
    words.put(2 * (start + row.offset()), own.arrange(value));
  }
}
