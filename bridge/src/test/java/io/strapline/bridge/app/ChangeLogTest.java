package io.strapline.bridge.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.testing.LogLines;
import io.strapline.bridge.testing.Plants;
import io.strapline.level.alarm.AlarmHandling;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.alarm.AlarmSettings;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.Cause;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class ChangeLogTest {

  private static final Instant START = Instant.parse("2026-03-01T06:00:00Z");

  private final MeasuringPoint point =
      MeasuringPoint.of(
          Plants.plumb("LT-101", 10)
              .alarms(
                  new AlarmSettings(
                      List.of(new AlarmLimit(AlarmKind.HIGH, 8, 0.5, 0, 0, AlarmHandling.DEFAULT)),
                      0,
                      AlarmHandling.DEFAULT))
              .build(),
          START);

  @Test
  void waitingForTheFirstSampleIsNoNews() {
    try (LogLines log = new LogLines(ChangeLog.class)) {
      ChangeLog changes = new ChangeLog();
      changes.report(point.snapshot());
      changes.report(point.accept(Sample.distance(START.plusSeconds(1), 4)));
      assertEquals(1, log.lines().size());
      assertTrue(
          log.lines().get(0).matches("INFO LT-101 BAD WAITING_FOR_FIRST_SAMPLE.* -> GOOD"),
          () -> log.lines().toString());
    }
  }

  @Test
  void oneLinePerChangeAndNoneWhileAllStays() {
    try (LogLines log = new LogLines(ChangeLog.class)) {
      ChangeLog changes = new ChangeLog();
      for (int i = 1; i <= 5; i++) {
        changes.report(point.accept(Sample.distance(START.plusSeconds(i), 4)));
      }
      changes.report(point.accept(Sample.distance(START.plusSeconds(6), 1.75)));
      changes.report(point.accept(Sample.distance(START.plusSeconds(7), 1.75)));
      changes.report(point.fail(Cause.PROCESSING_ERROR, START.plusSeconds(8)));
      changes.report(point.tick(START.plusSeconds(9)));
      assertEquals(
          List.of(
              "INFO LT-101 start -> GOOD",
              "WARN LT-101 alarm HIGH NORM -> UNACK at level 8.250 m GOOD",
              "WARN LT-101 GOOD -> BAD PROCESSING_ERROR (NE 107 F): evaluation failed, see the log",
              "WARN LT-101 alarm BAD_SIGNAL NORM -> UNACK at level 8.250 m BAD"),
          log.lines());
    }
  }
}
