package io.strapline.level.alarm;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Shelving, suppression by design and out of service, through the group of a point. */
class SuppressionTest {

  private static final Instant START = Instant.parse("2024-05-01T06:00:00Z");
  private static final double GREATEST = 600;

  private static Instant at(double seconds) {
    return START.plus(Duration.ofNanos(Math.round(seconds * 1e9)));
  }

  private static AlarmSettings settings(double greatestShelve, boolean latching) {
    AlarmHandling handling = new AlarmHandling(1, latching);
    AlarmLimit limit = new AlarmLimit(AlarmKind.HIGH, 8, 0.5, 0, 0, handling);
    return new AlarmSettings(List.of(limit), 0, AlarmHandling.DEFAULT, greatestShelve);
  }

  private static AlarmGroup group() {
    return AlarmGroup.of(settings(GREATEST, false));
  }

  private static AlarmSnapshot level(AlarmGroup group, double seconds, double metres) {
    return group.judge(Reading.good(metres, at(seconds))).get(0);
  }

  private static AlarmSnapshot high(AlarmGroup group) {
    return group.snapshot().get(0);
  }

  @ParameterizedTest
  @EnumSource(Suppression.class)
  void hasTheShortNameOfTheStateTable(Suppression suppression) {
    if (suppression == Suppression.NONE) {
      return;
    }
    CsvRow row =
        CsvRows.read(SuppressionTest.class, "alarm_states.csv").stream()
            .filter(one -> one.text("short").equals(suppression.shortName()))
            .findFirst()
            .orElseThrow();

    assertEquals(suppression.name(), row.text("name").toUpperCase(Locale.ROOT).replace(' ', '_'));
  }

  // Timed shelving

  @Test
  void announcesAgainExactlyWhenShelvingEnds() {
    AlarmGroup group = group();
    level(group, 0, 9);
    group.acknowledge(AlarmKind.HIGH, at(1));
    assertTrue(group.shelve(AlarmKind.HIGH, 60, at(2)));

    assertEquals(Suppression.SHELVED, high(group).suppression());
    assertEquals(Optional.of(at(62)), high(group).suppressedBy().shelvedUntil());
    group.judge(Reading.good(9, at(3)), at(62).minusNanos(1));
    assertEquals(Suppression.SHELVED, high(group).suppression());
    assertEquals(AlarmState.ACKNOWLEDGED, high(group).state());
    group.judge(Reading.good(9, at(3)), at(62));
    assertEquals(Suppression.NONE, high(group).suppression());
    assertEquals(AlarmState.UNACKNOWLEDGED, high(group).state());
    assertEquals(at(62), high(group).since());
    assertEquals(1, high(group).occurrences(), "the same occurrence");
  }

  @Test
  void evaluatesAShelvedAlarmAllTheSame() {
    AlarmGroup group = group();
    level(group, 0, 5);
    group.shelve(AlarmKind.HIGH, 60, at(1));

    AlarmSnapshot raised = level(group, 2, 9);
    assertEquals(AlarmState.UNACKNOWLEDGED, raised.state());
    assertFalse(raised.isAnnounced());
    AlarmSnapshot gone = level(group, 3, 5);
    assertEquals(AlarmState.RETURNED_UNACKNOWLEDGED, gone.state());
    assertFalse(gone.isAnnounced());
    AlarmSnapshot after = level(group, 61, 5);
    assertEquals(AlarmState.RETURNED_UNACKNOWLEDGED, after.state(), "nobody has seen it");
    assertTrue(after.isAnnounced());
  }

  @Test
  void comesOffTheShelfWhileTheSignalIsBadToo() {
    AlarmGroup group = group();
    level(group, 0, 9);
    group.shelve(AlarmKind.HIGH, 60, at(1));
    group.shelve(AlarmKind.BAD_SIGNAL, 60, at(1));
    Quality bad = Quality.bad(Cause.NO_RETURN);

    group.judge(new Reading(0, bad, at(30)));
    assertEquals(Suppression.SHELVED, group.snapshot().get(1).suppression());
    group.judge(new Reading(0, bad, at(61)));
    for (AlarmSnapshot alarm : group.snapshot()) {
      assertEquals(Suppression.NONE, alarm.suppression(), alarm.kind().name());
      assertTrue(alarm.isAnnounced(), alarm.kind().name());
    }
  }

  @Test
  void shelvesAnewFromNow() {
    AlarmGroup group = group();
    group.shelve(AlarmKind.HIGH, 60, at(0));
    group.shelve(AlarmKind.HIGH, 10, at(5));

    assertEquals(Optional.of(at(15)), high(group).suppressedBy().shelvedUntil());
  }

  // One shot

  @Test
  void endsAOneShotWhenTheConditionGoes() {
    AlarmGroup group = group();
    level(group, 0, 9);
    assertTrue(group.shelveOnce(AlarmKind.HIGH, at(1)));
    assertEquals(Suppression.SHELVED, level(group, 2, 9).suppression());
    assertTrue(high(group).suppressedBy().oneShot());

    assertEquals(Suppression.NONE, level(group, 3, 5).suppression());
    assertTrue(level(group, 4, 9).isAnnounced(), "the next occurrence");
  }

  /** Shelved before it comes: the one occurrence that follows is put aside. */
  @Test
  void keepsAOneShotForTheNextOccurrenceButNotBeyondTheGreatestTime() {
    AlarmGroup group = group();
    level(group, 0, 5);
    group.shelveOnce(AlarmKind.HIGH, at(1));

    assertFalse(level(group, 2, 9).isAnnounced());
    assertFalse(level(group, 600.999, 9).isAnnounced());
    assertTrue(level(group, 601, 9).isAnnounced());
  }

  @Test
  void endsTheOneShotOfALatchedAlarmWhenTheConditionGoes() {
    AlarmGroup group = AlarmGroup.of(settings(GREATEST, true));
    level(group, 0, 9);
    group.shelveOnce(AlarmKind.HIGH, at(1));
    AlarmSnapshot gone = level(group, 2, 5);

    assertEquals(AlarmState.LATCHED_UNACKNOWLEDGED, gone.state());
    assertTrue(gone.isAnnounced());
  }

  // By design, out of service

  @Test
  void tellsTheStrongestOfSeveralSuppressionsAndKeepsEach() {
    AlarmGroup group = group();
    level(group, 0, 9);
    group.shelve(AlarmKind.HIGH, 60, at(1));
    assertTrue(group.suppressByDesign(AlarmKind.HIGH, true));
    assertTrue(group.outOfService(AlarmKind.HIGH, true));
    assertFalse(group.outOfService(AlarmKind.HIGH, true), "nothing changes");

    assertEquals(Suppression.OUT_OF_SERVICE, high(group).suppression());
    group.outOfService(AlarmKind.HIGH, false);
    assertEquals(Suppression.SUPPRESSED_BY_DESIGN, high(group).suppression());
    group.suppressByDesign(AlarmKind.HIGH, false);
    assertEquals(Suppression.SHELVED, high(group).suppression());
    assertTrue(group.unshelve(AlarmKind.HIGH, at(2)));
    assertFalse(group.unshelve(AlarmKind.HIGH, at(2)));
    assertEquals(Suppression.NONE, high(group).suppression());
  }

  @Test
  void keepsAnAcknowledgementThroughSuppressionByDesign() {
    AlarmGroup group = group();
    level(group, 0, 9);
    group.acknowledge(AlarmKind.HIGH, at(1));
    group.suppressByDesign(AlarmKind.HIGH, true);
    level(group, 2, 9);
    group.suppressByDesign(AlarmKind.HIGH, false);

    assertEquals(AlarmState.ACKNOWLEDGED, level(group, 3, 9).state());
  }

  // What is refused

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1, 0, 600.001})
  void refusesToShelveForNoTimeOrForLongerThanAllowed(double wrong) {
    assertRefused("AlarmGroup.shelve", () -> group().shelve(AlarmKind.HIGH, wrong, at(0)));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1e-9, 2_592_000.001})
  void refusesAGreatestTimeOutOfRange(double wrong) {
    assertRefused("AlarmSettings.greatestShelve", () -> settings(wrong, false));
  }

  @Test
  void shelvesNothingWhenNoTimeIsAllowed() {
    AlarmGroup group = AlarmGroup.of(settings(0, false));

    assertFalse(group.shelveOnce(AlarmKind.HIGH, at(0)));
    assertRefused("AlarmGroup.shelve", () -> group.shelve(AlarmKind.HIGH, 1, at(0)));
  }

  @Test
  void tellsThatThereIsNoSuchAlarm() {
    AlarmGroup group = group();

    assertFalse(group.shelve(AlarmKind.LOW, 1, at(0)));
    assertFalse(group.shelveOnce(AlarmKind.LOW, at(0)));
    assertFalse(group.unshelve(AlarmKind.LOW, at(0)));
    assertFalse(group.suppressByDesign(AlarmKind.LOW, true));
    assertFalse(group.outOfService(AlarmKind.LOW, true));
  }

  @Test
  void refusesAOneShotThatIsNotShelved() {
    assertRefused(
        "AlarmSuppression.oneShot",
        () -> new AlarmSuppression(Optional.empty(), true, false, false));
  }

  // Shelving always ends

  /** Whatever happens, also to the clock: the greatest time after the last shelving it is over. */
  @Test
  void alwaysEndsShelving() {
    long seed = 18_002;
    Random random = new Random(seed);
    for (int loop = 0; loop < 200; loop++) {
      AlarmGroup group = group();
      double now = 0;
      double sinceShelved = Double.POSITIVE_INFINITY;
      for (int i = 0; i < 100; i++) {
        double step =
            random.nextInt(10) == 0 ? -5000 * random.nextDouble() : 100 * random.nextDouble();
        now += step;
        sinceShelved += Math.max(0, step);
        level(group, now, 4 + 6 * random.nextDouble());
        String told = "seed " + seed + ", loop " + loop + ", step " + i;
        if (high(group).suppression() == Suppression.SHELVED) {
          assertTrue(sinceShelved < GREATEST, told);
        }
        if (random.nextInt(8) == 0) {
          sinceShelved = 0;
          if (random.nextBoolean()) {
            group.shelve(AlarmKind.HIGH, 1 + 599 * random.nextDouble(), at(now));
          } else {
            group.shelveOnce(AlarmKind.HIGH, at(now));
          }
          assertNotEquals(Suppression.NONE, high(group).suppression(), told);
        }
      }
    }
  }
}
