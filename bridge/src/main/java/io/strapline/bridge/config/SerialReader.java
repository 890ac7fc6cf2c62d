package io.strapline.bridge.config;

import io.strapline.bridge.config.SerialLine.Parity;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads serial lines. Stateless. */
final class SerialReader {

  static final int LARGEST_SERIAL_UNIT = 247;
  private static final int LOWEST_BAUD = 300;
  private static final int HIGHEST_BAUD = 921_600;
  private static final int USUAL_BAUD = 19_200;

  private SerialReader() {}

  /** Reads the line that a section describes. */
  static Optional<SerialLine> line(Section section) {
    String port = section.text("port", "the name of the port, such as /dev/ttyUSB0");
    int baud = section.optionalInteger("baud", LOWEST_BAUD, HIGHEST_BAUD).orElse(USUAL_BAUD);
    Parity parity = section.choiceOr("parity", Labels.all(Parity.class), Parity.EVEN);
    int usual = parity == Parity.NONE ? 2 : 1;
    int stopBits = section.optionalInteger("stop-bits", 1, 2).orElse(usual);
    OptionalDouble silence =
        section.has("silence")
            ? OptionalDouble.of(SourceReader.positiveTime(section, "silence", 1))
            : OptionalDouble.empty();
    return section.build(() -> new SerialLine(port, baud, parity, stopBits, silence));
  }

  /** Reads a line on which the plant is served. */
  static Optional<ModbusLines.Served> served(Section section, boolean writable) {
    Optional<SerialLine> line = line(section);
    int unit = section.optionalInteger("unit-id", 1, LARGEST_SERIAL_UNIT).orElse(1);
    boolean writes = section.flagOr("writes", false);
    if (writes && !writable) {
      section.error(
          "writes",
          ConfigProblem.Reason.CONFLICT,
          "has nothing to write: modbus.writes lists nothing",
          "list the points there, or write false");
    }
    return section.build(() -> new ModbusLines.Served(line.orElseThrow(), unit, writes));
  }
}
