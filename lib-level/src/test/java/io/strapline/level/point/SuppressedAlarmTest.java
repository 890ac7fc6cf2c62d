package io.strapline.level.point;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.alarm.AlarmHandling;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.alarm.AlarmSettings;
import io.strapline.level.alarm.AlarmSnapshot;
import io.strapline.level.alarm.AlarmState;
import io.strapline.level.alarm.Suppression;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Shelving and the other suppressions through the facade. */
class SuppressedAlarmTest {

  private static final Instant START = Instant.parse("2024-05-01T06:00:00Z");

  private static Instant at(long seconds) {
    return START.plus(Duration.ofSeconds(seconds));
  }

  /** A point whose high alarm at 8 m stands. */
  private static MeasuringPoint standing() {
    AlarmLimit limit = new AlarmLimit(AlarmKind.HIGH, 8, 0.1, 0, 0, AlarmHandling.DEFAULT);
    PointSettings settings =
        PointSettings.builder("LT-101")
            .mounting(Mounting.plumb(10))
            .alarms(new AlarmSettings(List.of(limit), 0, AlarmHandling.DEFAULT, 60))
            .build();
    MeasuringPoint point = MeasuringPoint.of(settings, START);
    point.accept(Sample.distance(at(1), 1));
    return point;
  }

  private static AlarmSnapshot high(PointSnapshot snapshot) {
    return snapshot.alarms().get(0);
  }

  /** Also while no sample comes and the point has gone silent. */
  @Test
  void endsShelvingByTimeWithoutASample() {
    MeasuringPoint point = standing();
    point.acknowledge(AlarmKind.HIGH, at(2));

    assertEquals(Suppression.SHELVED, high(point.shelve(AlarmKind.HIGH, 30, at(3))).suppression());
    assertEquals(Suppression.SHELVED, high(point.tick(at(32))).suppression());
    AlarmSnapshot after = high(point.tick(at(33)));
    assertEquals(Suppression.NONE, after.suppression());
    assertEquals(AlarmState.UNACKNOWLEDGED, after.state());
    assertTrue(after.isAnnounced());
  }

  @Test
  void endsAOneShotWithTheCondition() {
    MeasuringPoint point = standing();

    assertEquals(Suppression.SHELVED, high(point.shelveOnce(AlarmKind.HIGH, at(2))).suppression());
    assertEquals(Suppression.NONE, high(point.accept(Sample.distance(at(3), 5))).suppression());
  }

  @Test
  void takesOffTheShelfAndInAndOutOfService() {
    MeasuringPoint point = standing();
    point.shelve(AlarmKind.HIGH, 30, at(2));

    assertEquals(Suppression.NONE, high(point.unshelve(AlarmKind.HIGH, at(3))).suppression());
    assertEquals(
        Suppression.SUPPRESSED_BY_DESIGN,
        high(point.suppressByDesign(AlarmKind.HIGH, true, at(4))).suppression());
    assertEquals(
        Suppression.OUT_OF_SERVICE,
        high(point.outOfService(AlarmKind.HIGH, true, at(5))).suppression());
    point.outOfService(AlarmKind.HIGH, false, at(6));
    assertEquals(
        Suppression.NONE, high(point.suppressByDesign(AlarmKind.HIGH, false, at(7))).suppression());
  }

  @Test
  void refusesToShelveForLongerThanTheSettingsAllow() {
    MeasuringPoint point = standing();

    assertRefused("AlarmGroup.shelve", () -> point.shelve(AlarmKind.HIGH, 61, at(2)));
  }
}
