package io.strapline.bridge.cli;

import io.strapline.bridge.config.ConfigProblem;
import io.strapline.bridge.config.ModbusAccess;
import io.strapline.bridge.config.ModbusLines;
import io.strapline.bridge.config.ModbusSettings;
import io.strapline.bridge.config.OpcUaSettings;
import io.strapline.bridge.config.PlantFile;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings;
import io.strapline.bridge.config.SourceSettings.Modbus;
import io.strapline.bridge.config.SourceSettings.Replay;
import io.strapline.bridge.config.SourceSettings.ShowsAs;
import io.strapline.bridge.config.SourceSettings.Simulated;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.signal.SignalChain;
import io.strapline.level.vessel.CapacityCurve;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/** A plant in a few lines: what is doubtful, what is listened on, each point. Stateless. */
final class PlantSummary {

  private PlantSummary() {}

  /** Returns the lines for people. */
  static List<String> lines(PlantFile read) {
    List<String> lines = new ArrayList<>();
    for (ConfigProblem warning : read.warnings()) {
      lines.add("warning: " + warning);
    }
    PlantSettings plant = read.plant();
    lines.add(headline(read));
    lines.add("OPC UA      " + opcUa(plant.opcUa()));
    lines.add("Modbus TCP  " + modbus(plant.modbus()));
    lines.add("Data folder " + plant.dataFolder());
    lines.add("");
    lines.addAll(points(plant.points()));
    return lines;
  }

  private static String headline(PlantFile read) {
    int points = read.plant().points().size();
    int warnings = read.warnings().size();
    return String.format(
        Locale.ROOT,
        "%s: %d measuring point%s, no problem, %s",
        read.plant().name(),
        points,
        points == 1 ? "" : "s",
        warnings == 0 ? "no warning" : warnings + (warnings == 1 ? " warning" : " warnings"));
  }

  private static String opcUa(OpcUaSettings server) {
    if (!server.enabled()) {
      return "off";
    }
    String who =
        server.anonymousRead()
            ? ", read without a user name"
            : ", trusted client certificates only";
    return "opc.tcp://" + server.host() + ":" + port(server.port()) + who;
  }

  private static String modbus(ModbusSettings server) {
    if (!server.enabled()) {
      return "off";
    }
    return server.host()
        + ":"
        + port(server.port())
        + ", unit ids "
        + new TreeSet<>(server.unitIds())
        + ", word order "
        + server.wordOrder()
        + access(server.access())
        + lines(server.lines());
  }

  private static String lines(ModbusLines lines) {
    String framing = lines.framing() == ModbusLines.Framing.RTU ? ", RTU frames" : "";
    return framing
        + lines.serial().map(s -> ", serial " + s.line().port() + " unit " + s.unitId()).orElse("");
  }

  private static String access(ModbusAccess access) {
    String clients = access.clients().isEmpty() ? "" : ", clients " + access.clients();
    return clients
        + access
            .writes()
            .map(writes -> ", alarms written from " + writes.from())
            .orElse(", read only");
  }

  private static String port(int port) {
    return port == 0 ? "(a free port)" : Integer.toString(port);
  }

  private static List<String> points(List<PointConfig> points) {
    TextTable table = new TextTable();
    table.row("TAG", "TITLE", "VESSEL", "RANGE", "ALARMS AT", "DELAY", "SOURCE", "BLOCK");
    for (PointConfig point : points) {
      table.row(
          point.tag(),
          point.title(),
          point.point().vessel().map(PlantSummary::vessel).orElse("none, position only"),
          point.point().range().map(PlantSummary::range).orElse("-"),
          alarms(point.point().alarms().limits()),
          delay(point),
          source(point.source()),
          point.modbusBlock().isPresent() ? "" + point.modbusBlock().getAsInt() : "-");
    }
    return table.lines();
  }

  private static String vessel(CapacityCurve vessel) {
    return Figures.of(vessel.maxHeightMetres(), 2)
        + " m, "
        + Figures.of(vessel.capacityCubicMetres(), 1)
        + " m3";
  }

  private static String range(LoopRange range) {
    return range.measure().name().toLowerCase(Locale.ROOT)
        + " "
        + Figures.of(range.lowerMetres(), 2)
        + " to "
        + Figures.of(range.upperMetres(), 2)
        + " m";
  }

  private static String alarms(List<AlarmLimit> limits) {
    List<String> texts = new ArrayList<>();
    for (AlarmLimit limit : limits) {
      texts.add(shortName(limit.kind()) + " " + Figures.of(limit.setPointMetres(), 2));
    }
    return texts.isEmpty() ? "-" : String.join(", ", texts) + " m";
  }

  private static String shortName(AlarmKind kind) {
    return switch (kind) {
      case HIGH_HIGH -> "HH";
      case HIGH -> "H";
      case LOW -> "L";
      case LOW_LOW -> "LL";
      case BAD_SIGNAL -> "bad signal";
    };
  }

  /** Returns by how much conditioning delays the values, and the alarms, on a slow ramp. */
  private static String delay(PointConfig point) {
    SignalChain chain = point.point().newChain();
    double interval = intervalSeconds(point.source());
    if (!(interval > 0)) {
      return "as the file is spaced";
    }
    return "value "
        + Figures.of(chain.delaySeconds(interval), 1)
        + ", alarm "
        + Figures.of(chain.alarmDelaySeconds(interval), 1)
        + " s";
  }

  private static double intervalSeconds(SourceSettings source) {
    if (source instanceof Simulated simulated) {
      return simulated.intervalSeconds();
    }
    return source instanceof Modbus modbus ? modbus.device().pollSeconds() : 0;
  }

  private static String source(SourceSettings source) {
    String signal = source.signal().name().toLowerCase(Locale.ROOT).replace('_', '-');
    if (source instanceof Simulated simulated) {
      return "simulated " + signal + (simulated.showsAs() == ShowsAs.LIVE ? ", shown as live" : "");
    }
    if (source instanceof Replay replay) {
      return "replay of " + replay.file().getFileName() + ", " + signal;
    }
    if (source instanceof Modbus modbus) {
      return "Modbus "
          + modbus.device().line().name()
          + (modbus.device().line().isShared() ? " unit " + modbus.device().unitId() : "")
          + " register "
          + modbus.register().address()
          + ", "
          + signal;
    }
    throw new IllegalStateException("a source that is not known: " + source);
  }
}
