package io.strapline.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.model.SnapshotStore;
import io.strapline.bridge.testing.Plants;
import io.strapline.bridge.testing.UprightCylinder;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.Cause;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.Instant;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LiveTableTest {

  private static final Instant START = Instant.parse("2026-03-01T06:00:00Z");

  private final MeasuringPoint tank =
      MeasuringPoint.of(
          Plants.plumb("LT-201", 10).vessel(new UprightCylinder(4, 10)).density(1350).build(),
          START);

  private List<String> lines() {
    return LiveTable.lines(new SnapshotStore(List.of(tank.snapshot())).view());
  }

  /** 10 m - 7.5 m = 2.5 m; 4 m2 * 2.5 m = 10 m3; 10 m3 * 1350 kg/m3 = 13.5 t. */
  @Test
  void showsLevelVolumeAndMassOfAGoodPoint() {
    tank.accept(Sample.distance(START.plusSeconds(1), 7.5));
    String line = lines().get(1);
    assertTrue(line.startsWith("LT-201"), line);
    assertTrue(line.matches("LT-201 +2\\.500 +[0-9.]* +10\\.00 +13\\.50 GOOD +- +0\\.0"), line);
  }

  @Test
  void showsNoNumberWhereTheValueMustNotBeUsed() {
    tank.accept(Sample.distance(START.plusSeconds(1), 7.5));
    tank.fail(Cause.PROCESSING_ERROR, START.plusSeconds(2));
    String line = lines().get(1);
    assertFalse(line.contains("2.500"), line);
    assertFalse(line.contains("13.50"), line);
    assertTrue(line.contains("---"), line);
    assertTrue(line.contains("BAD       F"), line);
    assertTrue(line.contains("PROCESSING_ERROR"), line);
    assertTrue(line.endsWith("BAD_SIGNAL UNACK"), line);
  }

  @Test
  void aLargePlantIsCutToWhatFitsAndSaysSo() {
    SnapshotStore store =
        new SnapshotStore(
            IntStream.range(0, 50)
                .mapToObj(i -> MeasuringPoint.of(Plants.plumb("LT-" + i, 10).build(), START))
                .map(MeasuringPoint::snapshot)
                .toList());
    List<String> lines = LiveTable.lines(store.view());
    assertEquals(LiveTable.MOST_POINTS + 2, lines.size());
    assertTrue(lines.get(lines.size() - 1).startsWith("and 20 points more"));
  }

  @Test
  void theScreenDrawsOverItsOwnLinesAndLetsTheLogScrollBy() {
    StringWriter text = new StringWriter();
    LiveScreen screen = new LiveScreen(new PrintWriter(text));
    screen.draw(List.of(), List.of("a", "b"));
    screen.draw(List.of("log line"), List.of("c", "d"));
    String second = text.toString().substring(text.toString().indexOf("b\n") + 2);
    assertTrue(second.contains("\u001b[2A\r\u001b[Jlog line\n"), second);
    assertTrue(second.indexOf("log line") < second.indexOf("c\nd\n"), second);
  }
}
