package io.strapline.bridge.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

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
              "INFO LT-101 quality start -> GOOD NONE",
              "WARN LT-101 alarm HIGH NORM -> UNACK at level 8.250 m GOOD",
              "WARN LT-101 quality GOOD NONE -> BAD PROCESSING_ERROR:"
                  + " evaluation failed, see the log",
              "WARN LT-101 NE 107 status NORMAL -> FAILURE",
              "WARN LT-101 alarm BAD_SIGNAL NORM -> UNACK at level 8.250 m BAD"),
          log.lines());
    }
  }
}
