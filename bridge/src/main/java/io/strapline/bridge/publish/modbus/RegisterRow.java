package io.strapline.bridge.publish.modbus;

/**
 * One line of the register map. Immutable.
 *
 * @param offset of its first register from the start of the block, 0 to 99
 * @param type how the value lies in registers
 * @param name what it is
 * @param unit of the register's number after multiplying by {@code step}; empty for none
 * @param step what one count stands for; 1 for floats and plain numbers
 */
public record RegisterRow(int offset, WireType type, String name, String unit, double step) {

  /** Returns the offset of its last register. */
  public int last() {
    return offset + type.width() - 1;
  }
}
