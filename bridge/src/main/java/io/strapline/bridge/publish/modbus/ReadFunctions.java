package io.strapline.bridge.publish.modbus;

import java.nio.ByteBuffer;
import java.util.function.Supplier;

/**
 * Functions 01 to 04. Order of checks: quantity (03), address (02). The protocol's figure 9 has the
 * address first, its figures for each function the quantity; this server follows the latter.
 */
final class ReadFunctions {

  private static final int MAX_BITS = 2000;
  private static final int MAX_REGISTERS = 125;

  private final Supplier<RegisterImage> image;

  /** Takes what gives the image to read; asked once for each request. */
  ReadFunctions(Supplier<RegisterImage> image) {
    this.image = image;
  }

  void bits(ByteBuffer body, ByteBuffer out) throws Refusal {
    Refusal.unlessBuilt(body.remaining() == 4);
    int address = body.getShort() & 0xFFFF;
    int quantity = body.getShort() & 0xFFFF;
    Refusal.unlessBuilt(quantity >= 1 && quantity <= MAX_BITS);
    RegisterImage now = image.get();
    Refusal.unlessThere(now.bitsReadable(address, quantity));
    out.put((byte) ((quantity + 7) / 8));
    now.putBits(address, quantity, out);
  }

  void registers(ByteBuffer body, ByteBuffer out) throws Refusal {
    Refusal.unlessBuilt(body.remaining() == 4);
    int address = body.getShort() & 0xFFFF;
    int quantity = body.getShort() & 0xFFFF;
    Refusal.unlessBuilt(isQuantity(quantity));
    RegisterImage now = image.get();
    Refusal.unlessThere(now.registersReadable(address, quantity));
    put(now, address, quantity, out);
  }

  static boolean isQuantity(int registers) {
    return registers >= 1 && registers <= MAX_REGISTERS;
  }

  /** Returns whether registers can be read now. */
  boolean isReadable(int address, int quantity) {
    return image.get().registersReadable(address, quantity);
  }

  /** Writes byte count and registers of now; {@link #isReadable} has been asked. */
  void put(int address, int quantity, ByteBuffer out) {
    put(image.get(), address, quantity, out);
  }

  private static void put(RegisterImage now, int address, int quantity, ByteBuffer out) {
    out.put((byte) (2 * quantity));
    now.putRegisters(address, quantity, out);
  }
}
