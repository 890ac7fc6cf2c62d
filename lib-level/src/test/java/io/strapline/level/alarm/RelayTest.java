package io.strapline.level.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.alarm.RelaySettings.Coil;
import io.strapline.level.alarm.RelaySettings.Delays;
import io.strapline.level.alarm.RelaySettings.Fallback;
import io.strapline.level.alarm.RelaySnapshot.Reason;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class RelayTest {

  private static final Instant START = Instant.parse("2024-05-01T06:00:00Z");
  private static final Quality NO_RETURN = Quality.bad(Cause.NO_RETURN);

  private static Instant at(double seconds) {
    return START.plus(Duration.ofNanos(Math.round(seconds * 1e9)));
  }

  private static Relay relay(double pickUp, double dropOut, Delays delays, Fallback fallback) {
    return Relay.of(
        new RelaySettings(pickUp, dropOut, delays, Coil.DE_ENERGISED_IN_ALARM, fallback), START);
  }

  private static boolean good(Relay relay, double seconds, double level) {
    return relay.judge(Reading.good(level, at(seconds)), at(seconds)).alarm();
  }

  private static RelaySnapshot given(Relay relay, double seconds, Quality quality) {
    return relay.judge(new Reading(5, quality, at(seconds)), at(seconds));
  }

  private static List<Boolean> run(Relay relay, double... levels) {
    List<Boolean> alarms = new ArrayList<>();
    for (int i = 0; i < levels.length; i++) {
      alarms.add(good(relay, i, levels[i]));
    }
    return alarms;
  }

  // Points: both senses, both edges

  @Test
  void guardsAgainstAHighLevelAtExactlyItsPoints() {
    Relay relay = relay(8, 7, Delays.NONE, Fallback.ALARM);

    assertEquals(
        List.of(false, false, true, true, true, false, false),
        run(relay, 7, Math.nextDown(8.0), 8, 9, Math.nextUp(7.0), 7, 7.5));
    assertEquals(3, relay.snapshot().changes(), "start to normal, alarm, normal");
  }

  @Test
  void guardsAgainstALowLevelAtExactlyItsPoints() {
    Relay relay = relay(1, 2, Delays.NONE, Fallback.ALARM);

    assertEquals(
        List.of(false, false, true, true, true, false, false),
        run(relay, 2, Math.nextUp(1.0), 1, 0, Math.nextDown(2.0), 2, 1.5));
  }

  // Delays

  @ParameterizedTest
  @CsvSource({"3", "0.3", "0.1", "59.7"})
  void picksUpAndDropsOutExactlyAtTheDelaysAndNotANanosecondBefore(double delay) {
    Relay relay = relay(8, 7, new Delays(delay, delay, 0), Fallback.NORMAL);
    good(relay, 0, 8);
    Reading high = Reading.good(8, at(0));
    Reading low = Reading.good(7, at(100));

    assertFalse(relay.judge(high, at(delay).minusNanos(1)).alarm());
    assertTrue(relay.judge(high, at(delay)).alarm());
    assertEquals(at(delay), relay.snapshot().since());
    assertTrue(relay.judge(low, at(100)).alarm());
    assertTrue(relay.judge(low, at(100 + delay).minusNanos(1)).alarm());
    assertFalse(relay.judge(low, at(100 + delay)).alarm());
  }

  @Test
  void startsADelayAnewWhenTheLevelGoesBack() {
    Relay relay = relay(8, 7, new Delays(3, 0, 0), Fallback.NORMAL);
    good(relay, 0, 8);
    good(relay, 2, 7.9);
    good(relay, 2.5, 8);

    assertFalse(good(relay, 5.4, 8));
    assertTrue(good(relay, 5.5, 8));
  }

  @Test
  void startsADelayAnewAfterAHeldValue() {
    Relay relay = relay(8, 7, new Delays(3, 0, 0), Fallback.NORMAL);
    good(relay, 0, 8);
    given(relay, 2, Quality.uncertain(Cause.NO_RETURN_HELD));
    good(relay, 2.5, 8);

    assertFalse(good(relay, 5.4, 8));
    assertTrue(good(relay, 5.5, 8));
  }

  // Coil

  @Test
  void carriesCurrentByTheSenseOfItsCoil() {
    for (Coil coil : Coil.values()) {
      RelaySettings settings = new RelaySettings(8, 7, Delays.NONE, coil, Fallback.ALARM);
      Relay relay = Relay.of(settings, START);
      boolean inAlarm = coil == Coil.ENERGISED_IN_ALARM;

      assertEquals(inAlarm, relay.snapshot().energised(), "alarm position at start");
      good(relay, 1, 5);
      assertEquals(!inAlarm, relay.snapshot().energised(), "normal position");
    }
  }

  // Start

  /** A level between the points proves nothing: the safe position stays. */
  @Test
  void staysInTheAlarmPositionFromTheStartUntilTheDropOutPoint() {
    Relay relay = Relay.of(RelaySettings.safe(8, 7), START);

    assertEquals(new RelaySnapshot(true, false, Reason.START, START, 0), relay.snapshot());
    assertTrue(given(relay, 1, Quality.bad(Cause.WAITING_FOR_FIRST_SAMPLE)).alarm());
    assertEquals(List.of(true, true, false), run(relay, 7.5, 7.01, 7));
    assertEquals(Reason.LEVEL, relay.snapshot().reason());
  }

  @ParameterizedTest
  @EnumSource(Fallback.class)
  void startsInTheAlarmPositionUnlessTheFallbackIsNormal(Fallback fallback) {
    Relay relay = relay(8, 7, Delays.NONE, fallback);

    assertEquals(fallback != Fallback.NORMAL, relay.snapshot().alarm());
    assertEquals(fallback != Fallback.NORMAL, given(relay, 1, NO_RETURN).alarm());
    assertEquals(Reason.START, relay.snapshot().reason());
  }

  // Bad signal

  @Test
  void goesIntoTheAlarmPositionOnABadSignalAndComesBackByTheDropOutPoint() {
    Relay relay = relay(8, 7, Delays.NONE, Fallback.ALARM);
    run(relay, 5, 7.5);

    assertEquals(
        new RelaySnapshot(true, false, Reason.BAD_SIGNAL, at(2), 2), given(relay, 2, NO_RETURN));
    assertTrue(good(relay, 3, 7.5), "between the points nothing is proven");
    assertFalse(good(relay, 4, 7));
  }

  @Test
  void keepsItsPositionOnABadSignalIfItIsToHold() {
    Relay relay = relay(8, 7, Delays.NONE, Fallback.HOLD);
    run(relay, 5);
    assertFalse(given(relay, 2, NO_RETURN).alarm());
    assertEquals(Reason.BAD_SIGNAL, relay.snapshot().reason());
    run(relay, 5, 6, 7, 8.5);
    assertTrue(given(relay, 6, NO_RETURN).alarm());
  }

  @Test
  void goesIntoTheNormalPositionOnABadSignalIfItMust() {
    Relay relay = relay(8, 7, Delays.NONE, Fallback.NORMAL);
    run(relay, 8.5);

    assertFalse(given(relay, 2, NO_RETURN).alarm());
  }

  @Test
  void waitsForTheBadSignalDelayToTheNanosecond() {
    Relay relay = relay(8, 7, new Delays(0, 0, 2.5), Fallback.ALARM);
    run(relay, 5);
    Reading bad = new Reading(5, NO_RETURN, at(1));

    assertFalse(relay.judge(bad, at(1)).alarm());
    assertFalse(relay.judge(bad, at(3.5).minusNanos(1)).alarm());
    assertTrue(relay.judge(bad, at(3.5)).alarm());
  }

  /** The same causes as for the alarms: a held value keeps all, a substitute is no measurement. */
  @ParameterizedTest
  @EnumSource(Cause.class)
  void neverTakesAHeldValueNorASubstituteForAMeasurement(Cause cause) {
    if (cause == Cause.NONE) {
      return;
    }
    Relay relay = relay(8, 7, Delays.NONE, Fallback.ALARM);
    run(relay, 5);
    boolean alarm = given(relay, 2, Quality.uncertain(cause)).alarm();

    assertEquals(cause == Cause.SUBSTITUTED, alarm);
    relay.judge(new Reading(9, Quality.uncertain(cause), at(3)), at(3));
    boolean measured = !cause.isHeld() && cause != Cause.SUBSTITUTED;
    assertEquals(measured || cause == Cause.SUBSTITUTED, relay.snapshot().alarm(), cause.name());
  }

  // Properties

  /**
   * Against a plain model without time: with no delays the position follows from the last reading
   * that left the band between the points.
   */
  @ParameterizedTest
  @EnumSource(Fallback.class)
  void followsAPlainModelWithoutDelays(Fallback fallback) {
    long seed = 24_051;
    Random random = new Random(seed);
    for (int loop = 0; loop < 200; loop++) {
      boolean high = random.nextBoolean();
      Relay relay = relay(high ? 8 : 7, high ? 7 : 8, Delays.NONE, fallback);
      boolean expected = fallback != Fallback.NORMAL;
      for (int i = 0; i < 100; i++) {
        boolean bad = random.nextInt(5) == 0;
        double level = 6 + 3 * random.nextDouble();
        if (bad) {
          expected = fallback == Fallback.HOLD ? expected : fallback == Fallback.ALARM;
          given(relay, i, NO_RETURN);
        } else {
          expected = level >= 8 ? high : level <= 7 ? !high : expected;
          good(relay, i, level);
        }
        assertEquals(expected, relay.snapshot().alarm(), "seed " + seed + ", loop " + loop);
      }
    }
  }

  /** Longer delays never make more changes; a relay never chatters faster than its delays. */
  @Test
  void keepsEachPositionAtLeastForTheDelayOfLeavingIt() {
    long seed = 24_052;
    Random random = new Random(seed);
    for (int loop = 0; loop < 100; loop++) {
      double on = random.nextInt(5);
      double off = random.nextInt(5);
      Relay relay = relay(8, 7, new Delays(on, off, 0), Fallback.NORMAL);
      Instant since = START;
      boolean alarm = false;
      for (int i = 1; i < 200; i++) {
        good(relay, i, 6 + 3 * random.nextDouble());
        RelaySnapshot now = relay.snapshot();
        if (now.alarm() != alarm) {
          double stood = Duration.between(since, now.since()).toSeconds();
          String told = "seed " + seed + ", loop " + loop + ", second " + i;
          assertTrue(stood >= (alarm ? off : on), told);
          alarm = now.alarm();
          since = now.since();
        }
      }
    }
  }

  @Test
  void isNotStuckWhenTheClockIsSetBack() {
    Relay relay = relay(8, 7, new Delays(3, 0, 3), Fallback.ALARM);
    run(relay, 5);
    good(relay, 3600, 8);
    good(relay, 10, 8);

    assertTrue(good(relay, 13, 8));
  }
}
