package io.strapline.level.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
import org.junit.jupiter.params.provider.EnumSource;

class AlarmGroupTest {

  private static final Instant START = Instant.parse("2024-05-01T06:00:00Z");
  private static final AlarmHandling LATCHING = new AlarmHandling(1, true);

  private static Instant at(double seconds) {
    return START.plus(Duration.ofNanos(Math.round(seconds * 1e9)));
  }

  private static AlarmLimit limit(AlarmKind kind, double setPoint, double deadband) {
    return new AlarmLimit(kind, setPoint, deadband, 0, 0, AlarmHandling.DEFAULT);
  }

  private static AlarmGroup group(AlarmLimit... limits) {
    return AlarmGroup.of(new AlarmSettings(List.of(limits), 0, AlarmHandling.DEFAULT));
  }

  /** Low-low 1, low 2, high 8, high-high 9, deadband 0.1, no delays. */
  private static AlarmGroup four() {
    return group(
        limit(AlarmKind.HIGH_HIGH, 9, 0.1),
        limit(AlarmKind.HIGH, 8, 0.1),
        limit(AlarmKind.LOW, 2, 0.1),
        limit(AlarmKind.LOW_LOW, 1, 0.1));
  }

  private static void good(AlarmGroup group, double seconds, double level) {
    group.judge(Reading.good(level, at(seconds)));
  }

  private static void given(AlarmGroup group, double seconds, double level, Quality quality) {
    group.judge(new Reading(level, quality, at(seconds)));
  }

  private static void bad(AlarmGroup group, double seconds) {
    given(group, seconds, 0, Quality.bad(Cause.NO_RETURN));
  }

  private static AlarmSnapshot of(AlarmGroup group, AlarmKind kind) {
    return group.snapshot().stream().filter(one -> one.kind() == kind).findFirst().orElseThrow();
  }

  private static AlarmState state(AlarmGroup group, AlarmKind kind) {
    return of(group, kind).state();
  }

  private static List<AlarmKind> active(AlarmGroup group) {
    return group.snapshot().stream()
        .filter(one -> one.state().isActive())
        .map(AlarmSnapshot::kind)
        .toList();
  }

  // Over-full suspected

  @Test
  void raisesTheBadSignalAtOnceWhereTheVesselMayBeOverfull() {
    AlarmLimit high = limit(AlarmKind.HIGH, 8, 0.1);
    AlarmSettings settings = new AlarmSettings(List.of(high), 30, AlarmHandling.DEFAULT);
    for (Cause cause : List.of(Cause.NO_RETURN, Cause.OVERFULL_SUSPECTED)) {
      AlarmGroup group = AlarmGroup.of(settings);
      good(group, 0, 9);
      given(group, 1, 9, Quality.bad(cause));

      boolean atOnce = cause == Cause.OVERFULL_SUSPECTED;
      assertEquals(atOnce, active(group).contains(AlarmKind.BAD_SIGNAL), cause.name());
      given(group, 2, 9, Quality.bad(cause));
      assertEquals(atOnce ? 1 : 0, of(group, AlarmKind.BAD_SIGNAL).occurrences());
      assertTrue(active(group).contains(AlarmKind.HIGH));
    }
  }

  // Set points and deadbands

  @Test
  void givesAllAlarmsInTheOrderOfTheirKinds() {
    AlarmGroup group = four();

    assertEquals(
        List.of(AlarmKind.values()),
        group.judge(Reading.good(5, at(0))).stream().map(AlarmSnapshot::kind).toList());
    assertEquals(1, group().snapshot().size(), "the bad-signal alarm is always there");
  }

  @Test
  void setsEachLimitAtItsSetPointAndClearsItBeyondItsDeadband() {
    AlarmGroup group = group(limit(AlarmKind.HIGH, 8, 0.5), limit(AlarmKind.LOW, 2, 0.5));
    good(group, 0, Math.nextDown(8.0));
    assertEquals(List.of(), active(group));
    good(group, 1, 8);
    assertEquals(List.of(AlarmKind.HIGH), active(group));
    good(group, 2, 7.5);
    assertEquals(List.of(AlarmKind.HIGH), active(group));
    good(group, 3, Math.nextDown(7.5));
    assertEquals(List.of(), active(group));
    good(group, 4, Math.nextUp(2.0));
    assertEquals(List.of(), active(group));
    good(group, 5, 2);
    assertEquals(List.of(AlarmKind.LOW), active(group));
    good(group, 6, 2.5);
    assertEquals(List.of(AlarmKind.LOW), active(group));
    good(group, 7, Math.nextUp(2.5));
    assertEquals(List.of(), active(group));
  }

  /** Field case S7, pains G2: set 1000, reset 900, so a deadband of 100. */
  @Test
  void raisesOneAlarmWithSeparateSetAndResetLevels() {
    AlarmGroup with = group(limit(AlarmKind.HIGH, 1000, 100));
    AlarmGroup without = group(limit(AlarmKind.HIGH, 1000, 0));
    List<Boolean> actives = new ArrayList<>();
    double[] samples = {980, 1010, 990, 1020, 899};
    for (int i = 0; i < samples.length; i++) {
      good(with, i, samples[i]);
      good(without, i, samples[i]);
      actives.add(state(with, AlarmKind.HIGH).isActive());
    }

    assertEquals(List.of(false, true, true, true, false), actives);
    assertEquals(1, of(with, AlarmKind.HIGH).occurrences());
    assertEquals(2, of(without, AlarmKind.HIGH).occurrences());
    assertEquals(at(4), of(with, AlarmKind.HIGH).since());
  }

  /** Pains G1: 69.9 / 70.1 every 10 s, limit 70. Deadband or off-delay, each alone, is enough. */
  @Test
  void doesNotFloodWhenTheValueSitsOnTheLimit() {
    AlarmGroup bare = group(limit(AlarmKind.HIGH, 70, 0));
    AlarmGroup deadband = group(limit(AlarmKind.HIGH, 70, 0.5));
    AlarmGroup delayed = group(new AlarmLimit(AlarmKind.HIGH, 70, 0, 0, 15, AlarmHandling.DEFAULT));
    for (int i = 0; i < 60; i++) {
      for (AlarmGroup group : List.of(bare, deadband, delayed)) {
        good(group, 10 * i, i % 2 == 0 ? 69.9 : 70.1);
      }
    }

    assertEquals(30, of(bare, AlarmKind.HIGH).occurrences());
    assertEquals(1, of(deadband, AlarmKind.HIGH).occurrences());
    assertEquals(1, of(delayed, AlarmKind.HIGH).occurrences());
  }

  /** Pains G3: warn on 85 off 75, critical on 95 off 85. */
  @Test
  void keepsTheHighAlarmWithoutAGapWhenLeavingHighHigh() {
    AlarmGroup group = group(limit(AlarmKind.HIGH_HIGH, 95, 10), limit(AlarmKind.HIGH, 85, 10));
    for (double level : new double[] {80, 90, 96, 85, 84.9, 75}) {
      good(group, level, level);
    }

    assertEquals(List.of(AlarmKind.HIGH), active(group));
    assertEquals(1, of(group, AlarmKind.HIGH).occurrences());
    good(group, 200, 74.9);
    assertEquals(List.of(), active(group));
  }

  // Start

  /** Pains G4: true from the start, and nothing changes. */
  @Test
  void raisesAnAlarmThatIsTrueFromTheStart() {
    AlarmGroup group = four();
    good(group, 0, 9.5);

    assertEquals(List.of(AlarmKind.HIGH_HIGH, AlarmKind.HIGH), active(group));
    assertEquals(AlarmState.UNACKNOWLEDGED, state(group, AlarmKind.HIGH_HIGH));
  }

  @Test
  void raisesAnAlarmThatIsTrueFromTheStartAfterItsOnDelay() {
    AlarmGroup group =
        group(new AlarmLimit(AlarmKind.HIGH_HIGH, 9, 0.1, 5, 0, AlarmHandling.DEFAULT));
    good(group, 0, 9.5);
    good(group, 4.9, 9.5);
    assertEquals(List.of(), active(group));
    good(group, 5, 9.5);

    assertEquals(List.of(AlarmKind.HIGH_HIGH), active(group));
  }

  /** Pains G5: low limit 60, first value 0 from an uninitialised signal. */
  @Test
  void raisesNoLimitBeforeTheFirstMeasurement() {
    AlarmGroup group = group(limit(AlarmKind.LOW, 60, 1));
    Quality waiting = Quality.bad(Cause.WAITING_FOR_FIRST_SAMPLE);
    given(group, 0, 0, waiting);
    given(group, 600, 0, waiting);

    assertEquals(List.of(), active(group), "nothing is wrong yet, so no bad signal either");
    assertTrue(of(group, AlarmKind.LOW).heldBack());
    good(group, 601, 75);
    assertFalse(of(group, AlarmKind.LOW).heldBack());
    assertEquals(0, of(group, AlarmKind.LOW).occurrences());
  }

  @Test
  void holdsBackBeforeAnyReading() {
    AlarmGroup group = four();

    assertTrue(of(group, AlarmKind.HIGH).heldBack());
    assertEquals(Instant.EPOCH, of(group, AlarmKind.HIGH).since());
    good(group, 3, 5);
    assertEquals(at(3), of(group, AlarmKind.HIGH).since());
  }

  /** A loop that is open at power-up is an alarm, not silence. */
  @Test
  void raisesTheBadSignalAlarmWhenTheSignalIsBadFromTheStart() {
    AlarmGroup group = four();
    given(group, 0, 0, Quality.bad(Cause.LOOP_FAULT_LOW));

    assertEquals(List.of(AlarmKind.BAD_SIGNAL), active(group));
  }

  // Bad signal

  /** Pains G8: one loop fault must not raise several alarms; B4: BAD is never "normal". */
  @ParameterizedTest
  @EnumSource(
      value = Cause.class,
      names = {
        "NOT_A_NUMBER",
        "NO_RETURN",
        "LOOP_FAULT_LOW",
        "LOOP_FAULT_HIGH",
        "DEAD_ZONE",
        "SOURCE_SILENT",
        "DEVICE_FAILURE",
        "PROCESSING_ERROR"
      })
  void raisesOneAlarmForABadSignalWhateverItsValue(Cause cause) {
    for (double value : new double[] {0, 5, 100, -1e9}) {
      AlarmGroup group = four();
      good(group, 0, 5);
      given(group, 1, value, Quality.bad(cause));

      assertEquals(List.of(AlarmKind.BAD_SIGNAL), active(group), "value " + value);
      assertTrue(of(group, AlarmKind.LOW_LOW).heldBack());
      assertFalse(of(group, AlarmKind.BAD_SIGNAL).heldBack());
    }
  }

  @Test
  void keepsTheLimitsAsTheyStoodWhileTheSignalIsBad() {
    AlarmGroup group = four();
    good(group, 0, 9.5);
    group.acknowledge(AlarmKind.HIGH, at(0));
    bad(group, 1);

    assertEquals(AlarmState.UNACKNOWLEDGED, state(group, AlarmKind.HIGH_HIGH));
    assertEquals(AlarmState.ACKNOWLEDGED, state(group, AlarmKind.HIGH));
    good(group, 2, 5);
    assertEquals(List.of(), active(group));
    assertEquals(AlarmState.RETURNED_UNACKNOWLEDGED, state(group, AlarmKind.HIGH_HIGH));
    assertEquals(AlarmState.NORMAL, state(group, AlarmKind.HIGH));
    assertEquals(AlarmState.RETURNED_UNACKNOWLEDGED, state(group, AlarmKind.BAD_SIGNAL));
  }

  @Test
  void judgesTheLimitsAnewByStateAfterABadSignal() {
    AlarmGroup group = four();
    good(group, 0, 5);
    bad(group, 1);
    good(group, 2, 9.5);

    assertEquals(List.of(AlarmKind.HIGH_HIGH, AlarmKind.HIGH), active(group));
  }

  @Test
  void startsTheDelaysOfTheLimitsAnewAfterABadSignal() {
    AlarmGroup group = group(new AlarmLimit(AlarmKind.HIGH, 8, 0.1, 10, 0, AlarmHandling.DEFAULT));
    good(group, 0, 8.5);
    bad(group, 5);
    good(group, 6, 8.5);
    good(group, 15.9, 8.5);
    assertEquals(List.of(), active(group));
    good(group, 16, 8.5);

    assertEquals(List.of(AlarmKind.HIGH), active(group));
  }

  @Test
  void raisesTheBadSignalAfterItsOnDelayAndHoldsTheLimitsBackAtOnce() {
    AlarmGroup group =
        AlarmGroup.of(
            new AlarmSettings(List.of(limit(AlarmKind.LOW_LOW, 1, 0.1)), 5, AlarmHandling.DEFAULT));
    good(group, 0, 5);
    bad(group, 10);
    assertEquals(List.of(), active(group));
    assertTrue(of(group, AlarmKind.LOW_LOW).heldBack());
    bad(group, 14.999);
    assertEquals(List.of(), active(group));
    bad(group, 15);

    assertEquals(List.of(AlarmKind.BAD_SIGNAL), active(group));
  }

  @Test
  void doesNotHoldTheLimitsBackOnceTheSignalIsGoodThoughTheBadSignalIsLatched() {
    AlarmGroup group =
        AlarmGroup.of(new AlarmSettings(List.of(limit(AlarmKind.HIGH, 8, 0.1)), 0, LATCHING));
    bad(group, 0);
    good(group, 1, 8.5);

    assertEquals(AlarmState.LATCHED_UNACKNOWLEDGED, state(group, AlarmKind.BAD_SIGNAL));
    assertEquals(AlarmState.UNACKNOWLEDGED, state(group, AlarmKind.HIGH));
  }

  // Values that are no measurement though they are uncertain

  /** Field case S3: from the first low sample the level is not used for alarms. */
  @ParameterizedTest
  @EnumSource(
      value = Cause.class,
      names = {"LOOP_FAULT_CONFIRMING", "NO_RETURN_HELD", "SOURCE_SILENT_HELD"})
  void judgesNoLimitWithAValueThatIsOnlyHeld(Cause cause) {
    AlarmGroup group = four();
    good(group, 0, 5);
    given(group, 1, 0.5, Quality.uncertain(cause));

    assertEquals(List.of(), active(group), "neither a limit nor a bad signal yet");
    assertTrue(of(group, AlarmKind.LOW_LOW).heldBack());
    good(group, 2, 8.5);
    given(group, 3, 5, Quality.uncertain(cause));
    assertEquals(List.of(AlarmKind.HIGH), active(group), "keeps its state");
  }

  @Test
  void keepsTheBadSignalUntilThereIsAMeasurementAgain() {
    AlarmGroup group = four();
    good(group, 0, 5);
    given(group, 1, 0, Quality.bad(Cause.LOOP_FAULT_LOW));
    given(group, 2, 5, Quality.uncertain(Cause.LOOP_FAULT_CONFIRMING));
    assertEquals(List.of(AlarmKind.BAD_SIGNAL), active(group));
    good(group, 3, 5);

    assertEquals(List.of(), active(group));
    assertEquals(1, of(group, AlarmKind.BAD_SIGNAL).occurrences());
  }

  /** A value that nobody measured neither raises nor clears a limit, and it is announced. */
  @Test
  void treatsASubstitutedValueAsABadSignal() {
    AlarmGroup group = four();
    good(group, 0, 9.5);
    given(group, 1, 0.5, Quality.uncertain(Cause.SUBSTITUTED));

    assertEquals(List.of(AlarmKind.HIGH_HIGH, AlarmKind.HIGH, AlarmKind.BAD_SIGNAL), active(group));
    assertTrue(of(group, AlarmKind.LOW_LOW).heldBack());
  }

  @ParameterizedTest
  @EnumSource(
      value = Cause.class,
      names = {
        "LOOP_UNDER_RANGE",
        "LOOP_OVER_RANGE",
        "LOOP_GAP_HIGH",
        "OUTSIDE_VESSEL",
        "SIMULATED",
        "DEVICE_OUT_OF_SPECIFICATION"
      })
  void judgesUncertainMeasurements(Cause cause) {
    AlarmGroup group = four();
    given(group, 0, 9.5, Quality.uncertain(cause));

    assertEquals(List.of(AlarmKind.HIGH_HIGH, AlarmKind.HIGH), active(group));
  }

  @Test
  void runsDelaysAtTheTimeOfEvaluation() {
    AlarmGroup group = group(new AlarmLimit(AlarmKind.HIGH, 8, 0.1, 5, 0, AlarmHandling.DEFAULT));
    Reading sample = Reading.good(8.5, at(0));
    group.judge(sample);
    group.judge(sample, at(4.999));
    assertEquals(List.of(), active(group));
    group.judge(sample, at(5));

    assertEquals(List.of(AlarmKind.HIGH), active(group));
  }

  // Operator's actions

  @Test
  void acknowledgesBeforeTheConditionOfTheNextScan() {
    AlarmGroup group = four();
    good(group, 0, 8.5);
    good(group, 1, 5);
    assertTrue(group.acknowledge(AlarmKind.HIGH, at(2)));
    good(group, 2, 8.5);

    assertEquals(AlarmState.UNACKNOWLEDGED, state(group, AlarmKind.HIGH), "a new occurrence");
    assertEquals(2, of(group, AlarmKind.HIGH).occurrences());
  }

  @Test
  void acknowledgesOneAlarmAndNoOther() {
    AlarmGroup group = four();
    good(group, 0, 9.5);

    assertTrue(group.acknowledge(AlarmKind.HIGH_HIGH, at(1)));
    assertEquals(AlarmState.ACKNOWLEDGED, state(group, AlarmKind.HIGH_HIGH));
    assertEquals(AlarmState.UNACKNOWLEDGED, state(group, AlarmKind.HIGH));
    assertFalse(group.acknowledge(AlarmKind.LOW, at(1)));
  }

  @Test
  void knowsNoAlarmThatIsNotConfigured() {
    AlarmGroup group = group(limit(AlarmKind.HIGH, 8, 0.1));
    good(group, 0, 8.5);

    assertFalse(group.acknowledge(AlarmKind.LOW, at(1)));
    assertFalse(group.reset(AlarmKind.LOW, at(1)));
  }

  @Test
  void acknowledgesButDoesNotResetWhileTheSignalIsBad() {
    AlarmGroup group = group(new AlarmLimit(AlarmKind.HIGH, 8, 0.1, 0, 0, LATCHING));
    good(group, 0, 8.5);
    good(group, 1, 5);
    bad(group, 2);
    assertTrue(group.acknowledge(AlarmKind.HIGH, at(3)));
    assertFalse(group.reset(AlarmKind.HIGH, at(4)), "nobody can tell whether it has gone");
    assertEquals(AlarmState.LATCHED_ACKNOWLEDGED, state(group, AlarmKind.HIGH));
    good(group, 5, 5);

    assertTrue(group.reset(AlarmKind.HIGH, at(6)));
    assertEquals(AlarmState.NORMAL, state(group, AlarmKind.HIGH));
  }

  // Random readings

  @Test
  void neverMovesALimitWithoutAMeasurement() {
    for (long seed = 1; seed <= 200; seed++) {
      Random random = new Random(seed);
      AlarmGroup group = four();
      for (int i = 0; i < 100; i++) {
        List<AlarmSnapshot> before = limits(group);
        Quality quality = quality(random);
        given(group, i, 10 * random.nextDouble(), quality);
        boolean judged = quality.isGood() || quality.cause() == Cause.LOOP_UNDER_RANGE;
        for (int k = 0; k < before.size(); k++) {
          AlarmSnapshot now = limits(group).get(k);
          String where = "seed " + seed + " reading " + i + ": " + now;
          assertEquals(!judged, now.heldBack(), where);
          assertTrue(judged || now.state() == before.get(k).state(), where);
        }
      }
    }
  }

  private static List<AlarmSnapshot> limits(AlarmGroup group) {
    return group.snapshot().subList(0, 4);
  }

  private static Quality quality(Random random) {
    List<Quality> qualities =
        List.of(
            Quality.GOOD,
            Quality.uncertain(Cause.LOOP_UNDER_RANGE),
            Quality.uncertain(Cause.NO_RETURN_HELD),
            Quality.uncertain(Cause.SUBSTITUTED),
            Quality.bad(Cause.NO_RETURN));
    return qualities.get(random.nextInt(qualities.size()));
  }
}
