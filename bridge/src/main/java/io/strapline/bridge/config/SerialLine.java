package io.strapline.bridge.config;

import java.util.OptionalDouble;

/**
 * A serial line for Modbus RTU, 8 data bits. Immutable.
 *
 * @param port name of the port, such as {@code /dev/ttyUSB0} or {@code COM3}
 * @param baud bit/s, 300 to 921600
 * @param parity of each character
 * @param stopBits 1 or 2
 * @param silenceSeconds silence that ends a frame, greater than zero; empty for 3.5 characters
 */
public record SerialLine(
    String port, int baud, Parity parity, int stopBits, OptionalDouble silenceSeconds) {

  /** Parity of a character. */
  public enum Parity {
    /** Even: the default of Modbus. */
    EVEN,
    /** Odd. */
    ODD,
    /** None, with a second stop bit unless configured otherwise. */
    NONE
  }
}
