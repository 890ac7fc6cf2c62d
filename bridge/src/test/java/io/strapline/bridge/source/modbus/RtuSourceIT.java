package io.strapline.bridge.source.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.DeviceLine;
import io.strapline.bridge.config.ModbusLines;
import io.strapline.bridge.config.ModbusSettings.WordOrder;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SerialLine;
import io.strapline.bridge.config.SerialLine.Parity;
import io.strapline.bridge.config.SourceSettings;
import io.strapline.bridge.config.SourceSettings.ModbusDevice;
import io.strapline.bridge.config.SourceSettings.ModbusRegister;
import io.strapline.bridge.config.SourceSettings.RegisterType;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.bridge.model.RealClock;
import io.strapline.bridge.model.SampleSink;
import io.strapline.bridge.testing.Eventually;
import io.strapline.bridge.testing.Peers;
import io.strapline.bridge.testing.Plants;
import io.strapline.bridge.testing.PseudoLine;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.Cause;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Units of another make on one line: each gets its turn, also beside one that is not there. */
@Timeout(120)
class RtuSourceIT {

  private static final String PYTHON = "/usr/bin/python3";
  private static final int ABSENT = 9;

  private final Map<String, AtomicInteger> right = new ConcurrentHashMap<>();
  private final Map<String, AtomicInteger> failed = new ConcurrentHashMap<>();
  private final Map<String, Sample> wrong = new ConcurrentHashMap<>();

  private final SampleSink sink =
      new SampleSink() {
        @Override
        public void accept(String tag, Sample sample) {
          // Tag "U-A": unit U, register A holds 1000 * U + A; the point reads it as millimetres.
          String[] parts = tag.split("-", -1);
          double metres = Integer.parseInt(parts[0]) + Integer.parseInt(parts[1]) / 1000.0;
          if (Math.abs(sample.value() - metres) > 1e-9) {
            wrong.put(tag, sample);
          }
          count(right, tag);
        }

        @Override
        public void fail(String tag, Cause cause, String detail) {
          count(failed, tag);
        }
      };

  private static void count(Map<String, AtomicInteger> counts, String tag) {
    counts.computeIfAbsent(tag, key -> new AtomicInteger()).incrementAndGet();
  }

  private static int times(Map<String, AtomicInteger> counts, String tag) {
    AtomicInteger count = counts.get(tag);
    return count == null ? 0 : count.get();
  }

  private static PointConfig point(DeviceLine line, int unit, int address) {
    ModbusDevice device = new ModbusDevice(line, unit, 0.05, unit == ABSENT ? 0.2 : 5, 0.5);
    ModbusRegister register =
        new ModbusRegister(4, address, RegisterType.UINT16, WordOrder.ABCD, 0.001);
    return Plants.point(
        Plants.plumb(unit + "-" + address, 100).build(),
        new SourceSettings.Modbus(Signal.LEVEL, device, register));
  }

  private void pollAll(DeviceLine line) throws Exception {
    List<PointConfig> points =
        List.of(
            point(line, 1, 0),
            point(line, 1, 50),
            point(line, ABSENT, 0),
            point(line, 2, 7),
            point(line, 60, 99));
    List<ModbusSource> sources = ModbusSource.of(points, RealClock.startNow());
    assertEquals(1, sources.size(), "one thread for one line");
    try (ModbusSource source = sources.get(0)) {
      source.start(sink);
      for (String tag : List.of("1-0", "1-50", "2-7", "60-99")) {
        Eventually.holds(tag + " is read ten times", () -> times(right, tag) >= 10);
      }
      Eventually.holds("the absent unit is told", () -> times(failed, ABSENT + "-0") >= 2);
      assertEquals(0, times(right, ABSENT + "-0"));
    }
    assertTrue(wrong.isEmpty(), wrong::toString);
  }

  @Test
  void unitsOnASerialLineTakeTurns() throws Exception {
    Peers.require("python3-pymodbus", PYTHON, "-c", "import pymodbus, serial");
    try (PseudoLine pair = PseudoLine.open()) {
      Process units = units("serial", pair.two());
      try {
        // A pseudo-terminal drops parity: 8N1.
        SerialLine line =
            new SerialLine(pair.one(), 19_200, Parity.NONE, 1, OptionalDouble.empty());
        pollAll(new DeviceLine.Serial(line));
      } finally {
        stop(units);
      }
    }
  }

  @Test
  void unitsBehindAGatewayShareOneConnection() throws Exception {
    Peers.require("python3-pymodbus", PYTHON, "-c", "import pymodbus, serial");
    int port;
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      port = free.getLocalPort();
    }
    Process units = units("tcp", Integer.toString(port));
    try {
      pollAll(new DeviceLine.Tcp("127.0.0.1", port, ModbusLines.Framing.RTU));
    } finally {
      stop(units);
    }
  }

  private static Process units(String kind, String port) throws Exception {
    Path script = Path.of("src", "test", "peers", "modbus", "line_units.py").toAbsolutePath();
    List<String> command = new ArrayList<>(List.of(PYTHON, script.toString(), kind, port));
    command.addAll(List.of("1", "2", "60"));
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  private static void stop(Process units) throws InterruptedException {
    units.destroyForcibly();
    assertTrue(units.waitFor(20, TimeUnit.SECONDS));
  }
}
