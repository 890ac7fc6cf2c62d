package io.strapline.level.point;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.alarm.AlarmHandling;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.alarm.AlarmSettings;
import io.strapline.level.alarm.AlarmSnapshot;
import io.strapline.level.alarm.AlarmState;
import io.strapline.level.loop.LoopBand;
import io.strapline.level.loop.LoopLimits;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.loop.RawCounts;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.DiagnosticStatus;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.signal.GateSettings;
import io.strapline.level.signal.NoReturnPolicy;
import io.strapline.level.signal.SignalSettings;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class MeasuringPointTest {

  private static final Instant START = Instant.parse("2026-01-05T08:00:00Z");
  private static final double TINY = 1e-12;

  /**
   * Reference 12 m above the datum, vessel 2 m2 by 10 m, 4 mA at 11 m and 20 mA at 1 m of distance.
   */
  private static PointSettings.Builder silo() {
    return PointSettings.builder("LT-1")
        .mounting(Mounting.plumb(12))
        .vessel(new PrismCurve(2, 10))
        .range(LoopRange.ofDistance(11, 1))
        .density(1500);
  }

  private static MeasuringPoint point(PointSettings.Builder settings) {
    return MeasuringPoint.of(settings.build(), START);
  }

  private static Instant at(double seconds) {
    return START.plusNanos(Math.round(seconds * 1e9));
  }

  private static double value(PointSnapshot snapshot, Quantity quantity) {
    return snapshot.reading(quantity).orElseThrow().value();
  }

  private static Quality quality(PointSnapshot snapshot, Quantity quantity) {
    return snapshot.reading(quantity).orElseThrow().quality();
  }

  private static AlarmSnapshot alarm(PointSnapshot snapshot, AlarmKind kind) {
    return snapshot.alarms().stream().filter(a -> a.kind() == kind).findFirst().orElseThrow();
  }

  private static AlarmSettings limits(AlarmLimit... limits) {
    return new AlarmSettings(List.of(limits), 0, AlarmHandling.DEFAULT);
  }

  private static AlarmLimit limit(AlarmKind kind, double metres) {
    return new AlarmLimit(kind, metres, 0.1, 0, 0, AlarmHandling.DEFAULT);
  }

  @Test
  void makesEveryQuantityOfADistance() {
    PointSnapshot snapshot = point(silo()).accept(Sample.distance(START, 6));
    // By hand: level 12 - 6, percent (11 - 6) / 10, current 4 + 16 * 0.5, volume 2 * 6, mass 12 *
    // 1500.
    assertEquals(6, value(snapshot, Quantity.ULLAGE), TINY);
    assertEquals(6, value(snapshot, Quantity.LEVEL), TINY);
    assertEquals(50, value(snapshot, Quantity.PERCENT), TINY);
    assertEquals(12, value(snapshot, Quantity.LOOP_CURRENT), TINY);
    assertEquals(12, value(snapshot, Quantity.VOLUME), TINY);
    assertEquals(8, value(snapshot, Quantity.FREE_VOLUME), TINY);
    assertEquals(18_000, value(snapshot, Quantity.MASS), TINY);
    assertTrue(snapshot.readings().values().stream().allMatch(r -> r.quality().isGood()));
    assertEquals(DiagnosticStatus.NORMAL, snapshot.status());
  }

  @Test
  void givesTheSameFromCurrentRawCountAndLevel() {
    RawCounts card = new RawCounts(RawCounts.Encoding.SIGNED_16, 0, 27648);
    List<Sample> same =
        List.of(
            Sample.current(START, 12),
            Sample.rawCount(START, 13824),
            Sample.level(START, 6),
            Sample.distance(START, 6));
    for (Sample sample : same) {
      PointSnapshot snapshot = point(silo().rawCounts(card)).accept(sample);
      assertEquals(6, value(snapshot, Quantity.DISTANCE), TINY, sample.toString());
      assertEquals(12, value(snapshot, Quantity.VOLUME), TINY, sample.toString());
    }
  }

  @Test
  void takesTheProbeOffsetFromTheRangeNotFromTheScaling() {
    // Level probe 0.2 m above the floor, span 5 m, 12 mA: 2.7 m (public question, see pains A6: 0.2
    // + (12-4)/16*5).
    PointSettings.Builder sump =
        PointSettings.builder("LT-2")
            .mounting(Mounting.plumb(6))
            .range(LoopRange.ofLevel(0.2, 5.2));
    PointSnapshot snapshot = point(sump).accept(Sample.current(START, 12));
    assertEquals(2.7, value(snapshot, Quantity.LEVEL), TINY);
  }

  @Test
  void turnsATiltedBeamIntoPlumbHeight() {
    // Ignoring 25 degrees over-reads the distance by 10.3 %: 1 / cos 25 = 1.1034.
    PointSettings.Builder tilted =
        PointSettings.builder("LT-3").mounting(new Mounting(12, 25)).vessel(new PrismCurve(2, 10));
    PointSnapshot snapshot = point(tilted).accept(Sample.distance(START, 1.1033779));
    assertEquals(1.0, value(snapshot, Quantity.ULLAGE), 1e-7);
    assertEquals(11.0, value(snapshot, Quantity.LEVEL), 1e-7);
  }

  @Test
  void waitsForTheFirstSampleAndThenCallsTheSourceSilent() {
    MeasuringPoint point = point(silo());
    assertEquals(Quality.bad(Cause.WAITING_FOR_FIRST_SAMPLE), point.snapshot().level().quality());
    assertEquals(DiagnosticStatus.FUNCTION_CHECK, point.snapshot().status());
    assertTrue(point.snapshot().readings().values().stream().allMatch(r -> r.value() == 0));
    PointSnapshot later = point.tick(at(30.5));
    assertEquals(Quality.bad(Cause.SOURCE_SILENT), later.level().quality());
    assertEquals(DiagnosticStatus.FAILURE, later.status());
  }

  @Test
  void holdsASilentSourceUpToTheFirstLimitAndGivesItUpAfterTheSecond() {
    MeasuringPoint point = point(silo().ages(new SourceAges(10, 30)));
    point.accept(Sample.distance(START, 6));
    assertEquals(Quality.GOOD, point.tick(at(10)).level().quality());
    assertEquals(
        Quality.uncertain(Cause.SOURCE_SILENT_HELD), point.tick(at(10.001)).level().quality());
    assertEquals(Quality.uncertain(Cause.SOURCE_SILENT_HELD), point.tick(at(30)).level().quality());
    PointSnapshot silent = point.tick(at(30.001));
    assertEquals(Quality.bad(Cause.SOURCE_SILENT), silent.level().quality());
    assertEquals(START, silent.sourceTime());
    assertEquals(30.001, silent.ageSeconds(), TINY);
    assertEquals(6, silent.lastGood(Quantity.LEVEL).orElseThrow().value(), TINY);
    assertEquals(Quality.GOOD, point.accept(Sample.distance(at(40), 5)).level().quality());
  }

  @Test
  void holdsTheLimitsBackWhileASilentValueIsAlsoDoubtfulForAnotherReason() {
    AlarmLimit delayed = new AlarmLimit(AlarmKind.HIGH, 9, 0.1, 15, 0, AlarmHandling.DEFAULT);
    MeasuringPoint point = point(silo().alarms(limits(delayed)));
    point.accept(Sample.distance(START, 2.5).asSimulated());
    PointSnapshot silent = point.tick(at(16));
    assertEquals(Quality.uncertain(Cause.SOURCE_SILENT_HELD), silent.level().quality());
    assertTrue(alarm(silent, AlarmKind.HIGH).heldBack());
    assertEquals(AlarmState.NORMAL, alarm(silent, AlarmKind.HIGH).state());
  }

  @Test
  void doesNotLetASourceClockThatRunsAheadHideASilence() {
    MeasuringPoint point = point(silo());
    point.accept(Sample.distance(at(3600), 6), START);
    assertEquals(Quality.bad(Cause.SOURCE_SILENT), point.tick(at(31)).level().quality());
  }

  @Test
  void doesNotTakeLateDataForFresh() {
    MeasuringPoint point = point(silo());
    PointSnapshot late = point.accept(Sample.distance(START, 6), at(15));
    assertEquals(Quality.uncertain(Cause.SOURCE_SILENT_HELD), late.level().quality());
  }

  @Test
  void keepsTheLastValueUsableWhileCommunicationIsLost() {
    MeasuringPoint point = point(silo());
    point.accept(Sample.distance(START, 6));
    assertEquals(Quality.GOOD, point.fail(Cause.NO_COMMUNICATION, at(1)).level().quality());
    assertEquals(Quality.uncertain(Cause.SOURCE_SILENT_HELD), point.tick(at(11)).level().quality());
    assertEquals(Quality.bad(Cause.NO_COMMUNICATION), point.tick(at(31)).level().quality());
    assertEquals(Quality.GOOD, point.accept(Sample.distance(at(32), 6)).level().quality());
  }

  @Test
  void isBadAtOnceWhenCommunicationNeverWorked() {
    PointSnapshot snapshot = point(silo()).fail(Cause.NO_COMMUNICATION, at(1));
    assertEquals(Quality.bad(Cause.NO_COMMUNICATION), snapshot.level().quality());
    assertEquals(DiagnosticStatus.FAILURE, snapshot.status());
  }

  @Test
  void isBadAfterAProcessingErrorUntilTheNextSample() {
    MeasuringPoint point = point(silo());
    point.accept(Sample.distance(START, 6));
    PointSnapshot failed = point.fail(Cause.PROCESSING_ERROR, at(1));
    assertEquals(Quality.bad(Cause.PROCESSING_ERROR), failed.level().quality());
    assertEquals(Quality.bad(Cause.PROCESSING_ERROR), quality(failed, Quantity.MASS));
    assertEquals(Quality.GOOD, point.accept(Sample.distance(at(2), 6)).level().quality());
  }

  @Test
  void marksAndIgnoresASampleFromThePast() {
    MeasuringPoint point = point(silo());
    point.accept(Sample.distance(at(5), 6), at(5));
    PointSnapshot back = point.accept(Sample.distance(at(4), 2), at(6));
    assertEquals(6, value(back, Quantity.DISTANCE), TINY);
    assertEquals(Quality.uncertain(Cause.TIME_WENT_BACK), back.level().quality());
    assertEquals(at(5), back.sourceTime());
    PointSnapshot next = point.accept(Sample.distance(at(7), 5), at(7));
    assertEquals(Quality.GOOD, next.level().quality());
  }

  @Test
  void startsAnewWhenTheSourceClockWasSetBackForGood() {
    MeasuringPoint point = point(silo());
    point.accept(Sample.distance(at(3600), 6), at(3600));
    PointSnapshot snapshot = point.snapshot();
    for (int second = 1; second <= 40; second++) {
      snapshot = point.accept(Sample.distance(at(3500 + second), 5), at(3600 + second));
      boolean ignored = value(snapshot, Quantity.DISTANCE) == 6;
      assertTrue(!ignored || !snapshot.level().quality().isGood(), "healthy at second " + second);
    }
    assertEquals(5, value(snapshot, Quantity.DISTANCE), TINY);
  }

  @Test
  void neverLetsItsOwnTimeGoBack() {
    MeasuringPoint point = point(silo());
    point.accept(Sample.distance(at(5), 6), at(5));
    assertEquals(at(5), point.tick(START).evaluated());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void turnsASampleThatIsNoNumberBad(double broken) {
    PointSettings.Builder settings =
        silo()
            .loopLimits(instantly())
            .signal(new SignalSettings(GateSettings.OPEN, NoReturnPolicy.fail(), 1, 1, 0))
            .alarms(limits(limit(AlarmKind.HIGH_HIGH, 9), limit(AlarmKind.LOW_LOW, 1)));
    for (Sample.Kind kind : Sample.Kind.values()) {
      if (kind == Sample.Kind.NO_RETURN) {
        continue;
      }
      MeasuringPoint point = point(settings.rawCounts(card()));
      point.accept(Sample.distance(START, 6));
      Sample sample =
          new Sample(
              at(1), kind, broken, OptionalDouble.of(broken), DiagnosticStatus.NORMAL, false);
      PointSnapshot snapshot = point.accept(sample);
      assertTrue(snapshot.level().quality().isBad(), kind.name());
      assertEquals(AlarmState.NORMAL, alarm(snapshot, AlarmKind.HIGH_HIGH).state(), kind.name());
      assertEquals(AlarmState.NORMAL, alarm(snapshot, AlarmKind.LOW_LOW).state(), kind.name());
      assertEquals(
          AlarmState.UNACKNOWLEDGED, alarm(snapshot, AlarmKind.BAD_SIGNAL).state(), kind.name());
    }
  }

  private static LoopLimits instantly() {
    return new LoopLimits(3.6, 3.8, 20.5, 21.0, 0, new LoopLimits.Recovery(0.1, 0));
  }

  private static RawCounts card() {
    return new RawCounts(RawCounts.Encoding.SIGNED_16, 0, 27648);
  }

  @Test
  void confirmsAFaultCurrentWithoutALowLowAlarm() {
    // Limits and 4 s: field case S3 (public thread quoting NE 43); the sequence is the project's.
    MeasuringPoint point = point(silo().alarms(limits(limit(AlarmKind.LOW_LOW, 1.05))));
    feed(point, 0, 2, 12.0);
    feed(point, 2, 5, 3.4);
    assertEquals(Cause.LOOP_FAULT_CONFIRMING, point.snapshot().level().quality().cause());
    feed(point, 5, 15, 12.0);
    assertEquals(Quality.GOOD, point.snapshot().level().quality());
    feed(point, 15, 20.25, 3.4);
    PointSnapshot failed = point.snapshot();
    assertEquals(Quality.bad(Cause.LOOP_FAULT_LOW), failed.level().quality());
    assertEquals(LoopBand.FAILURE_LOW, failed.band().orElseThrow());
    assertEquals(3.4, value(failed, Quantity.LOOP_CURRENT), TINY);
    assertEquals(0, alarm(failed, AlarmKind.LOW_LOW).occurrences());
    assertEquals(AlarmState.UNACKNOWLEDGED, alarm(failed, AlarmKind.BAD_SIGNAL).state());
    assertEquals(DiagnosticStatus.FAILURE, failed.status());
  }

  private static void feed(MeasuringPoint point, double from, double to, double milliamps) {
    for (double second = from; second < to; second += 0.25) {
      point.accept(Sample.current(at(second), milliamps));
    }
  }

  @Test
  void clampsTheVolumeOutsideTheVesselAndSaysSo() {
    PointSnapshot over = point(silo()).accept(Sample.distance(START, 1.5));
    assertEquals(10.5, over.level().value(), TINY);
    assertEquals(20, value(over, Quantity.VOLUME), TINY);
    assertEquals(0, value(over, Quantity.FREE_VOLUME), TINY);
    assertEquals(Quality.uncertain(Cause.OUTSIDE_VESSEL), quality(over, Quantity.VOLUME));
    assertEquals(Quality.GOOD, quality(over, Quantity.DISTANCE));
  }

  @Test
  void tellsSimulatedValuesAndDeviceReports() {
    PointSnapshot simulated = point(silo()).accept(Sample.distance(START, 6).asSimulated());
    assertEquals(Quality.uncertain(Cause.SIMULATED), simulated.level().quality());
    assertEquals(DiagnosticStatus.FUNCTION_CHECK, simulated.status());
    PointSnapshot tired =
        point(silo())
            .accept(
                Sample.distance(START, 6).withDeviceStatus(DiagnosticStatus.MAINTENANCE_REQUIRED));
    assertEquals(Quality.GOOD, tired.level().quality());
    assertEquals(DiagnosticStatus.MAINTENANCE_REQUIRED, tired.status());
  }

  @ParameterizedTest
  @EnumSource(DiagnosticStatus.class)
  void carriesTheDeviceStatusThrough(DiagnosticStatus status) {
    PointSnapshot snapshot =
        point(silo()).accept(Sample.distance(START, 6).withDeviceStatus(status));
    assertEquals(status, snapshot.status());
  }

  @Test
  void refusesACodeThatMeansNoMeasurementBeforeScaling() {
    GateSettings gates =
        new GateSettings(0, Double.POSITIVE_INFINITY, OptionalDouble.empty(), List.of(8190.0));
    SignalSettings signal = new SignalSettings(gates, NoReturnPolicy.fail(), 1, 1, 0);
    PointSnapshot snapshot =
        point(silo().signal(signal).rawCounts(card())).accept(Sample.rawCount(START, 8190));
    assertEquals(Quality.bad(Cause.INVALID_CODE), snapshot.level().quality());
  }

  @Test
  void tripsTheHighHighOnTheEarlyBranchBeforeTheLagLetsTheLevelFollow() {
    SignalSettings slow = new SignalSettings(GateSettings.OPEN, NoReturnPolicy.hold(10), 1, 1, 60);
    MeasuringPoint point = point(silo().signal(slow).alarms(limits(limit(AlarmKind.HIGH_HIGH, 9))));
    point.accept(Sample.distance(START, 6));
    PointSnapshot snapshot = point.accept(Sample.distance(at(1), 2.5));
    assertTrue(snapshot.level().value() < 9);
    assertEquals(AlarmState.UNACKNOWLEDGED, alarm(snapshot, AlarmKind.HIGH_HIGH).state());
    PointSnapshot seen = point.acknowledge(AlarmKind.HIGH_HIGH, at(2));
    assertEquals(AlarmState.ACKNOWLEDGED, alarm(seen, AlarmKind.HIGH_HIGH).state());
  }

  @Test
  void runsAlarmDelaysWhileSamplesStayAway() {
    AlarmLimit delayed = new AlarmLimit(AlarmKind.HIGH, 9, 0.1, 5, 0, AlarmHandling.DEFAULT);
    MeasuringPoint point = point(silo().alarms(limits(delayed)));
    point.accept(Sample.distance(START, 2.5));
    assertEquals(AlarmState.NORMAL, alarm(point.tick(at(4.999)), AlarmKind.HIGH).state());
    assertEquals(AlarmState.UNACKNOWLEDGED, alarm(point.tick(at(5)), AlarmKind.HIGH).state());
  }

  @Test
  void holdsANoReturnByTheClockWithoutSamples() {
    MeasuringPoint point = point(silo());
    point.accept(Sample.distance(START, 6));
    PointSnapshot held = point.accept(Sample.noReturn(at(1)));
    assertEquals(Quality.uncertain(Cause.NO_RETURN_HELD), held.level().quality());
    assertEquals(6, value(held, Quantity.DISTANCE), TINY);
    assertTrue(point.tick(at(11.5)).level().quality().isBad());
  }

  @Test
  void countsEverySnapshotAndKeepsDiagnosticsSinceTheirStart() {
    MeasuringPoint point = point(silo());
    point.accept(Sample.distance(START, 6));
    long before = point.snapshot().sequence();
    point.accept(Sample.distance(at(1), 1.5));
    PointSnapshot second = point.accept(Sample.distance(at(2), 1.5));
    assertEquals(before + 2, second.sequence());
    assertEquals(at(1), second.diagnostics().get(0).since());
    assertTrue(point.accept(Sample.distance(at(3), 6)).diagnostics().isEmpty());
  }

  @Test
  void leavesOutWhatItCannotCompute() {
    PointSettings.Builder position =
        PointSettings.builder("ZT-1").mounting(Mounting.plumb(30)).alarms(AlarmSettings.NONE);
    PointSnapshot snapshot = point(position).accept(Sample.distance(START, 12));
    assertFalse(snapshot.reading(Quantity.VOLUME).isPresent());
    assertFalse(snapshot.reading(Quantity.PERCENT).isPresent());
    assertEquals(18, snapshot.level().value(), TINY);
  }

  @Test
  void saysWhenACurrentComesWithoutARange() {
    PointSettings.Builder bare = PointSettings.builder("LT-4").mounting(Mounting.plumb(12));
    PointSnapshot snapshot = point(bare).accept(Sample.current(START, 12));
    assertEquals(Quality.bad(Cause.NOT_CONFIGURED), snapshot.level().quality());
  }

  @Test
  void neverThrowsAndNeverGivesADerivedValueABetterQualityThanTheDistance() {
    long seed = 20260105;
    Random random = new Random(seed);
    MeasuringPoint point =
        point(silo().rawCounts(card()).alarms(limits(limit(AlarmKind.HIGH_HIGH, 9))));
    double second = 0;
    for (int i = 0; i < 20_000; i++) {
      second += random.nextDouble() * 3 - 0.2;
      PointSnapshot snapshot = step(point, random, at(second));
      Reading distance = snapshot.reading(Quantity.DISTANCE).orElseThrow();
      for (Quantity derived : List.of(Quantity.LEVEL, Quantity.VOLUME, Quantity.MASS)) {
        Quality quality = quality(snapshot, derived);
        assertTrue(
            quality.level().compareTo(distance.quality().level()) >= 0,
            "seed " + seed + " step " + i + " " + derived);
      }
    }
  }

  private static PointSnapshot step(MeasuringPoint point, Random random, Instant time) {
    double[] odd = {Double.NaN, Double.POSITIVE_INFINITY, -Double.MAX_VALUE, 1e300, 0, -0.0, 65535};
    double value =
        random.nextInt(4) == 0 ? odd[random.nextInt(odd.length)] : random.nextDouble() * 25;
    Sample.Kind kind = pick(random, Sample.Kind.values());
    DiagnosticStatus status = pick(random, DiagnosticStatus.values());
    return switch (random.nextInt(10)) {
      case 0 -> point.tick(time);
      case 1 -> point.fail(Cause.NO_COMMUNICATION, time);
      case 2 -> point.fail(Cause.PROCESSING_ERROR, time);
      default ->
          point.accept(
              new Sample(time, kind, value, OptionalDouble.empty(), status, random.nextBoolean()));
    };
  }

  private static <T> T pick(Random random, T[] from) {
    return List.of(from).get(random.nextInt(from.length));
  }
}
