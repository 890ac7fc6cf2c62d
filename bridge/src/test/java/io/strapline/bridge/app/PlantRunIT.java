package io.strapline.bridge.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.ModbusSettings;
import io.strapline.bridge.config.OpcUaSettings;
import io.strapline.bridge.config.PlantReader;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings.LevelProcess;
import io.strapline.bridge.config.SourceSettings.ShowsAs;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.bridge.config.SourceSettings.Simulated;
import io.strapline.bridge.model.FastClock;
import io.strapline.bridge.testing.Clients;
import io.strapline.bridge.testing.Clients.ModbusLevel;
import io.strapline.bridge.testing.Eventually;
import io.strapline.bridge.testing.Plants;
import io.strapline.bridge.testing.UprightCylinder;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.SourceAges;
import io.strapline.level.reading.Cause;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A whole plant with both servers, read by clients of both protocols. */
@Timeout(180)
class PlantRunIT {

  @TempDir Path data;

  private PlantSettings served(PlantSettings plant) {
    return new PlantSettings(
        plant.name(),
        plant.file(),
        data,
        new OpcUaSettings(true, "127.0.0.1", 0, true, List.of()),
        new ModbusSettings(
            true,
            "127.0.0.1",
            0,
            Set.of(1),
            ModbusSettings.WordOrder.ABCD,
            ModbusSettings.BadValue.NAN),
        plant.points());
  }

  private static PointConfig point(PointSettings settings, Signal signal, int block) {
    // One sample a minute: at twenty times real time all clients have three seconds to read it.
    Simulated source =
        new Simulated(
            signal,
            ShowsAs.LIVE,
            5,
            60,
            0.003,
            new LevelProcess(Math.PI, 1, 9, 0.01, 0.01),
            List.of());
    return new PointConfig("test", "quay", settings, source, OptionalInt.of(block));
  }

  private static PointSettings.Builder settings(String tag) {
    return Plants.plumb(tag, 10)
        .ages(new SourceAges(200, 400))
        .range(LoopRange.ofLevel(0, 10))
        .vessel(new UprightCylinder(7, 10));
  }

  @Test
  void opcUaModbusAndTheSnapshotAgreeToTheLastDigitThatEachCanCarry() throws Exception {
    List<PointConfig> points =
        List.of(
            point(settings("LT-101").build(), Signal.DISTANCE, 1),
            point(settings("LT-103").density(1350).build(), Signal.CURRENT, 3));
    PlantSettings plant = served(Plants.quiet(points));
    try (PlantRun run = PlantRun.of(plant, FastClock.startNow(20), new StandardParts())) {
      run.start();
      try (Clients clients = Clients.connect(run.endpoints().get(0), run.endpoints().get(1))) {
        for (PointConfig point : points) {
          Eventually.holds(
              point.tag() + " reads alike everywhere", () -> alike(run, clients, point));
        }
      }
    }
  }

  /** Returns whether all read the same; false while a new sample comes in between. */
  private static boolean alike(PlantRun run, Clients clients, PointConfig point) {
    PointSnapshot before = snapshot(run, point);
    DataValue opcUa = clients.opcUa(point.tag() + ".Level");
    ModbusLevel modbus = clients.modbus(point.modbusBlock().orElseThrow());
    PointSnapshot after = snapshot(run, point);
    double level = before.level().value();
    if (!before.level().equals(after.level())
        || !before.level().quality().isGood()
        || modbus.asDouble() != level) {
      return false;
    }
    Instant source = before.level().time();
    assertEquals(level, opcUa.value().value());
    assertTrue(opcUa.statusCode().isGood());
    assertEquals(
        source.toEpochMilli(), java.util.Objects.requireNonNull(opcUa.sourceTime()).getJavaTime());
    assertEquals((float) level, modbus.asFloat());
    assertEquals(Math.round(level * 1000), modbus.asMillimetres());
    assertEquals(192, modbus.quality());
    return true;
  }

  private static PointSnapshot snapshot(PlantRun run, PointConfig point) {
    return run.store().view().point(point.tag()).orElseThrow();
  }

  /** The plant of the demonstration, as it is shipped, but on free ports. */
  @Test
  void everyPointOfTheDemonstrationIsServedWithValuesThatItReallyHad() throws Exception {
    PlantSettings plant = served(PlantReader.read(Path.of("../config/kestrel-quay.yaml")).plant());
    Map<String, Set<Double>> had = new ConcurrentHashMap<>();
    try (PlantRun run = PlantRun.of(plant, FastClock.startNow(20), new StandardParts())) {
      run.store()
          .listen(
              s ->
                  had.computeIfAbsent(s.tag(), tag -> ConcurrentHashMap.newKeySet())
                      .add(s.level().value()));
      run.start();
      try (Clients clients = Clients.connect(run.endpoints().get(0), run.endpoints().get(1))) {
        for (PointConfig point : plant.points()) {
          Eventually.holds(
              point.tag() + " has a value",
              () ->
                  snapshot(run, point).level().quality().cause() != Cause.WAITING_FOR_FIRST_SAMPLE);
          Eventually.holds(
              point.tag() + " is served with a usable value",
              () -> served(clients, point, had.getOrDefault(point.tag(), Set.of())));
          assertEquals(0, run.faults(point.tag()));
        }
      }
    }
  }

  private static boolean served(Clients clients, PointConfig point, Set<Double> had) {
    DataValue opcUa = clients.opcUa(point.tag() + ".Level");
    if (opcUa.statusCode().isBad()) {
      return false;
    }
    assertTrue(had.contains((Double) opcUa.value().value()), () -> point.tag() + " " + opcUa);
    if (point.modbusBlock().isEmpty()) {
      return true;
    }
    ModbusLevel modbus = clients.modbus(point.modbusBlock().getAsInt());
    if (modbus.quality() == 0) {
      return false;
    }
    assertTrue(had.contains(modbus.asDouble()), () -> point.tag() + " " + modbus);
    return true;
  }
}
