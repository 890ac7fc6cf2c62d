package io.strapline.bridge.publish.modbus;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/**
 * Plain registers and coils that can be written, so that the protocol's own examples can be run.
 */
final class TestMemory implements Writable, Supplier<RegisterImage> {

  private final byte[] words;
  private final byte[] bits;
  private final int size;

  /** This register, and this coil, can be read and not written. */
  private final int readOnly;

  private final List<Write> writes = new ArrayList<>();

  TestMemory(int size, int readOnly) {
    this.size = size;
    this.readOnly = readOnly;
    words = new byte[2 * size];
    bits = new byte[(size + 7) / 8];
  }

  void set(int address, int value) {
    words[2 * address] = (byte) (value >> 8);
    words[2 * address + 1] = (byte) value;
  }

  int register(int address) {
    return get().register(address);
  }

  boolean coil(int address) {
    return get().bit(address);
  }

  /** Returns the commands that were executed. */
  List<Write> writes() {
    return writes;
  }

  @Override
  public RegisterImage get() {
    return RegisterImage.of(new AddressSpace().map(0, size), words.clone(), bits.clone());
  }

  @Override
  public int held(int address) {
    return address < size ? register(address) : 0;
  }

  @Override
  public void execute(Write write, Peer peer) throws Refusal, GoneException {
    int end = write.start() + write.count();
    Refusal.unlessThere(end <= size && (readOnly < write.start() || readOnly >= end));
    if (!peer.isThere()) {
      throw new GoneException();
    }
    writes.add(write);
    for (int i = 0; i < write.count(); i++) {
      store(write, write.start() + i, write.value(i));
    }
  }

  private void store(Write write, int address, int value) {
    if (!write.toCoils()) {
      set(address, value);
    } else {
      int mask = 1 << (address % 8);
      bits[address / 8] =
          (byte) (value != 0 ? bits[address / 8] | mask : bits[address / 8] & ~mask);
    }
  }
}
