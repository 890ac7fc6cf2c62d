package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Sees that no serial port has two users or two settings. Used once. */
final class SerialPorts {

  private final Section plant;
  private final Optional<SerialLine> server;
  private final Map<String, PointConfig> firstByPort = new HashMap<>();

  SerialPorts(Section plant, Optional<ModbusSettings> modbus) {
    this.plant = plant;
    server =
        modbus
            .filter(ModbusSettings::enabled)
            .flatMap(settings -> settings.lines().serial())
            .map(ModbusLines.Served::line);
  }

  /** Notes an error at each point whose port is taken or set otherwise. */
  void check(List<PointConfig> points) {
    points.forEach(point -> line(point).ifPresent(line -> check(point, line)));
  }

  private static Optional<SerialLine> line(PointConfig point) {
    return point.source() instanceof SourceSettings.Modbus modbus
            && modbus.device().line() instanceof DeviceLine.Serial serial
        ? Optional.of(serial.line())
        : Optional.empty();
  }

  private void check(PointConfig point, SerialLine line) {
    PointConfig first = firstByPort.putIfAbsent(line.port(), point);
    if (server.filter(served -> served.port().equals(line.port())).isPresent()) {
      error(
          point,
          line,
          "is the serial line of the Modbus server too",
          "give each a line of its own");
    } else if (first != null && !line(first).equals(Optional.of(line))) {
      error(
          point,
          line,
          "has other settings than for " + first.tag(),
          "write the same for each unit of the line");
    }
  }

  private void error(PointConfig point, SerialLine line, String rule, String fix) {
    String key = "points." + point.tag() + ".source.modbus.device.serial.port";
    Place section = plant.place("points");
    Place place = new Place(section.line(), section.column(), key, line.port());
    plant.problems().error(place, Reason.CONFLICT, rule, fix);
  }
}
