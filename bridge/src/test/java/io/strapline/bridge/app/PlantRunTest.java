package io.strapline.bridge.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings.LevelProcess;
import io.strapline.bridge.config.SourceSettings.ShowsAs;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.bridge.config.SourceSettings.Simulated;
import io.strapline.bridge.model.Operations;
import io.strapline.bridge.model.Operations.Operator;
import io.strapline.bridge.model.Operations.Outcome;
import io.strapline.bridge.testing.LogLines;
import io.strapline.bridge.testing.ManualClock;
import io.strapline.bridge.testing.Plants;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmState;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.Sample;
import io.strapline.level.point.SourceAges;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.DiagnosticStatus;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.signal.NoReturnPolicy;
import io.strapline.level.signal.SignalSettings;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlantRunTest {

  private static final Instant START = Instant.parse("2026-03-01T06:00:00Z");

  private final ManualClock clock = new ManualClock(START);
  private final FakeParts parts = new FakeParts();
  private final PlantSettings plant = Plants.quiet(List.of(point("LT-101"), point("LT-102")));

  private static PointConfig point(String tag) {
    PointSettings settings =
        Plants.plumb(tag, 10)
            .ages(new SourceAges(10, 30))
            .signal(
                new SignalSettings(SignalSettings.PLAIN.gates(), NoReturnPolicy.fail(), 1, 1, 0))
            .build();
    // Never asked for samples here: the parts are fakes.
    Simulated unused =
        new Simulated(
            Signal.DISTANCE,
            ShowsAs.SIMULATED,
            1,
            1,
            0,
            new LevelProcess(1, 1, 2, 1, 1),
            List.of());
    return Plants.point(settings, unused);
  }

  private static Reading level(PlantRun run, String tag) {
    return run.store().view().point(tag).orElseThrow().level();
  }

  private PlantRun started(Evaluation.Factory evaluation) throws IOException {
    PlantRun run = PlantRun.of(plant, clock, parts, evaluation);
    run.start();
    return run;
  }

  private PlantRun started() throws IOException {
    return started(Evaluation::ofMeasuringPoint);
  }

  @Test
  void startsPublishersBeforeSourcesAndStopsInReverse() throws IOException {
    parts.publisher("opc").publisher("modbus").source("sim").source("poll");
    PlantRun run = started();
    assertEquals(List.of("fake://opc", "fake://modbus"), run.endpoints());
    run.close();
    run.close();
    assertEquals(
        List.of(
            "start opc",
            "start modbus",
            "start sim",
            "start poll",
            "close poll",
            "close sim",
            "close modbus",
            "close opc"),
        parts.events());
  }

  @Test
  void aPublisherThatCannotBindEndsTheStartAndLeavesNothingRunning() throws IOException {
    IOException taken = new IOException("port 502 is taken");
    parts.publisher("opc").publisher("modbus", taken, () -> {}).source("sim");
    PlantRun run = PlantRun.of(plant, clock, parts);
    assertSame(taken, assertThrows(IOException.class, run::start));
    assertEquals(List.of("start opc", "start modbus", "close modbus", "close opc"), parts.events());
  }

  @Test
  void startsOnceOnly() throws IOException {
    try (PlantRun run = started()) {
      assertThrows(IllegalStateException.class, run::start);
    }
  }

  @Test
  void aSourceThatDoesNotStartLeavesItsPointsBadAndTheOthersGoOn() throws IOException {
    Runnable broken =
        () -> {
          throw new StackOverflowError("broken on purpose");
        };
    parts.source("broken", Set.of(), broken).source("sim");
    try (PlantRun run = started()) {
      parts.sink().accept("LT-102", Sample.distance(START, 4));
      assertEquals(Quality.bad(Cause.WAITING_FOR_FIRST_SAMPLE), level(run, "LT-101").quality());
      assertEquals(Reading.good(6, START), level(run, "LT-102"));
    }
    assertEquals(List.of("start broken", "start sim", "close sim", "close broken"), parts.events());
  }

  @Test
  void whatAPartThrowsWhileStoppingKeepsNoOtherFromStopping() throws IOException {
    Runnable broken =
        () -> {
          throw new IllegalStateException("broken on purpose");
        };
    parts.publisher("opc").publisher("modbus", null, broken).source("sim");
    started().close();
    assertEquals(List.of("close sim", "close modbus", "close opc"), parts.events().subList(3, 6));
  }

  /** An evaluation that throws what it is told to at its next call of accept or tick. */
  private static final class Faulty implements Evaluation.Factory {
    private final AtomicReference<Throwable> next = new AtomicReference<>();
    private boolean evenFailing;

    @Override
    public Evaluation begin(PointSettings settings, Instant start) {
      Evaluation sound = Evaluation.ofMeasuringPoint(settings, start);
      if (!settings.tag().equals("LT-101")) {
        return sound;
      }
      return new Evaluation() {
        @Override
        public PointSnapshot accept(Sample sample, Instant now) {
          throwIfTold();
          return sound.accept(sample, now);
        }

        @Override
        public PointSnapshot tick(Instant now) {
          return sound.tick(now);
        }

        @Override
        public PointSnapshot fail(Cause cause, Instant now) {
          if (evenFailing) {
            evenFailing = false;
            throw new IllegalStateException("cannot even fail");
          }
          return sound.fail(cause, now);
        }

        @Override
        public PointSnapshot acknowledge(AlarmKind kind, Instant now) {
          return sound.acknowledge(kind, now);
        }

        @Override
        public PointSnapshot reset(AlarmKind kind, Instant now) {
          return sound.reset(kind, now);
        }

        @Override
        public PointSnapshot snapshot() {
          return sound.snapshot();
        }
      };
    }

    private void throwIfTold() {
      Throwable fault = next.getAndSet(null);
      if (fault instanceof Error error) {
        throw error;
      }
      if (fault instanceof RuntimeException exception) {
        throw exception;
      }
    }
  }

  @Test
  void anOperatorAcknowledgesTheAlarmThatStandsAndNothingElse() throws IOException {
    parts.source("sim");
    Operator operator = new Operator("shift leader", "test", "seen");
    try (PlantRun run = started()) {
      Operations operations = run.operations();
      parts.sink().accept("LT-101", Sample.distance(START, Double.NaN));
      assertEquals(Outcome.DONE, operations.acknowledge("LT-101", AlarmKind.BAD_SIGNAL, operator));
      assertEquals(
          AlarmState.ACKNOWLEDGED,
          run.store().view().point("LT-101").orElseThrow().alarms().get(0).state());
      assertEquals(
          Outcome.NOTHING_TO_DO, operations.acknowledge("LT-101", AlarmKind.BAD_SIGNAL, operator));
      assertEquals(
          Outcome.NOTHING_TO_DO, operations.reset("LT-101", AlarmKind.BAD_SIGNAL, operator));
      assertEquals(Outcome.UNKNOWN, operations.acknowledge("LT-101", AlarmKind.HIGH, operator));
      assertEquals(Outcome.UNKNOWN, operations.acknowledge("LT-9", AlarmKind.HIGH, operator));
    }
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void oneScanThatThrowsTurnsItsPointBadAndTheNextSampleMakesItGood(boolean error)
      throws IOException {
    parts.source("sim");
    Faulty faulty = new Faulty();
    try (PlantRun run = started(faulty)) {
      parts.sink().accept("LT-101", Sample.distance(START, 4));
      faulty.next.set(error ? new OutOfMemoryError("test") : new IllegalStateException("test"));
      parts.sink().accept("LT-101", Sample.distance(START.plusSeconds(1), 3));
      parts.sink().accept("LT-102", Sample.distance(START.plusSeconds(1), 3));
      assertEquals(Quality.bad(Cause.PROCESSING_ERROR), level(run, "LT-101").quality());
      assertEquals(7, level(run, "LT-102").usable().orElseThrow());
      assertEquals(1, run.faults("LT-101"));
      assertEquals(0, run.faults("LT-102"));
      parts.sink().accept("LT-101", Sample.distance(START.plusSeconds(2), 2));
      assertEquals(8, level(run, "LT-101").usable().orElseThrow());
    }
  }

  @Test
  void aPointThatCannotEvenSayThatItIsBadBeginsAnew() throws IOException {
    parts.source("sim");
    Faulty faulty = new Faulty();
    try (PlantRun run = started(faulty)) {
      parts.sink().accept("LT-101", Sample.distance(START, 4));
      faulty.next.set(new IllegalStateException("test"));
      faulty.evenFailing = true;
      parts.sink().accept("LT-101", Sample.distance(START, 4));
      assertTrue(level(run, "LT-101").quality().isBad());
      parts.sink().accept("LT-101", Sample.distance(START.plusSeconds(1), 4));
      assertEquals(6, level(run, "LT-101").usable().orElseThrow());
    }
  }

  @Test
  void faultsAreLoggedWhenTheyBeginAndWhenTheyAreOver() throws IOException {
    parts.source("sim");
    Faulty faulty = new Faulty();
    try (LogLines log = new LogLines(GuardedPoint.class);
        PlantRun run = started(faulty)) {
      for (int i = 0; i < 3; i++) {
        faulty.next.set(new IllegalStateException("test"));
        parts.sink().accept("LT-101", Sample.distance(START, 4));
      }
      assertEquals(3, run.faults("LT-101"));
      parts.sink().accept("LT-101", Sample.distance(START, 4));
      assertEquals(
          List.of(
              "ERROR LT-101 evaluation failed; the point is BAD until a scan succeeds",
              "INFO LT-101 is evaluated again; 3 scans have failed since the start"),
          log.lines());
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void aSampleThatIsNoNumberIsBadAndFinite(double value) throws IOException {
    parts.source("sim");
    try (PlantRun run = started()) {
      parts.sink().accept("LT-101", Sample.distance(START, 4));
      parts.sink().accept("LT-101", Sample.distance(START.plusSeconds(1), value));
      Reading level = level(run, "LT-101");
      assertEquals(Quality.bad(Cause.NOT_A_NUMBER), level.quality());
      assertTrue(Double.isFinite(level.value()));
      assertEquals(0, run.faults("LT-101"));
    }
  }

  @Test
  void aSilentSourceIsHeldThenBadByTheClockAlone() throws Exception {
    parts.source("sim");
    try (PlantRun run = started()) {
      parts.sink().accept("LT-101", Sample.distance(START, 4));
      clock.awaitWaiting(1);
      clock.set(START.plusSeconds(10));
      clock.awaitWaiting(1);
      assertTrue(level(run, "LT-101").quality().isGood());
      clock.set(START.plusMillis(10_250));
      clock.awaitWaiting(1);
      assertEquals(Quality.uncertain(Cause.SOURCE_SILENT_HELD), level(run, "LT-101").quality());
      clock.set(START.plusMillis(30_250));
      clock.awaitWaiting(1);
      assertEquals(Quality.bad(Cause.SOURCE_SILENT), level(run, "LT-101").quality());
      assertEquals(
          DiagnosticStatus.FAILURE, run.store().view().point("LT-101").orElseThrow().status());
    }
  }

  @Test
  void aClockThatGoesBackStopsNothingAndHidesNoSilence() throws Exception {
    parts.source("sim");
    try (PlantRun run = started()) {
      parts.sink().accept("LT-101", Sample.distance(START, 4));
      clock.awaitWaiting(1);
      clock.set(START.minus(Duration.ofHours(1)));
      parts.sink().accept("LT-101", Sample.distance(START.plusSeconds(1), 3));
      assertEquals(7, level(run, "LT-101").usable().orElseThrow());
      clock.set(START.plusSeconds(40));
      clock.awaitWaiting(1);
      assertEquals(Quality.bad(Cause.SOURCE_SILENT), level(run, "LT-101").quality());
    }
  }

  @Test
  void aPointInTheTimeOfItsSourceIsNotJudgedByThePlantsClock() throws Exception {
    Instant then = Instant.parse("2014-01-09T14:00:00Z");
    parts.source("replay", Set.of("LT-101"), () -> {});
    try (PlantRun run = started()) {
      parts.sink().accept("LT-101", Sample.distance(then, 4));
      clock.awaitWaiting(1);
      clock.advance(Duration.ofHours(1));
      clock.awaitWaiting(1);
      assertEquals(Reading.good(6, then), level(run, "LT-101"));
      parts.sink().elapse("LT-101", then.plusSeconds(11));
      assertEquals(Quality.uncertain(Cause.SOURCE_SILENT_HELD), level(run, "LT-101").quality());
      parts.sink().elapse("LT-101", then.plusSeconds(31));
      assertEquals(Quality.bad(Cause.SOURCE_SILENT), level(run, "LT-101").quality());
      parts.sink().fail("LT-101", Cause.PROCESSING_ERROR, "test");
      assertEquals(
          then.plusSeconds(31), run.store().view().point("LT-101").orElseThrow().evaluated());
    }
  }

  @Test
  void newsOfADeviceThatCannotBeReachedIsLoggedOncePerChange() throws IOException {
    parts.source("poll");
    try (LogLines log = new LogLines(GuardedPoint.class);
        PlantRun run = started()) {
      parts.sink().fail("LT-101", Cause.NO_COMMUNICATION, "connection refused");
      parts.sink().fail("LT-101", Cause.NO_COMMUNICATION, "connection refused");
      PointSnapshot cut = run.store().view().point("LT-101").orElseThrow();
      assertTrue(cut.level().quality().isBad());
      assertTrue(
          cut.diagnostics().stream().anyMatch(d -> d.cause() == Cause.NO_COMMUNICATION),
          () -> cut.diagnostics().toString());
      parts.sink().accept("LT-101", Sample.distance(START, 4));
      parts.sink().accept("LT-101", Sample.distance(START, 4));
      assertEquals(
          List.of(
              "WARN LT-101 source down: no communication with the device (connection refused)",
              "INFO LT-101 source up"),
          log.lines());
    }
  }

  @Test
  void aSampleForNoPointOfThePlantIsIgnoredAndToldOnce() throws IOException {
    parts.source("sim");
    try (LogLines log = new LogLines(SampleRouter.class);
        PlantRun run = started()) {
      parts.sink().accept("LT-999", Sample.distance(START, 4));
      parts.sink().fail("LT-999", Cause.NO_COMMUNICATION, "x");
      assertEquals(1, log.lines().size());
      assertFalse(run.store().view().points().containsKey("LT-999"));
    }
  }

  @Test
  void aListenerThatThrowsStopsNeitherThePointNorOtherListeners() throws IOException {
    parts.source("sim");
    List<PointSnapshot> heard = new ArrayList<>();
    try (PlantRun run = started()) {
      run.store()
          .listen(
              snapshot -> {
                throw new IllegalStateException("broken on purpose");
              });
      run.store().listen(heard::add);
      parts.sink().accept("LT-101", Sample.distance(START, 4));
      assertEquals(Reading.good(6, START), level(run, "LT-101"));
      assertEquals(1, heard.size());
      assertEquals(0, run.faults("LT-101"));
    }
  }
}
