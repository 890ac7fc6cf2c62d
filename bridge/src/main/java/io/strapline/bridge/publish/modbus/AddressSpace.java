package io.strapline.bridge.publish.modbus;

import java.util.BitSet;

/**
 * Which addresses are mapped, and where values of several registers lie. Immutable once handed out;
 * shared by all images of one register map.
 */
final class AddressSpace {

  /** Number of addresses that a Modbus table has. */
  static final int SIZE = 0x10000;

  private final BitSet mappedRegisters = new BitSet(SIZE);
  private final BitSet insideValue = new BitSet(SIZE);
  private final BitSet mappedBits = new BitSet(SIZE);
  private int end;

  /** Maps {@code count} registers and as many bits from {@code start} on. */
  AddressSpace map(int start, int count) {
    mappedRegisters.set(start, start + count);
    mappedBits.set(start, start + count);
    end = Math.max(end, start + count);
    return this;
  }

  /** Says that one value fills {@code width} registers from {@code start} on. */
  AddressSpace value(int start, int width) {
    insideValue.set(start + 1, start + width);
    return this;
  }

  /** Returns the address behind the last mapped one. */
  int end() {
    return end;
  }

  /** Returns whether the registers are mapped and no value is cut by either end of the range. */
  boolean registersReadable(int start, int count) {
    return covers(mappedRegisters, start, count)
        && !insideValue.get(start)
        && !insideValue.get(start + count);
  }

  /** Returns whether the bits are mapped. */
  boolean bitsReadable(int start, int count) {
    return covers(mappedBits, start, count);
  }

  // Plain int arithmetic: start + count may pass 65535 and must not wrap to 0.
  private static boolean covers(BitSet mapped, int start, int count) {
    return start + count <= SIZE && mapped.nextClearBit(start) >= start + count;
  }
}
