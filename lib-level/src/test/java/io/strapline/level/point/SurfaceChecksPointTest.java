package io.strapline.level.point;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.alarm.AlarmHandling;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.alarm.AlarmSettings;
import io.strapline.level.alarm.AlarmState;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Diagnostic;
import io.strapline.level.reading.DiagnosticStatus;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.StatusPrecedence;
import io.strapline.level.signal.AlarmBranch;
import io.strapline.level.signal.GateSettings;
import io.strapline.level.signal.LostBeamSettings;
import io.strapline.level.signal.NoReturnPolicy;
import io.strapline.level.signal.ObstructionSettings;
import io.strapline.level.signal.ObstructionSettings.Doubt;
import io.strapline.level.signal.RateSettings;
import io.strapline.level.signal.SignalSettings;
import io.strapline.level.signal.StageTrace;
import io.strapline.level.signal.SurfaceChecks;
import io.strapline.level.vessel.CapacityCurve;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A whole point with the stages that know how a surface can move. */
class SurfaceChecksPointTest {

  private static final Instant START = Instant.parse("2026-01-05T08:00:00Z");
  private static final GateSettings GATES =
      new GateSettings(0.5, 30, OptionalDouble.empty(), List.of());
  private static final ObstructionSettings GATE =
      new ObstructionSettings(new Doubt(0.3, 3, 5), new Doubt(0.5, 2, 3), 0.1, 20);

  private static Instant at(double seconds) {
    return START.plusNanos(Math.round(seconds * 1e9));
  }

  /** Reference 12 m above the datum, vessel 2 m2 by 11.8 m, high-high at 11 m. */
  private static PointSettings.Builder silo(double lagSeconds, SurfaceChecks surface) {
    AlarmLimit highHigh = new AlarmLimit(AlarmKind.HIGH_HIGH, 11, 0.1, 0, 0, AlarmHandling.DEFAULT);
    return PointSettings.builder("LT-1")
        .mounting(Mounting.plumb(12))
        .vessel(new PrismCurve(2, 11.8))
        .signal(new SignalSettings(GATES, NoReturnPolicy.hold(10), 1, 1, lagSeconds, surface))
        .alarms(new AlarmSettings(List.of(highHigh), 5, AlarmHandling.DEFAULT));
  }

  private static MeasuringPoint point(PointSettings.Builder settings) {
    return MeasuringPoint.of(settings.build(), START);
  }

  private static PointSnapshot feed(MeasuringPoint point, double seconds, double metres) {
    return point.accept(Sample.distance(at(seconds), metres));
  }

  private static AlarmState alarm(PointSnapshot snapshot, AlarmKind kind) {
    return snapshot.alarms().stream()
        .filter(alarm -> alarm.kind() == kind)
        .findFirst()
        .orElseThrow()
        .state();
  }

  private static List<Cause> causes(PointSnapshot snapshot) {
    return snapshot.diagnostics().stream().map(Diagnostic::cause).toList();
  }

  /** Dust that looks like a full silo must not trip the high-high; a real filling must. */
  @Test
  void tripsNoHighHighOnASpeckButOnARealJump() {
    MeasuringPoint point = point(silo(0, SurfaceChecks.NONE.with(GATE)));
    feed(point, 0, 6);
    PointSnapshot speck = feed(point, 1, 0.6);
    assertEquals(AlarmState.NORMAL, alarm(speck, AlarmKind.HIGH_HIGH));
    assertEquals(Quality.uncertain(Cause.OBSTRUCTION_HELD), speck.level().quality());
    assertEquals(6, speck.level().value(), 1e-12);
    assertEquals(List.of(Cause.OBSTRUCTION_HELD), causes(speck));
    feed(point, 2, 6);
    feed(point, 3, 0.6);
    feed(point, 4, 0.6);
    PointSnapshot real = feed(point, 5, 0.6);
    assertEquals(AlarmState.UNACKNOWLEDGED, alarm(real, AlarmKind.HIGH_HIGH));
    assertTrue(real.level().quality().isGood());
  }

  /** The delay of an alarm goes on under specks: see {@link Cause#isHeld()}. */
  @Test
  void letsDustHoldBackNoAlarmDelay() {
    AlarmLimit slow = new AlarmLimit(AlarmKind.HIGH, 10, 0.1, 5, 0, AlarmHandling.DEFAULT);
    MeasuringPoint point =
        point(
            silo(0, SurfaceChecks.NONE.with(GATE))
                .alarms(new AlarmSettings(List.of(slow), 0, AlarmHandling.DEFAULT)));
    PointSnapshot last = feed(point, 0, 1.8);
    for (int i = 1; i <= 5; i++) {
      last = feed(point, i, i % 2 == 0 ? 1.8 : 0.6);
    }
    assertEquals(AlarmState.UNACKNOWLEDGED, alarm(last, AlarmKind.HIGH));
  }

  /** Pains F5. The bad-signal alarm has an on-delay of 5 s and the policy a hold of 10 s. */
  @Test
  void raisesTheBadSignalAtOnceWhenTheBeamIsLostOnTheWayIntoTheDeadZone() {
    SurfaceChecks lost = SurfaceChecks.NONE.with(new LostBeamSettings(0.2, 60));
    MeasuringPoint point = point(silo(0, lost));
    feed(point, 0, 0.65);
    PointSnapshot snapshot = point.accept(Sample.noReturn(at(1)));
    assertEquals(AlarmState.UNACKNOWLEDGED, alarm(snapshot, AlarmKind.BAD_SIGNAL));
    assertEquals(Quality.bad(Cause.OVERFULL_SUSPECTED), snapshot.level().quality());
    assertEquals(DiagnosticStatus.FAILURE, snapshot.status());
    assertTrue(causes(snapshot).containsAll(List.of(Cause.OVERFULL_SUSPECTED, Cause.NO_RETURN)));
    // The high-high stood before: it is held back and keeps its state.
    assertEquals(AlarmState.UNACKNOWLEDGED, alarm(snapshot, AlarmKind.HIGH_HIGH));
  }

  @Test
  void waitsForTheHoldWithoutThatSetting() {
    MeasuringPoint point = point(silo(0, SurfaceChecks.NONE));
    feed(point, 0, 0.65);
    PointSnapshot snapshot = point.accept(Sample.noReturn(at(1)));
    assertEquals(AlarmState.NORMAL, alarm(snapshot, AlarmKind.BAD_SIGNAL));
    assertEquals(Quality.uncertain(Cause.NO_RETURN_HELD), snapshot.level().quality());
  }

  /** By hand: 0.1 m3/s into 2 m2 is 50 mm/s; 0.2 m3/s out is 100 mm/s. */
  @Test
  void turnsAFlowIntoASpeedByTheVesselsArea() {
    SurfaceChecks rates = SurfaceChecks.NONE.with(RateSettings.flow(0.1, 0.2, 0));
    MeasuringPoint point = point(silo(0, rates));
    feed(point, 0, 6);
    assertEquals(6.5, feed(point, 10, 2).level().value(), 1e-9);
    assertEquals(List.of(Cause.RATE_LIMITED), causes(point.snapshot()));
    assertEquals(6.3, feed(point, 12, 8).level().value(), 1e-9);
    // Alarms are judged by the early branch, without the limit.
    assertEquals(AlarmState.UNACKNOWLEDGED, alarm(feed(point, 13, 1), AlarmKind.HIGH_HIGH));
  }

  /** A cone of 60 degrees, V = pi h^3 / 9: the surface falls the faster the lower it stands. */
  private static final class Cone implements CapacityCurve {
    @Override
    public double maxHeightMetres() {
      return 10;
    }

    @Override
    public double capacityCubicMetres() {
      return volumeCubicMetres(10);
    }

    @Override
    public double volumeCubicMetres(double heightMetres) {
      return Math.PI / 9 * Math.pow(Math.max(0, Math.min(10, heightMetres)), 3);
    }

    @Override
    public double heightMetres(double volumeCubicMetres) {
      return Math.cbrt(9 / Math.PI * volumeCubicMetres);
    }
  }

  /** By hand: emptying from 8 m to 2 m at 0.5 m3/s takes (V(8) - V(2)) / Q = 351.9 s. */
  @Test
  void takesAsLongAsTheVolumeBetweenNeedsAtThatFlow() {
    SurfaceChecks rates = SurfaceChecks.NONE.with(RateSettings.flow(0.5, 0.5, 0));
    PointSettings settings =
        silo(0, rates).vessel(new Cone()).ages(new SourceAges(90, 200)).build();
    double expected = Math.PI / 9 * (512 - 8) / 0.5;
    assertEquals(
        expected, settings.newChain().delays(1, 4, 10).get(0).stepSeconds(), 1e-3 * expected);
    // In steps of a minute the output keeps to it within a few percent.
    MeasuringPoint point = MeasuringPoint.of(settings, START);
    feed(point, 0, 4);
    double level = 8;
    int minutes = 0;
    while (level > 2 + 1e-9 && minutes < 20) {
      minutes++;
      level = feed(point, 60 * minutes, 10).level().value();
    }
    assertEquals(Math.ceil(expected / 60), minutes);
  }

  /** By hand: at 60 degrees from the plumb line the beam is twice as long as the way down. */
  @Test
  void turnsAnUprightSpeedIntoOneAlongTheBeam() {
    SurfaceChecks rates = SurfaceChecks.NONE.with(RateSettings.speed(0.1, 0.1, 0));
    PointSettings settings = silo(0, rates).mounting(new Mounting(12, 60)).build();
    assertEquals(10, settings.newChain().delays(1, 6, 8).get(0).stepSeconds(), 1e-9);
  }

  @Test
  void refusesAFlowForAPointWithoutAVessel() {
    SignalSettings flow =
        SignalSettings.PLAIN.with(SurfaceChecks.NONE.with(RateSettings.flow(0.1, 0.1, 0)));
    PointSettings.Builder bare =
        PointSettings.builder("ZT-1").mounting(Mounting.plumb(12)).signal(flow);
    assertRefused("RateSettings.measure", bare::build);
  }

  /** Pains F3: where alarms and display must agree, both come from the same branch. */
  @Test
  void judgesAlarmsByTheSmoothBranchWhereSomebodyWantsItSo() {
    for (AlarmBranch branch : AlarmBranch.values()) {
      MeasuringPoint point = point(silo(60, SurfaceChecks.NONE.with(branch)));
      feed(point, 0, 6);
      AlarmState state = alarm(feed(point, 1, 0.6), AlarmKind.HIGH_HIGH);
      assertEquals(branch == AlarmBranch.EARLY, state == AlarmState.UNACKNOWLEDGED);
    }
  }

  @Test
  void tellsTheStagesOfASampleOnlyWhenAsked() {
    MeasuringPoint point = point(silo(5, SurfaceChecks.NONE.with(GATE)));
    feed(point, 0, 6);
    assertTrue(point.stages().isEmpty());
    point.trace(true);
    feed(point, 1, 0.6);
    assertEquals(
        List.of(
            "gates: PASSED 0.600 m",
            "obstruction gate: HELD 6.000 m"
                + " (a sudden change is not yet confirmed, value of before in use)"),
        point.stages().stream().map(StageTrace::text).toList());
    point.trace(false);
    feed(point, 2, 6);
    assertTrue(point.stages().isEmpty());
  }

  @Test
  void ranksTheStatusesInTheOrderThatIsSet() {
    StatusPrecedence maintenanceFirst =
        StatusPrecedence.of(
            DiagnosticStatus.FAILURE,
            DiagnosticStatus.FUNCTION_CHECK,
            DiagnosticStatus.MAINTENANCE_REQUIRED,
            DiagnosticStatus.OUT_OF_SPECIFICATION);
    Sample tired =
        Sample.distance(START, 0.1).withDeviceStatus(DiagnosticStatus.MAINTENANCE_REQUIRED);
    PointSettings.Builder open =
        PointSettings.builder("LT-2").mounting(Mounting.plumb(12)).vessel(new PrismCurve(2, 11));
    PointSnapshot usual = point(open).accept(tired);
    PointSnapshot other = point(open.precedence(maintenanceFirst)).accept(tired);
    assertEquals(DiagnosticStatus.OUT_OF_SPECIFICATION, usual.status());
    assertEquals(DiagnosticStatus.MAINTENANCE_REQUIRED, other.status());
    assertEquals(Cause.DEVICE_MAINTENANCE_REQUIRED, other.diagnostics().get(0).cause());
    assertFalse(usual.diagnostics().equals(other.diagnostics()));
  }
}
