package io.strapline.bridge.publish.opcua;

import io.strapline.bridge.config.ModbusSettings;
import io.strapline.bridge.config.OpcUaSettings;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings;
import io.strapline.bridge.model.Operations;
import io.strapline.bridge.model.PlantAccess;
import io.strapline.bridge.model.PlantClock;
import io.strapline.bridge.model.SnapshotStore;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmSnapshot;
import io.strapline.level.alarm.AlarmState;
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
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Function;

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
  private final List<Operations.Operator> operators = new CopyOnWriteArrayList<>();

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

  /** Makes a plant of these points. */
  public static TestPlant of(Path dataFolder, List<PointConfig> points) {
    return new TestPlant(
        settings(dataFolder, new OpcUaSettings(true, "127.0.0.1", 0, true, List.of()), points));
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

  /** Makes a point whose samples are given by the test. */
  public static PointConfig point(String title, String area, PointSettings settings) {
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

  /** Returns what a publisher may use; operators act on the points as in a running plant. */
  public PlantAccess access() {
    return new PlantAccess(store, new TestClock(), new TestOperations());
  }

  /** Stands at the time of the last evaluation. */
  private final class TestClock implements PlantClock {

    @Override
    public Instant instant() {
      return store.view().points().values().stream()
          .map(PointSnapshot::evaluated)
          .max(Instant::compareTo)
          .orElse(START);
    }

    @Override
    public void awaitUntil(Instant time) {
      throw new UnsupportedOperationException("nobody waits for the test's clock");
    }
  }

  private final class TestOperations implements Operations {

    @Override
    public Outcome acknowledge(String tag, AlarmKind kind, Operator by) {
      return changed(tag, kind, point -> point.acknowledge(kind, evaluated(tag)), by);
    }

    @Override
    public Outcome reset(String tag, AlarmKind kind, Operator by) {
      return changed(tag, kind, point -> point.reset(kind, evaluated(tag)), by);
    }

    private Instant evaluated(String tag) {
      return point(tag).snapshot().evaluated();
    }
  }

  private Operations.Outcome changed(
      String tag,
      AlarmKind kind,
      Function<MeasuringPoint, PointSnapshot> step,
      Operations.Operator by) {
    synchronized (points) {
      AlarmState before = state(tag, kind);
      stored(step.apply(point(tag)));
      operators.add(by);
      return state(tag, kind) == before
          ? Operations.Outcome.NOTHING_TO_DO
          : Operations.Outcome.DONE;
    }
  }

  /** Takes an alarm out of service, or puts it back. */
  public void outOfService(String tag, AlarmKind kind, boolean on, double atSeconds) {
    synchronized (points) {
      stored(point(tag).outOfService(kind, on, at(atSeconds)));
    }
  }

  /** Returns who has operated, in order. */
  public List<Operations.Operator> operators() {
    return List.copyOf(operators);
  }

  /** Returns the state of an alarm as the library keeps it. */
  public AlarmState state(String tag, AlarmKind kind) {
    synchronized (points) {
      return point(tag).snapshot().alarms().stream()
          .filter(alarm -> alarm.kind() == kind)
          .map(AlarmSnapshot::state)
          .findFirst()
          .orElseThrow();
    }
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
    synchronized (points) {
      return stored(point(tag).accept(sample, time));
    }
  }

  /** Lets a current arrive. */
  public PointSnapshot current(String tag, double milliamps, double atSeconds) {
    synchronized (points) {
      return stored(point(tag).accept(Sample.current(at(atSeconds), milliamps)));
    }
  }

  /** Lets time pass. */
  public PointSnapshot tick(String tag, double atSeconds) {
    synchronized (points) {
      return stored(point(tag).tick(at(atSeconds)));
    }
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
