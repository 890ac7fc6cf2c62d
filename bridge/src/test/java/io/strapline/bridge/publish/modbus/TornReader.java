package io.strapline.bridge.publish.modbus;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.HashSet;
import java.util.Set;

/**
 * A program that reads block 1 again and again and counts answers that mix two images. Arguments:
 * port, number of reads. Prints {@code READS TORN GENERATIONS}.
 */
final class TornReader {

  private static final int[] GENERATIONS = {0, 24, 25, 49, 50, 74, 75, 99};

  private TornReader() {}

  public static void main(String[] args) throws IOException {
    int reads = Integer.parseInt(args[1]);
    int torn = 0;
    Set<Integer> generations = new HashSet<>();
    try (RawClient client = new RawClient(Integer.parseInt(args[0]))) {
      for (int i = 0; i < reads; i++) {
        int[] block = client.registers(100, 100);
        torn += isTorn(block) ? 1 : 0;
        generations.add(block[0]);
      }
    }
    System.out.println(reads + " " + torn + " " + generations.size());
  }

  // The level stands in three types; all must be the same number, under one generation.
  private static boolean isTorn(int[] block) {
    for (int edge : GENERATIONS) {
      if (block[edge] != block[0]) {
        return true;
      }
    }
    double level = bytes(block, 78, 4).getDouble();
    return bytes(block, 34, 2).getFloat() != (float) level
        || bytes(block, 52, 2).getInt() != Math.rint(level / 0.001);
  }

  private static ByteBuffer bytes(int[] block, int offset, int words) {
    ByteBuffer bytes = ByteBuffer.allocate(2 * words);
    for (int i = 0; i < words; i++) {
      bytes.putShort(2 * i, (short) block[offset + i]);
    }
    return bytes;
  }
}
