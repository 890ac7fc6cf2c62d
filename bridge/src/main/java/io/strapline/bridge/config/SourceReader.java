package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.bridge.config.ModbusLines.Framing;
import io.strapline.bridge.config.ModbusSettings.WordOrder;
import io.strapline.bridge.config.SourceSettings.Modbus;
import io.strapline.bridge.config.SourceSettings.ModbusDevice;
import io.strapline.bridge.config.SourceSettings.ModbusRegister;
import io.strapline.bridge.config.SourceSettings.RegisterType;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.level.units.Dimension;
import java.util.List;
import java.util.Optional;

/** Reads where the samples of a point come from. Stateless. */
final class SourceReader {

  private static final int MODBUS_PORT = 502;
  private static final int LARGEST_UNIT_ID = 255;
  private static final int LARGEST_ADDRESS = 65535;
  private static final double LONGEST_PAUSE_SECONDS = 30;

  private SourceReader() {}

  /** Reads the one source that is given. */
  static Optional<SourceSettings> read(Section section, Optional<Geometry> geometry) {
    return section
        .one(Keys.SOURCE.names())
        .flatMap(
            kind ->
                switch (kind) {
                  case "simulated" ->
                      section
                          .section(kind, Keys.SIMULATED)
                          .flatMap(keys -> new SimulatedReader(keys, geometry).read());
                  case "replay" -> section.section(kind, Keys.REPLAY).flatMap(ReplayReader::read);
                  default ->
                      section
                          .section(kind, Keys.MODBUS_DEVICE_SOURCE)
                          .flatMap(SourceReader::modbus);
                });
  }

  /** Returns the dimension of a signal's values; empty for a bare count. */
  static Optional<Dimension> dimension(Signal signal) {
    return switch (signal) {
      case DISTANCE, LEVEL -> Optional.of(Dimension.LENGTH);
      case CURRENT -> Optional.of(Dimension.CURRENT);
      case RAW_COUNT -> Optional.empty();
    };
  }

  /** Returns a positive time or its default; a problem otherwise. */
  static double positiveTime(Section section, String key, double fallback) {
    double seconds = section.quantityOr(key, Dimension.TIME, fallback);
    if (seconds <= 0) {
      section.error(key, Reason.OUT_OF_RANGE, "must be greater than zero", "write a longer time");
    }
    return seconds;
  }

  private static Optional<SourceSettings> modbus(Section section) {
    Signal signal = section.choice("signal", Labels.all(Signal.class));
    Optional<ModbusDevice> device =
        section
            .requiredSection("device", Keys.DEVICE, "the host of the device")
            .flatMap(SourceReader::device);
    Optional<ModbusRegister> register =
        section
            .requiredSection("register", Keys.REGISTER, "the register that is read")
            .flatMap(keys -> register(keys, signal));
    return section.build(() -> new Modbus(signal, device.orElseThrow(), register.orElseThrow()));
  }

  private static Optional<ModbusDevice> device(Section section) {
    Optional<DeviceLine> line = section.has("serial") ? serialLine(section) : tcpLine(section);
    int unitId = unitId(section);
    double poll = positiveTime(section, "poll", 1);
    double timeout = positiveTime(section, "timeout", 1);
    double pause = positiveTime(section, "longest-pause", LONGEST_PAUSE_SECONDS);
    return section.build(() -> new ModbusDevice(line.orElseThrow(), unitId, poll, timeout, pause));
  }

  private static Optional<DeviceLine> tcpLine(Section section) {
    String host = section.text("host", "the address or name of the device, or a serial line");
    section.scalar("host").ifPresent(NetworkReader::refuseBadHost);
    int port = section.optionalInteger("port", 1, NetworkReader.LARGEST_PORT).orElse(MODBUS_PORT);
    Framing framing = section.choiceOr("framing", Labels.all(Framing.class), Framing.TCP);
    return section.build(() -> new DeviceLine.Tcp(host, port, framing));
  }

  private static Optional<DeviceLine> serialLine(Section section) {
    for (String key : List.of("host", "port", "framing")) {
      if (section.has(key)) {
        section.error(key, Reason.CONFLICT, "stands beside serial", "keep one of the two");
      }
    }
    return section
        .section("serial", Keys.DEVICE_SERIAL)
        .flatMap(SerialReader::line)
        .map(DeviceLine.Serial::new);
  }

  /** On a line with serial frames 0 is a broadcast, which nobody answers. */
  private static int unitId(Section section) {
    boolean frames = section.has("serial") || section.textOr("framing", "").equals("rtu");
    return section
        .optionalInteger(
            "unit-id", frames ? 1 : 0, frames ? SerialReader.LARGEST_SERIAL_UNIT : LARGEST_UNIT_ID)
        .orElse(1);
  }

  private static Optional<ModbusRegister> register(Section section, Signal signal) {
    RegisterTable table =
        section.choiceOr("table", Labels.all(RegisterTable.class), RegisterTable.HOLDING);
    int address = section.integer("address", 0, LARGEST_ADDRESS);
    RegisterType type = section.choice("type", Labels.all(RegisterType.class));
    WordOrder order = section.choiceOr("word-order", Labels.all(WordOrder.class), WordOrder.ABCD);
    double toSi = scale(section, signal);
    if (address == LARGEST_ADDRESS
        && !List.of(RegisterType.INT16, RegisterType.UINT16).contains(type)) {
      section.error(
          "address",
          Reason.OUT_OF_RANGE,
          "leaves no room for the second register of " + Labels.of(type),
          "write an address up to " + (LARGEST_ADDRESS - 1));
    }
    return section.build(() -> new ModbusRegister(table.function, address, type, order, toSi));
  }

  private static double scale(Section section, Signal signal) {
    Optional<Dimension> dimension = dimension(signal);
    if (dimension.isEmpty()) {
      if (section.has("scale")) {
        section.error(
            "scale", Reason.CONFLICT, "a raw count has no scale", "remove it; see raw-counts");
      }
      return 1;
    }
    double scale = section.quantity("scale", dimension.get());
    if (scale == 0) {
      section.error(
          "scale", Reason.OUT_OF_RANGE, "must not be zero", "write what a register value of 1 is");
    }
    return scale;
  }

  /** The register table that is read. */
  private enum RegisterTable {
    HOLDING(3),
    INPUT(4);

    private final int function;

    RegisterTable(int function) {
      this.function = function;
    }
  }
}
