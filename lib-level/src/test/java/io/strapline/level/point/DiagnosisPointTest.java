package io.strapline.level.point;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.diagnosis.Baseline;
import io.strapline.level.diagnosis.CurrentCheck;
import io.strapline.level.diagnosis.DiagnosisSettings;
import io.strapline.level.diagnosis.HoldOff;
import io.strapline.level.diagnosis.Learning;
import io.strapline.level.diagnosis.NoiseCheck;
import io.strapline.level.diagnosis.ReachCheck;
import io.strapline.level.diagnosis.StrengthCheck;
import io.strapline.level.diagnosis.StuckCheck;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Diagnostic;
import io.strapline.level.reading.DiagnosticStatus;
import io.strapline.level.reading.Quality;
import io.strapline.level.signal.GateSettings;
import io.strapline.level.signal.NoReturnPolicy;
import io.strapline.level.signal.SignalSettings;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What a whole point makes of the diagnosis of its samples. */
class DiagnosisPointTest {

  private static final Instant START = Instant.parse("2026-01-05T08:00:00Z");
  private static final Learning QUICK = new Learning(60, 6000);
  private static final HoldOff TEN = new HoldOff(10, 10);

  private static Instant at(double seconds) {
    return START.plusNanos(Math.round(seconds * 1e9));
  }

  private static PointSettings.Builder silo(DiagnosisSettings diagnosis) {
    return PointSettings.builder("LT-1")
        .mounting(Mounting.plumb(12))
        .vessel(new PrismCurve(2, 11))
        .range(LoopRange.ofDistance(11, 1))
        .diagnosis(diagnosis);
  }

  private static MeasuringPoint point(DiagnosisSettings diagnosis) {
    return MeasuringPoint.of(silo(diagnosis).build(), START);
  }

  private static List<Cause> causes(PointSnapshot snapshot) {
    return snapshot.diagnostics().stream().map(Diagnostic::cause).toList();
  }

  /** A call for maintenance: the value is as good as before. */
  @Test
  void asksForMaintenanceWhenTheReturnIsWeak() {
    MeasuringPoint point =
        point(DiagnosisSettings.NONE.with(new StrengthCheck(0.3, 0.6, 3600, QUICK, TEN)));
    for (int i = 0; i <= 100; i++) {
      point.accept(Sample.distance(at(i), 6).withStrength(50));
    }
    PointSnapshot snapshot = point.snapshot();
    assertEquals(List.of(), causes(snapshot));
    for (int i = 101; i <= 111; i++) {
      snapshot = point.accept(Sample.distance(at(i), 6).withStrength(10));
    }
    assertEquals(
        List.of(new Diagnostic(DiagnosticStatus.MAINTENANCE_REQUIRED, Cause.STRENGTH_LOW, at(111))),
        snapshot.diagnostics());
    assertEquals(DiagnosticStatus.MAINTENANCE_REQUIRED, snapshot.status());
    assertEquals(Quality.GOOD, snapshot.level().quality());
    assertEquals(50, point.baseline().strength(), 1e-9);
  }

  @Test
  void goesOnFromAKeptBaseline() {
    DiagnosisSettings check =
        DiagnosisSettings.NONE.with(new StrengthCheck(0.3, 0.6, 3600, QUICK, TEN));
    MeasuringPoint point =
        MeasuringPoint.of(silo(check).baseline(new Baseline(50, 3600, 0, 0)).build(), START);
    for (int i = 0; i <= 10; i++) {
      point.accept(Sample.distance(at(i), 6).withStrength(10));
    }
    assertEquals(List.of(Cause.STRENGTH_LOW), causes(point.snapshot()));
  }

  /** Out of specification: every value says so, and limits are judged all the same. */
  @Test
  void makesTheValuesUncertainWhileTheSignalIsNoisy() {
    MeasuringPoint point = point(DiagnosisSettings.NONE.with(new NoiseCheck(3, 0.02, QUICK, TEN)));
    Random random = new Random(4);
    for (int i = 0; i < 300; i++) {
      point.accept(Sample.distance(at(i), 6 + 0.002 * random.nextGaussian()));
    }
    assertTrue(point.snapshot().level().quality().isGood());
    for (int i = 300; i < 360; i++) {
      point.accept(Sample.distance(at(i), 6 + 0.1 * random.nextGaussian()));
    }
    PointSnapshot noisy = point.snapshot();
    Quality expected = Quality.uncertain(Cause.NOISE_HIGH);
    assertTrue(noisy.readings().values().stream().allMatch(r -> r.quality().equals(expected)));
    assertEquals(DiagnosticStatus.OUT_OF_SPECIFICATION, noisy.status());
  }

  @Test
  void tellsAStuckValueOnlyWhileAFlowIsExpected() {
    MeasuringPoint point = point(DiagnosisSettings.NONE.with(new StuckCheck(0.02, 30, 0)));
    for (int i = 0; i < 100; i++) {
      point.accept(Sample.distance(at(i), 6));
    }
    assertEquals(List.of(), causes(point.snapshot()));
    point.expectFlow(true);
    for (int i = 100; i <= 130; i++) {
      point.accept(Sample.distance(at(i), 6));
    }
    assertEquals(List.of(Cause.VALUE_STUCK), causes(point.snapshot()));
    assertEquals(Quality.uncertain(Cause.VALUE_STUCK), point.snapshot().level().quality());
  }

  @Test
  void tellsASaturatedCurrentBesideItsBand() {
    CurrentCheck check = new CurrentCheck(3.8, 20.5, 0.01, 16, TEN);
    MeasuringPoint point = point(DiagnosisSettings.NONE.with(check));
    for (int i = 0; i <= 10; i++) {
      point.accept(Sample.current(at(i), 20.5));
    }
    assertEquals(List.of(Cause.LOOP_OVER_RANGE, Cause.CURRENT_SATURATED), causes(point.snapshot()));
  }

  @Test
  void tellsARangeThatEndsAboveTheBottom() {
    GateSettings gates = new GateSettings(0, 30, OptionalDouble.of(1), List.of());
    MeasuringPoint point =
        MeasuringPoint.of(
            silo(DiagnosisSettings.NONE.with(new ReachCheck(12, 0.5, 0, 60, TEN)))
                .signal(new SignalSettings(gates, NoReturnPolicy.hold(60), 1, 1, 0))
                .build(),
            START);
    for (int i = 0; i < 200; i++) {
      point.accept(Sample.distance(at(i), 6 + 0.02 * i).withStrength(40));
    }
    for (int i = 200; i <= 210; i++) {
      point.accept(Sample.noReturn(at(i)).withStrength(0));
    }
    assertTrue(causes(point.snapshot()).contains(Cause.RANGE_SHORT));
    assertEquals(Quality.uncertain(Cause.NO_RETURN_HELD), point.snapshot().level().quality());
  }

  /** The order of the page on qualities: the values stay as they are where nothing is set. */
  @Test
  void looksForNothingByDefault() {
    MeasuringPoint point =
        MeasuringPoint.of(
            PointSettings.builder("LT-2").mounting(Mounting.plumb(12)).build(), START);
    point.expectFlow(true);
    for (int i = 0; i < 2000; i++) {
      point.accept(Sample.distance(at(i), 6).withStrength(i < 1000 ? 50 : 1));
    }
    assertEquals(List.of(), causes(point.snapshot()));
    assertEquals(Baseline.NOTHING, point.baseline());
  }
}
