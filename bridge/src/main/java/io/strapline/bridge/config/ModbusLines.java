package io.strapline.bridge.config;

import java.util.Optional;

/**
 * How the Modbus server is reached. Immutable.
 *
 * @param framing of what goes over TCP
 * @param serial a serial line that is served besides; empty for none
 */
public record ModbusLines(Framing framing, Optional<Served> serial) {

  /** Modbus TCP alone. */
  public static final ModbusLines TCP = new ModbusLines(Framing.TCP, Optional.empty());

  /** How frames lie in a TCP stream. */
  public enum Framing {
    /** Modbus TCP. */
    TCP,
    /** Serial frames with their checksum, as some gateways send them. */
    RTU
  }

  /**
   * A serial line on which the plant is one unit.
   *
   * @param line the line
   * @param unitId address of the plant, 1 to 247
   * @param writes whether the master of the line may write what is writable
   */
  public record Served(SerialLine line, int unitId, boolean writes) {}
}
