package io.strapline.bridge.source.replay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings.Pace;
import io.strapline.bridge.config.SourceSettings.Replay;
import io.strapline.bridge.config.SourceSettings.ReplayFormat;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.bridge.config.SourceSettings.ValueColumn;
import io.strapline.bridge.testing.Eventually;
import io.strapline.bridge.testing.ManualClock;
import io.strapline.bridge.testing.Plants;
import io.strapline.bridge.testing.RecordingSink;
import io.strapline.bridge.testing.Refused;
import io.strapline.level.point.Sample;
import io.strapline.level.point.SourceAges;
import io.strapline.level.signal.NoReturnPolicy;
import io.strapline.level.signal.SignalSettings;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ReplaySourceTest {

  private static final Instant NOW = Instant.parse("2026-03-01T06:00:00Z");
  private static final Instant THEN = Instant.parse("2014-01-09T14:00:00Z");

  @TempDir Path folder;

  private final ManualClock clock = new ManualClock(NOW);
  private final RecordingSink sink = new RecordingSink();

  private ReplaySource source(Pace pace, Signal signal, String... rows) throws IOException {
    Path file = folder.resolve("series.csv");
    Files.writeString(file, "t,v\n" + String.join("\n", rows));
    ReplayFormat format =
        new ReplayFormat(',', '.', "t", Optional.empty(), "UTC", new ValueColumn("v", 1));
    Replay replay = new Replay(signal, file, format, pace);
    PointConfig point =
        Plants.point(
            Plants.plumb("LT-202", 10)
                .ages(new SourceAges(10, 30))
                .signal(
                    new SignalSettings(
                        SignalSettings.PLAIN.gates(), NoReturnPolicy.hold(5), 1, 1, 0))
                .build(),
            replay);
    return ReplaySource.open(point, replay, clock);
  }

  private static String row(int secondsAfterThen, String value) {
    return THEN.plusSeconds(secondsAfterThen) + "," + value;
  }

  @Test
  void keepsTheSpacingOfTheFileAndBeginsNow() throws Exception {
    try (ReplaySource source =
        source(Pace.RECORDED, Signal.LEVEL, row(0, "1"), row(3, "2"), row(4, ""), row(5, "3"))) {
      source.start(sink);
      clock.awaitWaiting(1);
      clock.advance(Duration.ofSeconds(3));
      clock.awaitWaiting(1);
      assertEquals(2, sink.samples().size());
      clock.advance(Duration.ofSeconds(2));
      Eventually.holds("the last sample", () -> sink.samples().size() == 3);
    }
    assertEquals(
        List.of(
            Sample.level(NOW, 1),
            Sample.level(NOW.plusSeconds(3), 2),
            Sample.level(NOW.plusSeconds(5), 3)),
        sink.samples());
    assertEquals(List.of(), sink.elapsed());
  }

  @Test
  void fastestDeliversTheTimesOfTheFileWithoutWaiting() throws Exception {
    try (ReplaySource source =
        source(Pace.FASTEST, Signal.DISTANCE, row(0, "1"), row(1, "2"), row(2, "2.5"))) {
      assertEquals(Set.of("LT-202"), source.tagsInOwnTime());
      source.start(sink);
      Eventually.holds("three samples", () -> sink.samples().size() == 3);
    }
    assertEquals(
        List.of(
            Sample.distance(THEN, 1),
            Sample.distance(THEN.plusSeconds(1), 2),
            Sample.distance(THEN.plusSeconds(2), 2.5)),
        sink.samples());
  }

  /** Hold 5 s, ages 10 and 30 s, NE 43 recovery 2 s and confirmation 4 s, all within the gap. */
  @Test
  void fastestLetsTimePassAtEveryAgeInAGapAndAtTheEnd() throws Exception {
    try (ReplaySource source = source(Pace.FASTEST, Signal.LEVEL, row(0, "1"), row(20, "2"))) {
      source.start(sink);
      Eventually.holds("the end", () -> sink.elapsed().size() >= 9);
    }
    List<Long> millis =
        sink.elapsed().stream().map(time -> Duration.between(THEN, time).toMillis()).toList();
    assertEquals(
        List.of(2001L, 4001L, 5001L, 10_001L, 22_001L, 24_001L, 25_001L, 30_001L, 50_001L), millis);
  }

  @ParameterizedTest
  @EnumSource(Pace.class)
  void aTimeThatGoesBackIsDeliveredAsItIs(Pace pace) throws Exception {
    try (ReplaySource source =
        source(pace, Signal.LEVEL, row(0, "1"), row(-60, "2"), row(0, "3"))) {
      source.start(sink);
      Eventually.holds("three samples", () -> sink.samples().size() == 3);
    }
    Duration back = Duration.between(sink.samples().get(0).time(), sink.samples().get(1).time());
    assertEquals(Duration.ofMinutes(-1), back);
  }

  @ParameterizedTest
  @EnumSource(Signal.class)
  void deliversEveryKindOfValue(Signal signal) throws Exception {
    try (ReplaySource source = source(Pace.FASTEST, signal, row(0, "12"))) {
      source.start(sink);
      Eventually.holds("a sample", () -> sink.samples().size() == 1);
    }
    assertEquals(signal.name(), sink.samples().get(0).kind().name());
  }

  @Test
  void aFileThatIsMissingIsToldBeforeAnythingRuns() throws Exception {
    ReplaySource source = source(Pace.RECORDED, Signal.LEVEL, row(0, "1"));
    Files.delete(folder.resolve("series.csv"));
    source.start(sink);
    Eventually.holds("the failure told", () -> !sink.failures().isEmpty());
    source.close();
    Replay absent =
        new Replay(
            Signal.LEVEL,
            folder.resolve("series.csv"),
            new ReplayFormat(',', '.', "t", Optional.empty(), "UTC", new ValueColumn("v", 1)),
            Pace.RECORDED);
    PointConfig point = Plants.point(Plants.plumb("LT-202", 10).build(), absent);
    String refused =
        Refused.message(IOException.class, () -> ReplaySource.open(point, absent, clock));
    assertTrue(refused.contains("no such file"), refused);
  }

  @Test
  void closesWhileItWaitsAndTwice() throws Exception {
    ReplaySource source = source(Pace.RECORDED, Signal.LEVEL, row(0, "1"), row(3600, "2"));
    source.start(sink);
    clock.awaitWaiting(1);
    source.close();
    source.close();
    clock.advance(Duration.ofDays(1));
    assertEquals(1, sink.samples().size());
  }
}
