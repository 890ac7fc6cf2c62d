package io.strapline.bridge.publish.modbus;

import java.nio.ByteBuffer;
import java.util.Arrays;

/**
 * Functions 05, 06, 0F, 10, 16 and 17. Order of checks: quantity, byte count, length and coil value
 * (03), every address (02), then the whole command at once: all of it or nothing.
 */
final class WriteFunctions {

  private static final int MAX_COILS = 1968;
  private static final int MAX_REGISTERS = 123;
  private static final int MAX_REGISTERS_BESIDE_READ = 121;
  private static final int ON = 0xFF00;

  private final Writable commands;
  private final ReadFunctions reads;

  WriteFunctions(Writable commands, ReadFunctions reads) {
    this.commands = commands;
    this.reads = reads;
  }

  void singleCoil(ByteBuffer body, ByteBuffer out, Peer peer) throws Refusal, GoneException {
    Refusal.unlessBuilt(body.remaining() == 4);
    int address = body.getShort() & 0xFFFF;
    int value = body.getShort() & 0xFFFF;
    Refusal.unlessBuilt(value == ON || value == 0);
    int[] values = {value == ON ? 1 : 0};
    commands.execute(new Write(Function.WRITE_SINGLE_COIL, address, values), peer);
    out.putShort((short) address).putShort((short) value);
  }

  void singleRegister(ByteBuffer body, ByteBuffer out, Peer peer) throws Refusal, GoneException {
    Refusal.unlessBuilt(body.remaining() == 4);
    int address = body.getShort() & 0xFFFF;
    int value = body.getShort() & 0xFFFF;
    int[] values = {value};
    commands.execute(new Write(Function.WRITE_SINGLE_REGISTER, address, values), peer);
    out.putShort((short) address).putShort((short) value);
  }

  void coils(ByteBuffer body, ByteBuffer out, Peer peer) throws Refusal, GoneException {
    int address = body.getShort() & 0xFFFF;
    int quantity = body.getShort() & 0xFFFF;
    int bytes = body.get() & 0xFF;
    Refusal.unlessBuilt(quantity >= 1 && quantity <= MAX_COILS);
    Refusal.unlessBuilt(bytes == (quantity + 7) / 8 && body.remaining() == bytes);
    int[] values = new int[quantity];
    int start = body.position();
    Arrays.setAll(values, i -> body.get(start + i / 8) >> (i % 8) & 1);
    commands.execute(new Write(Function.WRITE_MULTIPLE_COILS, address, values), peer);
    out.putShort((short) address).putShort((short) quantity);
  }

  void registers(ByteBuffer body, ByteBuffer out, Peer peer) throws Refusal, GoneException {
    int address = body.getShort() & 0xFFFF;
    int quantity = body.getShort() & 0xFFFF;
    int bytes = body.get() & 0xFF;
    Refusal.unlessBuilt(quantity >= 1 && quantity <= MAX_REGISTERS);
    Refusal.unlessBuilt(bytes == 2 * quantity && body.remaining() == bytes);
    int[] values = words(body, quantity);
    commands.execute(new Write(Function.WRITE_MULTIPLE_REGISTERS, address, values), peer);
    out.putShort((short) address).putShort((short) quantity);
  }

  void mask(ByteBuffer body, ByteBuffer out, Peer peer) throws Refusal, GoneException {
    Refusal.unlessBuilt(body.remaining() == 6);
    int address = body.getShort() & 0xFFFF;
    int and = body.getShort() & 0xFFFF;
    int or = body.getShort() & 0xFFFF;
    int[] values = {masked(commands.held(address), and, or)};
    commands.execute(new Write(Function.MASK_WRITE_REGISTER, address, values), peer);
    out.putShort((short) address).putShort((short) and).putShort((short) or);
  }

  /** Returns the register that section 6.16 makes of what it held. */
  static int masked(int held, int and, int or) {
    return ((held & and) | (or & ~and)) & 0xFFFF;
  }

  void readWrite(ByteBuffer body, ByteBuffer out, Peer peer) throws Refusal, GoneException {
    int readAddress = body.getShort() & 0xFFFF;
    int readQuantity = body.getShort() & 0xFFFF;
    int address = body.getShort() & 0xFFFF;
    int quantity = body.getShort() & 0xFFFF;
    int bytes = body.get() & 0xFF;
    Refusal.unlessBuilt(ReadFunctions.isQuantity(readQuantity));
    Refusal.unlessBuilt(quantity >= 1 && quantity <= MAX_REGISTERS_BESIDE_READ);
    Refusal.unlessBuilt(bytes == 2 * quantity && body.remaining() == bytes);
    Refusal.unlessThere(reads.isReadable(readAddress, readQuantity));
    int[] values = words(body, quantity);
    commands.execute(new Write(Function.READ_WRITE_REGISTERS, address, values), peer);
    reads.put(readAddress, readQuantity, out);
  }

  private static int[] words(ByteBuffer body, int quantity) {
    int[] words = new int[quantity];
    Arrays.setAll(words, i -> body.getShort() & 0xFFFF);
    return words;
  }
}
