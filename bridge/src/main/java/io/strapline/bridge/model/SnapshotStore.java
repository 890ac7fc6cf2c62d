package io.strapline.bridge.model;

import io.strapline.level.point.PointSnapshot;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/**
 * The latest snapshot of every point. Each update swaps one immutable view of the whole plant, so a
 * reader never sees halves of two updates. Safe for any thread.
 */
public final class SnapshotStore {

  private final AtomicReference<PlantView> view;
  private final List<Consumer<PointSnapshot>> listeners = new CopyOnWriteArrayList<>();

  /** Makes a store with the first snapshot of every point, in the plant's order. */
  public SnapshotStore(List<PointSnapshot> first) {
    Map<String, PointSnapshot> points = new LinkedHashMap<>();
    first.forEach(snapshot -> points.put(snapshot.tag(), snapshot));
    view = new AtomicReference<>(new PlantView(0, points));
  }

  /**
   * All points at one moment. Immutable.
   *
   * @param generation number of updates since the start
   * @param points latest snapshot by tag, in the plant's order
   */
  public record PlantView(long generation, Map<String, PointSnapshot> points) {

    /** Takes an unmodifiable view of a map that nobody else changes. */
    public PlantView {
      points = java.util.Collections.unmodifiableMap(points);
    }

    /** Returns the snapshot of one point. */
    public Optional<PointSnapshot> point(String tag) {
      return Optional.ofNullable(points.get(tag));
    }
  }

  /** Returns the whole plant as it stands. */
  public PlantView view() {
    return Objects.requireNonNull(view.get());
  }

  /** Puts a point's new snapshot in place and tells the listeners, on the calling thread. */
  public void update(PointSnapshot snapshot) {
    UnaryOperator<PlantView> swap =
        old -> {
          Map<String, PointSnapshot> points = new LinkedHashMap<>(old.points());
          points.put(snapshot.tag(), snapshot);
          return new PlantView(old.generation() + 1, points);
        };
    view.updateAndGet(swap);
    listeners.forEach(listener -> listener.accept(snapshot));
  }

  /** Adds a listener; it must be quick and must not throw. */
  public void listen(Consumer<PointSnapshot> listener) {
    listeners.add(listener);
  }
}
