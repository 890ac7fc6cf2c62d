package io.strapline.bridge.publish.opcua;

import io.strapline.bridge.config.ModbusSettings;
import io.strapline.bridge.config.OpcUaSettings;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings;
import io.strapline.bridge.model.SnapshotStore;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.DiagnosticStatus;
import io.strapline.level.signal.GateSettings;
import io.strapline.level.signal.NoReturnPolicy;
import io.strapline.level.signal.SignalSettings;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * A plant of two points with its store: a silo that computes everything and a carriage without a
 * vessel. Samples are given by the test; time is the test's.
 */
public final class TestPlant {

  /** The silo: 10 m high, 10 m3, density 1000 kg/m3, all alarms. */
  public static final String SILO = "LT-101";

  /** The carriage: a distance only. */
  public static final String CARRIAGE = "ZT-401";

  /** Time of the first evaluation. */
  public static final Instant START = Instant.parse("2026-03-01T06:00:00Z");

  private final PlantSettings settings;
  private final Map<String, MeasuringPoint> points = new LinkedHashMap<>();
  private final SnapshotStore store;

  private TestPlant(PlantSettings settings) {
    this.settings = settings;
    settings
        .points()
        .forEach(point -> points.put(point.tag(), MeasuringPoint.of(point.point(), START)));
    store = new SnapshotStore(points.values().stream().map(MeasuringPoint::snapshot).toList());
  }

  /** Makes a plant that listens on a free loopback port. */
  public static TestPlant on(Path dataFolder, boolean anonymousRead) {
    return with(dataFolder, new OpcUaSettings(true, "127.0.0.1", 0, anonymousRead, List.of()));
  }

  /** Makes a plant with these settings. */
  public static TestPlant with(Path dataFolder, OpcUaSettings opcUa) {
    return new TestPlant(settings(dataFolder, opcUa, List.of(silo(), carriage())));
  }

  /** Makes settings of a plant with these points. */
  static PlantSettings settings(Path dataFolder, OpcUaSettings opcUa, List<PointConfig> points) {
    ModbusSettings modbus =
        new ModbusSettings(
            false,
            "127.0.0.1",
            0,
            Set.of(1),
            ModbusSettings.WordOrder.ABCD,
            ModbusSettings.BadValue.NAN);
    return new PlantSettings(
        "Kestrel Quay", dataFolder.resolve("plant.yaml"), dataFolder, opcUa, modbus, points);
  }

  private static PointConfig silo() {
    return point("Cement silo", "Silos", FullPoint.settings(SILO));
  }

  private static PointConfig carriage() {
    GateSettings gates = new GateSettings(0.2, 150, OptionalDouble.empty(), List.of());
    return point(
        "Stacker carriage",
        "Stockyard",
        PointSettings.builder(CARRIAGE)
            .mounting(Mounting.plumb(0))
            .range(LoopRange.ofDistance(0, 120))
            .signal(new SignalSettings(gates, NoReturnPolicy.hold(10), 1, 1, 0))
            .build());
  }

  static PointConfig point(String title, String area, PointSettings settings) {
    SourceSettings source =
        new SourceSettings.Replay(
            SourceSettings.Signal.DISTANCE,
            Path.of("none.csv"),
            new SourceSettings.ReplayFormat(
                ',',
                '.',
                "time",
                Optional.empty(),
                "UTC",
                new SourceSettings.ValueColumn("value", 1)),
            SourceSettings.Pace.RECORDED);
    return new PointConfig(title, area, settings, source, OptionalInt.empty());
  }

  /** Returns the settings. */
  public PlantSettings settings() {
    return settings;
  }

  /** Returns the store. */
  public SnapshotStore store() {
    return store;
  }

  /** Lets a distance arrive {@code atSeconds} after the start; returns what came of it. */
  public PointSnapshot distance(String tag, double metres, double atSeconds) {
    Instant time = at(atSeconds);
    Sample sample =
        new Sample(
            time,
            Sample.Kind.DISTANCE,
            metres,
            OptionalDouble.of(50),
            DiagnosticStatus.NORMAL,
            false);
    return stored(point(tag).accept(sample, time));
  }

  /** Lets a current arrive. */
  public PointSnapshot current(String tag, double milliamps, double atSeconds) {
    return stored(point(tag).accept(Sample.current(at(atSeconds), milliamps)));
  }

  /** Lets time pass. */
  public PointSnapshot tick(String tag, double atSeconds) {
    return stored(point(tag).tick(at(atSeconds)));
  }

  /** Returns a time after the start. */
  public static Instant at(double seconds) {
    return START.plusNanos((long) (seconds * 1e9));
  }

  private MeasuringPoint point(String tag) {
    return Objects.requireNonNull(points.get(tag));
  }

  private PointSnapshot stored(PointSnapshot snapshot) {
    store.update(snapshot);
    return snapshot;
  }
}
