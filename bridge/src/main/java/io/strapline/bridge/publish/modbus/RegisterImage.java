package io.strapline.bridge.publish.modbus;

import java.nio.ByteBuffer;

/**
 * All registers and bits of the server at one moment. Immutable: a request that reads the reference
 * once can never mix two moments.
 */
final class RegisterImage {

  private final AddressSpace space;
  private final byte[] words;
  private final byte[] bits;

  private RegisterImage(AddressSpace space, byte[] words, byte[] bits) {
    this.space = space;
    this.words = words;
    this.bits = bits;
  }

  /**
   * Returns an image.
   *
   * @param space what is mapped
   * @param words registers from address 0 on, high byte first; handed over, never changed again
   * @param bits bits from address 0 on, eight to a byte, lowest first; handed over as well
   */
  static RegisterImage of(AddressSpace space, byte[] words, byte[] bits) {
    return new RegisterImage(space, words, bits);
  }

  /** Returns whether a read of these registers is answered with data. */
  boolean registersReadable(int start, int count) {
    return space.registersReadable(start, count);
  }

  /** Returns whether a read of these bits is answered with data. */
  boolean bitsReadable(int start, int count) {
    return space.bitsReadable(start, count);
  }

  /** Copies readable registers, high byte first. */
  void putRegisters(int start, int count, ByteBuffer to) {
    to.put(words, 2 * start, 2 * count);
  }

  /** Copies readable bits, eight to a byte, lowest first, the last byte filled with zeros. */
  void putBits(int start, int count, ByteBuffer to) {
    for (int first = 0; first < count; first += 8) {
      to.put(packed(start + first, Math.min(8, count - first)));
    }
  }

  /** Returns one register, 0 to 65535. */
  int register(int address) {
    return (words[2 * address] & 0xFF) << 8 | (words[2 * address + 1] & 0xFF);
  }

  /** Returns one bit. */
  boolean bit(int address) {
    return (bits[address >> 3] >> (address & 7) & 1) != 0;
  }

  private byte packed(int start, int count) {
    int value = 0;
    for (int i = 0; i < count; i++) {
      value |= bit(start + i) ? 1 << i : 0;
    }
    return (byte) value;
  }
}
