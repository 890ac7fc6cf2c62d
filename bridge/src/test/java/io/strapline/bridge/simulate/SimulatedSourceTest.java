package io.strapline.bridge.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings.LevelProcess;
import io.strapline.bridge.config.SourceSettings.ShowsAs;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.bridge.config.SourceSettings.Simulated;
import io.strapline.bridge.testing.ManualClock;
import io.strapline.bridge.testing.Plants;
import io.strapline.bridge.testing.RecordingSink;
import io.strapline.bridge.testing.Refused;
import io.strapline.level.point.Sample;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SimulatedSourceTest {

  private static final Instant START = Instant.parse("2026-03-01T06:00:00Z");

  private final ManualClock clock = new ManualClock(START);
  private final RecordingSink sink = new RecordingSink();

  private static PointConfig point(String tag, double intervalSeconds) {
    LevelProcess process = new LevelProcess(1, 1, 5, 0.1, 0.1);
    return Plants.point(
        Plants.plumb(tag, 10).build(),
        new Simulated(
            Signal.DISTANCE, ShowsAs.SIMULATED, 1, intervalSeconds, 0, process, List.of()));
  }

  @Test
  void pacesEveryPointByItsOwnInterval() throws InterruptedException {
    List<PointConfig> points = List.of(point("LT-1", 1), point("LT-2", 2));
    try (SimulatedSource source = new SimulatedSource(points, clock)) {
      source.start(sink);
      clock.advanceInSteps(Duration.ofMillis(500), 8, 1);
    }
    List<Long> times =
        sink.samples().stream()
            .map(sample -> Duration.between(START, sample.time()).toMillis())
            .toList();
    assertEquals(
        List.of(0L, 0L, 1000L, 2000L, 2000L, 3000L, 4000L, 4000L),
        times.stream().sorted().toList());
  }

  @Test
  void leavesOutTimesForWhichTheMachineWasTooSlowButStaysOnItsGrid() throws InterruptedException {
    try (SimulatedSource source = new SimulatedSource(List.of(point("LT-1", 1)), clock)) {
      source.start(sink);
      clock.awaitWaiting(1);
      clock.advance(Duration.ofMillis(3_600_500));
      clock.awaitWaiting(1);
    }
    List<Sample> samples = sink.samples();
    assertTrue(samples.size() < 12, () -> samples.size() + " samples for an hour that was missed");
    assertEquals(START.plusSeconds(3600), samples.get(samples.size() - 1).time());
    samples.forEach(sample -> assertEquals(0, sample.time().toEpochMilli() % 1000));
  }

  @Test
  void deliversNothingMoreOnceItIsClosed() throws InterruptedException {
    SimulatedSource source = new SimulatedSource(List.of(point("LT-1", 1)), clock);
    source.start(sink);
    clock.awaitWaiting(1);
    source.close();
    source.close();
    clock.advance(Duration.ofSeconds(60));
    assertEquals(1, sink.samples().size());
  }

  @Test
  void closesWithoutAStart() {
    new SimulatedSource(List.of(point("LT-1", 1)), clock).close();
    assertEquals(List.of(), sink.samples());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY, 0.9e-6})
  void refusesAnIntervalThatIsNone(double seconds) {
    List<PointConfig> points = List.of(point("LT-1", seconds));
    String refused =
        Refused.message(IllegalArgumentException.class, () -> new SimulatedSource(points, clock));
    assertTrue(refused.startsWith("Simulated.interval = "), refused);
  }
}
