package io.strapline.bridge.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.model.SnapshotStore.PlantView;
import io.strapline.bridge.testing.Plants;
import io.strapline.bridge.testing.Refused;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.PointSnapshot;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SnapshotStoreTest {

  private static final Instant START = Instant.parse("2026-03-01T06:00:00Z");

  /** More than two chunks of the table, and no whole number of them. */
  private final List<MeasuringPoint> points =
      IntStream.range(0, 150)
          .mapToObj(i -> MeasuringPoint.of(Plants.plumb("LT-" + i, 10).build(), START))
          .toList();

  private final SnapshotStore store =
      new SnapshotStore(points.stream().map(MeasuringPoint::snapshot).toList());

  @Test
  void keepsTheOrderOfThePlant() {
    List<String> tags = points.stream().map(point -> point.settings().tag()).toList();
    assertEquals(tags, List.copyOf(store.view().points().keySet()));
    assertEquals(tags, store.view().points().values().stream().map(PointSnapshot::tag).toList());
  }

  @Test
  void aViewOnceTakenDoesNotChange() {
    PlantView before = store.view();
    PointSnapshot first = before.points().get("LT-70");
    PointSnapshot next = points.get(70).tick(START.plusSeconds(1));
    store.update(next);
    assertSame(first, before.point("LT-70").orElseThrow());
    assertSame(next, store.view().point("LT-70").orElseThrow());
    assertEquals(before.generation() + 1, store.view().generation());
  }

  @Test
  void anUpdateLeavesEveryOtherPointAsItIs() {
    PlantView before = store.view();
    store.update(points.get(149).tick(START.plusSeconds(1)));
    for (MeasuringPoint point : points.subList(0, 149)) {
      String tag = point.settings().tag();
      assertSame(before.points().get(tag), store.view().points().get(tag));
    }
  }

  @Test
  void nobodyCanChangeAView() {
    PlantView view = store.view();
    assertThrows(UnsupportedOperationException.class, () -> view.points().clear());
    assertEquals(Optional.empty(), view.point("LT-none"));
  }

  @Test
  void refusesAPointThatItWasNotMadeWith() {
    PointSnapshot stranger =
        MeasuringPoint.of(Plants.plumb("LT-999", 10).build(), START).snapshot();
    String refused = Refused.message(IllegalArgumentException.class, () -> store.update(stranger));
    assertTrue(refused.contains("LT-999"), refused);
  }

  @Test
  void aListenerThatThrowsHurtsNoOther() {
    List<PointSnapshot> heard = new ArrayList<>();
    store.listen(
        snapshot -> {
          throw new AssertionError("listener broken on purpose");
        });
    store.listen(heard::add);
    PointSnapshot next = points.get(3).tick(START.plusSeconds(1));
    store.update(next);
    store.update(next);
    assertEquals(List.of(next, next), heard);
  }
}
