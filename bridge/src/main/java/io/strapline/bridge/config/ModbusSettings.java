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
 * @param badValue what float registers hold while the value is BAD
 */
public record ModbusSettings(
    boolean enabled,
    String host,
    int port,
    Set<Integer> unitIds,
    WordOrder wordOrder,
    BadValue badValue) {

  /** Copies the set. */
  public ModbusSettings {
    unitIds = Set.copyOf(unitIds);
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
    DCBA
  }

  /** What a float register holds while its value is BAD. */
  public enum BadValue {
    /** A quiet NaN (7FC0 0000): the default. */
    NAN,
    /** The last value; the quality word tells that it is BAD. */
    HOLD
  }
}
