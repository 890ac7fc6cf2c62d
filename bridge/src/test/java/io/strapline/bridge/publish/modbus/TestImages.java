package io.strapline.bridge.publish.modbus;

import java.nio.ByteBuffer;

/** Register images for tests of the protocol, free of measuring points. */
final class TestImages {

  private TestImages() {}

  /** Addresses 0 to {@code size} - 1 are mapped; every register holds its address. */
  static RegisterImage counting(int size) {
    ByteBuffer words = ByteBuffer.allocate(2 * size);
    for (int i = 0; i < size; i++) {
      words.putShort((short) i);
    }
    AddressSpace space = new AddressSpace().map(0, size);
    return RegisterImage.of(space, words.array(), new byte[(size + 7) / 8]);
  }

  /** Holds the data of the examples in the protocol's sections 6.1 to 6.4 and of the TCP guide. */
  static RegisterImage ofTheSpecification() {
    AddressSpace space = new AddressSpace().map(0, 1000);
    byte[] words = new byte[2000];
    ByteBuffer.wrap(words)
        .putShort(2 * 4, (short) 5)
        .putShort(2 * 8, (short) 10)
        .putShort(2 * 0x6B, (short) 555)
        .putShort(2 * 0x6D, (short) 100);
    byte[] bits = new byte[125];
    setBits(bits, 0x13, Bytes.of("CD 6B 05"));
    setBits(bits, 0xC4, Bytes.of("AC DB 35"));
    return RegisterImage.of(space, words, bits);
  }

  private static void setBits(byte[] bits, int start, byte[] values) {
    for (int i = 0; i < 8 * values.length; i++) {
      if ((values[i / 8] >> (i % 8) & 1) != 0) {
        bits[(start + i) / 8] |= (byte) (1 << ((start + i) % 8));
      }
    }
  }
}
