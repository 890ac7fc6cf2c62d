package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.model.SnapshotStore.PlantView;
import io.strapline.level.point.PointSnapshot;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.LongSupplier;

/**
 * Remembers when the snapshot of each point was first seen, by real time, whatever the plant's
 * clock does. Safe for any thread.
 */
final class Freshness {

  private final Map<String, Seen> seen = new ConcurrentHashMap<>();
  private final LongSupplier nanos;

  Freshness(LongSupplier nanos) {
    this.nanos = nanos;
  }

  private record Seen(PointSnapshot snapshot, long nanos) {}

  /** Looks at the plant as it stands. */
  void look(PlantView view) {
    view.points().forEach(this::look);
  }

  private void look(String tag, PointSnapshot snapshot) {
    Seen last = seen.get(tag);
    if (last == null || last.snapshot() != snapshot) {
      seen.put(tag, new Seen(snapshot, nanos.getAsLong()));
    }
  }

  /** Returns how long ago the point's snapshot was first seen; infinite when there is none. */
  double unseenSeconds(String tag) {
    Seen last = seen.get(tag);
    return last == null ? Double.POSITIVE_INFINITY : (nanos.getAsLong() - last.nanos()) / 1e9;
  }
}
