package io.strapline.bridge.source.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.ModbusSettings.WordOrder;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings;
import io.strapline.bridge.config.SourceSettings.ModbusDevice;
import io.strapline.bridge.config.SourceSettings.ModbusRegister;
import io.strapline.bridge.config.SourceSettings.RegisterType;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.bridge.model.PlantClock;
import io.strapline.bridge.model.RealClock;
import io.strapline.bridge.model.SampleSink;
import io.strapline.bridge.testing.Peers;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.loop.RawCounts;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.Sample;
import io.strapline.level.point.SourceAges;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The source against devices: one of another make, and one that misbehaves. */
@Timeout(120)
class ModbusSourceIT {

  private static final String PYTHON = "/usr/bin/python3";

  private final PlantClock clock = RealClock.startNow();
  private final Map<String, MeasuringPoint> points = new ConcurrentHashMap<>();
  private final Map<String, String> failures = new ConcurrentHashMap<>();

  private final SampleSink sink =
      new SampleSink() {
        @Override
        public void accept(String tag, Sample sample) {
          MeasuringPoint point = point(tag);
          synchronized (point) {
            point.accept(sample, clock.instant());
          }
          failures.remove(tag);
        }

        @Override
        public void fail(String tag, Cause cause, String detail) {
          MeasuringPoint point = point(tag);
          synchronized (point) {
            point.fail(cause, clock.instant());
          }
          failures.put(tag, detail);
        }
      };

  private MeasuringPoint point(String tag) {
    return java.util.Objects.requireNonNull(points.get(tag), tag);
  }

  /** A silo of 10 m behind an input card: 0 counts at 4 mA, 27648 at 20 mA. */
  private PointConfig config(String tag, ModbusDevice device, int address) {
    PointSettings settings =
        PointSettings.builder(tag)
            .mounting(Mounting.plumb(11))
            .range(LoopRange.ofLevel(0, 10))
            .rawCounts(new RawCounts(RawCounts.Encoding.SIGNED_16, 0, 27_648))
            .ages(new SourceAges(1, 3))
            .build();
    points.put(tag, MeasuringPoint.of(settings, clock.instant()));
    ModbusRegister register = new ModbusRegister(4, address, RegisterType.INT16, WordOrder.ABCD, 1);
    SourceSettings source = new SourceSettings.Modbus(Signal.RAW_COUNT, device, register);
    return new PointConfig("Silo", "Works", settings, source, OptionalInt.empty());
  }

  @Test
  void aModuleOfAnotherMakeIsReadAndItsAbsenceShowsInStages() throws Exception {
    Peers.require("python3-pymodbus", PYTHON, "-c", "import pymodbus");
    int port = freePort();
    ModbusDevice device = new ModbusDevice("127.0.0.1", port, 1, 0.1, 1, 0.5);
    List<PointConfig> configs =
        List.of(
            config("LT-101", device, 0), config("LT-102", device, 1), config("LT-103", device, 9));
    Process module = module(port);
    List<ModbusSource> sources = ModbusSource.of(configs, clock);
    assertEquals(1, sources.size(), "one connection for one device");
    try (ModbusSource source = sources.get(0)) {
      source.start(sink);
      awaitQuality("LT-101", Quality.GOOD);
      awaitQuality("LT-102", Quality.GOOD);
      // By hand: 13824 of 27648 counts is 12 mA, half of 10 m; 6912 is 8 mA, a quarter.
      assertEquals(5.0, snapshot("LT-101").level().value(), 1e-9);
      assertEquals(2.5, snapshot("LT-102").level().value(), 1e-9);
      // Register 9 does not exist; its point is BAD and the others are not.
      assertTrue(snapshot("LT-103").level().quality().isBad());
      awaitThat(() -> String.valueOf(failures.get("LT-103")).contains("exception 2"));
      stop(module);
      awaitQuality("LT-101", Quality.uncertain(Cause.SOURCE_SILENT_HELD));
      awaitQuality("LT-101", Quality.bad(Cause.NO_COMMUNICATION));
      module = module(port);
      awaitQuality("LT-101", Quality.GOOD);
      assertEquals(5.0, snapshot("LT-101").level().value(), 1e-9);
    } finally {
      stop(module);
    }
  }

  @Test
  void oneRegisterThatIsRefusedDoesNotDisturbItsNeighbour() throws Exception {
    ScriptedDevice.Script script =
        (number, request, out) -> {
          boolean touches6 = request[9] <= 6 && request[9] + request[11] > 6;
          out.write(touches6 ? refusal(request) : ScriptedDevice.right(request));
        };
    try (ScriptedDevice scripted = new ScriptedDevice(script)) {
      ModbusDevice device = new ModbusDevice("127.0.0.1", scripted.port(), 1, 0.05, 5, 1);
      List<PointConfig> configs = List.of(config("LT-101", device, 5), config("LT-102", device, 6));
      try (ModbusSource source = ModbusSource.of(configs, clock).get(0)) {
        source.start(sink);
        awaitThat(() -> snapshot("LT-101").sequence() > 3);
        awaitThat(() -> failures.containsKey("LT-102"));
        assertFalse(failures.containsKey("LT-101"));
        assertTrue(snapshot("LT-102").level().quality().isBad());
        assertEquals(1, scripted.connections());
      }
    }
  }

  private static byte[] refusal(byte[] request) {
    byte[] answer = java.util.Arrays.copyOf(request, 9);
    answer[5] = 3;
    answer[7] |= (byte) 0x80;
    answer[8] = 2;
    return answer;
  }

  @Test
  void anAbsentDeviceIsReportedForAllItsPoints() throws Exception {
    ModbusDevice device = new ModbusDevice("127.0.0.1", freePort(), 1, 0.05, 1, 0.1);
    List<PointConfig> configs = List.of(config("LT-101", device, 0), config("LT-102", device, 7));
    try (ModbusSource source = ModbusSource.of(configs, clock).get(0)) {
      source.start(sink);
      awaitThat(() -> failures.size() == 2);
      assertTrue(
          String.valueOf(failures.get("LT-102"))
              .startsWith(
                  "127.0.0.1:" + Integer.parseInt(device.line().name().replaceAll(".*:", ""))));
      assertTrue(snapshot("LT-101").level().quality().isBad());
    }
  }

  @Test
  void closeEndsTheThreadDuringARead() throws Exception {
    CountDownLatch asked = new CountDownLatch(1);
    try (ScriptedDevice mute = new ScriptedDevice((n, request, out) -> asked.countDown())) {
      ModbusDevice device = new ModbusDevice("127.0.0.1", mute.port(), 1, 1, 3600, 1);
      ModbusSource source = ModbusSource.of(List.of(config("LT-101", device, 0)), clock).get(0);
      source.start(sink);
      assertTrue(asked.await(20, TimeUnit.SECONDS));
      source.close();
      source.close();
      String name = "modbus-source-127.0.0.1:" + mute.port() + " unit 1";
      assertTrue(
          Thread.getAllStackTraces().keySet().stream().noneMatch(t -> t.getName().equals(name)));
      assertTrue(failures.isEmpty(), "stopping is no failure");
    }
  }

  private Process module(int port) throws IOException {
    Path script = Path.of("src", "test", "peers", "modbus", "analogue_inputs.py");
    List<String> command = new ArrayList<>(List.of(PYTHON, script.toAbsolutePath().toString()));
    command.addAll(List.of(Integer.toString(port), "13824", "6912", "0"));
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  private static void stop(Process module) throws InterruptedException {
    module.destroyForcibly();
    assertTrue(module.waitFor(20, TimeUnit.SECONDS));
  }

  private static int freePort() throws IOException {
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return free.getLocalPort();
    }
  }

  private PointSnapshot snapshot(String tag) {
    MeasuringPoint point = point(tag);
    synchronized (point) {
      return point.snapshot();
    }
  }

  private void awaitQuality(String tag, Quality expected) throws InterruptedException {
    awaitThat(
        () -> {
          MeasuringPoint point = point(tag);
          synchronized (point) {
            return point.tick(clock.instant()).level().quality().equals(expected);
          }
        });
  }

  private static void awaitThat(BooleanSupplier condition) throws InterruptedException {
    CountDownLatch never = new CountDownLatch(1);
    for (int i = 0; i < 3000 && !condition.getAsBoolean(); i++) {
      assertFalse(never.await(10, TimeUnit.MILLISECONDS));
    }
    assertTrue(condition.getAsBoolean());
  }
}
