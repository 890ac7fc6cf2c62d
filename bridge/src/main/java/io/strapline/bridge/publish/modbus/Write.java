package io.strapline.bridge.publish.modbus;

import java.util.HexFormat;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** One command to write neighbouring coils or registers. Never changed after it is made. */
final class Write {

  private final Function function;
  private final int start;
  private final int[] values;

  /**
   * Takes a command that is built rightly.
   *
   * @param function that it came by
   * @param start address of the first value
   * @param values registers, or 1 and 0 for coils; handed over
   */
  Write(Function function, int start, int[] values) {
    this.function = function;
    this.start = start;
    this.values = values;
  }

  Function function() {
    return function;
  }

  boolean toCoils() {
    return function == Function.WRITE_SINGLE_COIL || function == Function.WRITE_MULTIPLE_COILS;
  }

  int start() {
    return start;
  }

  int count() {
    return values.length;
  }

  int value(int index) {
    return values[index];
  }

  /** Returns function, range and values in one line, such as for a log. */
  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "function %02X, %s %d to %d, value %s",
        function.code(),
        toCoils() ? "coils" : "registers",
        start,
        start + values.length - 1,
        IntStream.of(values)
            .limit(16)
            .mapToObj(value -> HexFormat.of().withUpperCase().toHexDigits((short) value))
            .collect(Collectors.joining(" ")));
  }
}
