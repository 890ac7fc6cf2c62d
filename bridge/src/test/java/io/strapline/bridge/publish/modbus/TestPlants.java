package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.config.ModbusSettings;
import io.strapline.bridge.config.ModbusSettings.BadValue;
import io.strapline.bridge.config.ModbusSettings.WordOrder;
import io.strapline.bridge.config.OpcUaSettings;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings;
import io.strapline.bridge.model.PlantAccess;
import io.strapline.bridge.model.PlantClock;
import io.strapline.bridge.model.SnapshotStore;
import io.strapline.level.alarm.AlarmHandling;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.alarm.AlarmSettings;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.vessel.CapacityCurve;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;

/** Plants and points for tests. */
final class TestPlants {

  /** Start of all test points. */
  static final Instant START = Instant.parse("2026-03-01T12:00:00.250Z");

  private static final AlarmSettings HIGH_AT_9 =
      new AlarmSettings(
          List.of(new AlarmLimit(AlarmKind.HIGH, 9, 0.1, 0, 0, AlarmHandling.DEFAULT)),
          0,
          AlarmHandling.DEFAULT);

  private TestPlants() {}

  /** Upright prism of 10 m height and 12 m2: volume is 12 times height. */
  static final class Prism implements CapacityCurve {
    @Override
    public double maxHeightMetres() {
      return 10;
    }

    @Override
    public double capacityCubicMetres() {
      return 120;
    }

    @Override
    public double volumeCubicMetres(double heightMetres) {
      return 12 * heightMetres;
    }

    @Override
    public double heightMetres(double volumeCubicMetres) {
      return volumeCubicMetres / 12;
    }
  }

  /** A silo with everything: vessel, range, density, alarm at 9 m. */
  static PointSettings silo(String tag) {
    return PointSettings.builder(tag)
        .mounting(Mounting.plumb(11))
        .vessel(new Prism())
        .range(LoopRange.ofLevel(0, 10))
        .density(1500)
        .alarms(HIGH_AT_9)
        .build();
  }

  /** A position: neither vessel nor range nor density. */
  static PointSettings position(String tag) {
    return PointSettings.builder(tag).mounting(Mounting.plumb(0)).build();
  }

  static PlantSettings plant(ModbusSettings modbus, PointConfig... points) {
    return new PlantSettings(
        "Kestrel Quay",
        Path.of("plant.yaml"),
        Path.of("data"),
        new OpcUaSettings(false, "127.0.0.1", 0, false, List.of()),
        modbus,
        List.of(points));
  }

  static ModbusSettings modbus(WordOrder order, BadValue bad) {
    return new ModbusSettings(true, "127.0.0.1", 0, Set.of(1), order, bad);
  }

  static ModbusSettings modbus() {
    return modbus(WordOrder.ABCD, BadValue.NAN);
  }

  static PointConfig config(PointSettings point, int block) {
    SourceSettings source =
        new SourceSettings.Simulated(
            SourceSettings.Signal.DISTANCE,
            SourceSettings.ShowsAs.LIVE,
            1,
            1,
            0,
            new SourceSettings.LevelProcess(1, 1, 2, 1, 1),
            List.of());
    OptionalInt where = block == 0 ? OptionalInt.empty() : OptionalInt.of(block);
    return new PointConfig("Silo", "Works", point, source, where);
  }

  static SnapshotStore store(MeasuringPoint... points) {
    return new SnapshotStore(Stream.of(points).map(MeasuringPoint::snapshot).toList());
  }

  static SnapshotStore store(PointSnapshot... snapshots) {
    return new SnapshotStore(List.of(snapshots));
  }

  /** Access to a plant whose operators can do nothing. */
  static PlantAccess access(SnapshotStore store) {
    return new PlantAccess(store, clock(), new RecordedOperations());
  }

  /** A clock that stands at {@link #START}. */
  static PlantClock clock() {
    return new PlantClock() {
      @Override
      public Instant instant() {
        return START;
      }

      @Override
      public void awaitUntil(Instant time) {}
    };
  }
}
