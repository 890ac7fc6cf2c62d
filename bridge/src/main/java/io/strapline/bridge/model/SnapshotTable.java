package io.strapline.bridge.model;

import io.strapline.level.point.PointSnapshot;
import java.util.AbstractMap;
import java.util.AbstractSet;
import java.util.Arrays;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The snapshots of a fixed set of points by tag. Immutable; {@link #with} shares all but one small
 * chunk with the table it is made from, so that an update of one point costs the same in a plant of
 * five points and of five thousand.
 */
final class SnapshotTable extends AbstractMap<String, PointSnapshot> {

  private static final int CHUNK = 64;

  private final Map<String, Integer> places;
  private final PointSnapshot[][] chunks;

  private SnapshotTable(Map<String, Integer> places, PointSnapshot[][] chunks) {
    this.places = places;
    this.chunks = chunks;
  }

  /** Returns a table of these snapshots, in this order; of two with one tag the later counts. */
  static SnapshotTable of(List<PointSnapshot> snapshots) {
    Map<String, PointSnapshot> byTag = new LinkedHashMap<>();
    snapshots.forEach(snapshot -> byTag.put(snapshot.tag(), snapshot));
    PointSnapshot[] all = byTag.values().toArray(new PointSnapshot[0]);
    Map<String, Integer> places = new LinkedHashMap<>();
    byTag.keySet().forEach(tag -> places.put(tag, places.size()));
    PointSnapshot[][] chunks = new PointSnapshot[(all.length + CHUNK - 1) / CHUNK][];
    for (int i = 0; i < chunks.length; i++) {
      chunks[i] = Arrays.copyOfRange(all, i * CHUNK, Math.min(all.length, (i + 1) * CHUNK));
    }
    return new SnapshotTable(places, chunks);
  }

  /**
   * Returns this table with one point's snapshot exchanged.
   *
   * @throws IllegalArgumentException if the point is not in the table
   */
  SnapshotTable with(PointSnapshot snapshot) {
    Integer place = places.get(snapshot.tag());
    if (place == null) {
      throw new IllegalArgumentException(
          "SnapshotStore has no point "
              + snapshot.tag()
              + "; give its first snapshot when the store is made");
    }
    PointSnapshot[][] next = chunks.clone();
    next[place / CHUNK] = chunks[place / CHUNK].clone();
    next[place / CHUNK][place % CHUNK] = snapshot;
    return new SnapshotTable(places, next);
  }

  @Override
  public @Nullable PointSnapshot get(@Nullable Object tag) {
    Integer place = places.get(tag);
    return place == null ? null : at(place);
  }

  @Override
  public boolean containsKey(@Nullable Object tag) {
    return places.containsKey(tag);
  }

  @Override
  public int size() {
    return places.size();
  }

  private PointSnapshot at(int place) {
    return chunks[place / CHUNK][place % CHUNK];
  }

  @Override
  public Set<Entry<String, PointSnapshot>> entrySet() {
    return new AbstractSet<>() {
      @Override
      public Iterator<Entry<String, PointSnapshot>> iterator() {
        return places.entrySet().stream()
            .map(place -> Map.entry(place.getKey(), at(place.getValue())))
            .iterator();
      }

      @Override
      public int size() {
        return places.size();
      }
    };
  }
}
