package io.strapline.bridge.model;

import io.strapline.level.point.PointSnapshot;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;

/**
 * The latest snapshot of every point. Each update swaps one immutable view of the whole plant, so a
 * reader never sees halves of two updates. Safe for any thread.
 */
public final class SnapshotStore {

  private final AtomicReference<State> state;
  private final List<GuardedListener> listeners = new CopyOnWriteArrayList<>();

  /** Makes a store with the first snapshot of every point, in the plant's order. */
  public SnapshotStore(List<PointSnapshot> first) {
    state = new AtomicReference<>(State.of(0, SnapshotTable.of(first)));
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
      points = Collections.unmodifiableMap(points);
    }

    /** Returns the snapshot of one point. */
    public Optional<PointSnapshot> point(String tag) {
      return Optional.ofNullable(points.get(tag));
    }
  }

  private record State(SnapshotTable table, PlantView view) {

    static State of(long generation, SnapshotTable table) {
      return new State(table, new PlantView(generation, table));
    }

    State with(PointSnapshot snapshot) {
      return of(view.generation() + 1, table.with(snapshot));
    }
  }

  /** Returns the whole plant as it stands. */
  public PlantView view() {
    return Objects.requireNonNull(state.get()).view();
  }

  /**
   * Puts a point's new snapshot in place and tells the listeners, on the calling thread. A listener
   * that throws is logged when it begins to and when it has stopped; the others are told all the
   * same.
   *
   * @throws IllegalArgumentException if the store was made without this point
   */
  public void update(PointSnapshot snapshot) {
    state.updateAndGet(old -> old.with(snapshot));
    listeners.forEach(listener -> listener.accept(snapshot));
  }

  /** Adds a listener; it must be quick and should not throw. */
  public void listen(Consumer<PointSnapshot> listener) {
    listeners.add(new GuardedListener(listener));
  }
}
