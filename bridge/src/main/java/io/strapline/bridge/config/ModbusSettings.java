package io.strapline.bridge.config;

import java.util.Set;

/**
 * The Modbus TCP server. Immutable.
 *
 * @param enabled whether it runs at all
 * @param host address to listen on
 * @param port to listen on, 0 for a free one
 * @param unitIds unit identifiers that are answered; 255 and 0 are always
 * @param wordOrder order of the registers and bytes of a value wider than one register
 * @param badValue what value registers hold while the value is BAD
 * @param access who may read and who may write
 * @param lines how it is reached
 */
public record ModbusSettings(
    boolean enabled,
    String host,
    int port,
    Set<Integer> unitIds,
    WordOrder wordOrder,
    BadValue badValue,
    ModbusAccess access,
    ModbusLines lines) {

  /** Copies the set. */
  public ModbusSettings {
    unitIds = Set.copyOf(unitIds);
  }

  /** A TCP server that everyone may read who reaches it, and nobody may write. */
  public ModbusSettings(
      boolean enabled,
      String host,
      int port,
      Set<Integer> unitIds,
      WordOrder wordOrder,
      BadValue badValue) {
    this(
        enabled, host, port, unitIds, wordOrder, badValue, ModbusAccess.READ_ONLY, ModbusLines.TCP);
  }

  /** Returns the same server with another access. */
  public ModbusSettings with(ModbusAccess other) {
    return new ModbusSettings(enabled, host, port, unitIds, wordOrder, badValue, other, lines);
  }

  /** Returns the same server over other lines. */
  public ModbusSettings over(ModbusLines other) {
    return new ModbusSettings(enabled, host, port, unitIds, wordOrder, badValue, access, other);
  }

  /** Order of the bytes A (most significant) to D of a 32-bit value in two registers. */
  public enum WordOrder {
    /** High word first, high byte first: the default. */
    ABCD,
    /** Low word first, high byte first. */
    CDAB,
    /** High word first, low byte first. */
    BADC,
    /** Low word first, low byte first. */
    DCBA;

    private boolean lowWordFirst() {
      return this == CDAB || this == DCBA;
    }

    private boolean lowByteFirst() {
      return this == BADC || this == DCBA;
    }

    /**
     * Returns the bytes of one value, most significant first, in the order of the wire; or the
     * other way round, since every order is its own inverse.
     *
     * @param bytes 4 or 8 bytes of a value in two or four registers; not changed
     */
    public byte[] arrange(byte[] bytes) {
      byte[] arranged = new byte[bytes.length];
      for (int i = 0; i < bytes.length; i++) {
        int word = lowWordFirst() ? bytes.length / 2 - 1 - i / 2 : i / 2;
        int low = lowByteFirst() ? 1 - i % 2 : i % 2;
        arranged[2 * word + low] = bytes[i];
      }
      return arranged;
    }
  }

  /** What a value register holds while its value is BAD. */
  public enum BadValue {
    /** A quiet NaN (7FC0 0000), in integers the most negative number: the default. */
    NAN,
    /** The last good value, if there was one; the quality word tells that it is BAD. */
    HOLD
  }
}
