package io.strapline.bridge.app;

import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.model.Operations;
import io.strapline.bridge.model.PlantAccess;
import io.strapline.bridge.model.PlantClock;
import io.strapline.bridge.model.Publisher;
import io.strapline.bridge.model.RealClock;
import io.strapline.bridge.model.SnapshotStore;
import io.strapline.bridge.model.Source;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.PointSnapshot;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A plant that runs: sources deliver to measuring points, whose snapshots go into the store, which
 * publishers serve.
 *
 * <p>Starts in order: publishers first, so that a port that is taken ends the start before anything
 * runs; then the ticker; then the sources. Stops in reverse. A part that does not stop in time is
 * left behind, so that stopping takes at most {@link #STOP_TIME} per part. What one part throws
 * reaches no other. Safe for any thread.
 */
public final class PlantRun implements AutoCloseable {

  /** Longest wait for one part to stop. */
  static final Duration STOP_TIME = Duration.ofSeconds(5);

  private static final Logger LOG = LoggerFactory.getLogger(PlantRun.class);

  private final PlantSettings plant;
  private final PlantClock clock;
  private final Map<String, GuardedPoint> points = new LinkedHashMap<>();
  private final SnapshotStore store;
  private final Operations operations;
  private final List<Publisher> publishers;
  private final List<Source> sources;
  private final SampleRouter router;
  private final Ticker ticker;
  private final Deque<Running> running = new ArrayDeque<>();
  private boolean started;

  private PlantRun(
      PlantSettings plant, PlantClock clock, PlantParts parts, Evaluation.Factory evaluation)
      throws IOException {
    this.plant = plant;
    this.clock = clock;
    Instant start = clock.instant();
    for (PointConfig point : plant.points()) {
      PointSettings settings = CompiledVessel.in(point.point());
      points.put(point.tag(), new GuardedPoint(settings, evaluation, start));
    }
    store = new SnapshotStore(first());
    operations = new PlantOperations(points, clock);
    publishers = List.copyOf(parts.publishers(plant, new PlantAccess(store, clock, operations)));
    sources = List.copyOf(parts.sources(plant, clock));
    store.listen(new FirstValue());
    connectPoints();
    router = new SampleRouter(points, clock);
    ticker = new Ticker(clock, ticked(clock));
  }

  private record Running(String name, AutoCloseable part) {}

  /**
   * Puts a plant together; nothing runs yet.
   *
   * @throws IOException naming a file or address that a part needs and cannot have
   * @throws IllegalArgumentException naming a point whose settings contradict its source
   */
  public static PlantRun of(PlantSettings plant, PlantClock clock, PlantParts parts)
      throws IOException {
    return of(plant, clock, parts, Evaluation::ofMeasuringPoint);
  }

  /** As {@link #of(PlantSettings, PlantClock, PlantParts)}, with another evaluation, for tests. */
  static PlantRun of(
      PlantSettings plant, PlantClock clock, PlantParts parts, Evaluation.Factory evaluation)
      throws IOException {
    return new PlantRun(plant, clock, parts, evaluation);
  }

  private List<PointSnapshot> first() {
    return points.values().stream().map(GuardedPoint::snapshot).toList();
  }

  private void connectPoints() {
    Set<String> ownTime = new HashSet<>();
    sources.forEach(source -> ownTime.addAll(source.tagsInOwnTime()));
    points.forEach((tag, point) -> point.connect(store::update, ownTime.contains(tag)));
  }

  private List<Consumer<Instant>> ticked(PlantClock clock) {
    List<Consumer<Instant>> all = new ArrayList<>();
    points.values().forEach(point -> all.add(point::tick));
    if (clock instanceof RealClock real) {
      all.add(new WallClockWatch(real));
    }
    return all;
  }

  /**
   * Starts everything; called once.
   *
   * @throws IOException naming the address that cannot be bound; nothing is left running then
   */
  public synchronized void start() throws IOException {
    if (started) {
      throw new IllegalStateException("PlantRun.start was called twice; make a new PlantRun");
    }
    started = true;
    try {
      startPublishers();
    } catch (IOException | RuntimeException | Error refused) {
      close();
      throw refused;
    }
    // Publishers may take seconds to start, and plant time may run fast: nothing is late yet.
    points.values().forEach(point -> point.begin(clock.instant()));
    running.push(new Running("ticker", ticker));
    ticker.start();
    sources.forEach(this::startSource);
    LOG.info("{} runs with {} points", plant.name(), points.size());
  }

  private void startPublishers() throws IOException {
    for (Publisher publisher : publishers) {
      // Pushed before it starts: one that fails half-way is closed too.
      running.push(new Running(name(publisher), publisher));
      publisher.start();
      LOG.info("{} serves at {}", name(publisher), publisher.endpoint());
    }
  }

  private void startSource(Source source) {
    running.push(new Running(name(source), source));
    try {
      source.start(router);
    } catch (Throwable fault) {
      LOG.error("{} did not start; its points stay BAD, the others go on", name(source), fault);
    }
  }

  private static String name(Object part) {
    Class<?> type = part.getClass();
    return type.isAnonymousClass() ? type.getName() : type.getSimpleName();
  }

  /** Returns where the snapshots are. */
  public SnapshotStore store() {
    return store;
  }

  /** Returns what operators may do. */
  public Operations operations() {
    return operations;
  }

  /** Returns where clients connect, in the order of the publishers; valid after the start. */
  public List<String> endpoints() {
    return publishers.stream().map(Publisher::endpoint).toList();
  }

  /** Returns how many scans of a point have thrown since the start; zero for an unknown tag. */
  public long faults(String tag) {
    GuardedPoint point = points.get(tag);
    return point == null ? 0 : point.faults();
  }

  /** Stops everything in reverse order; safe to call twice and without a start. */
  @Override
  public synchronized void close() {
    boolean ran = !running.isEmpty();
    boolean clean = true;
    while (!running.isEmpty()) {
      Running part = running.pop();
      clean &= Stopping.within(STOP_TIME, part.name(), part.part());
    }
    if (ran) {
      LOG.info("{} stopped{}", plant.name(), clean ? "" : ", but not cleanly");
    }
  }
}
