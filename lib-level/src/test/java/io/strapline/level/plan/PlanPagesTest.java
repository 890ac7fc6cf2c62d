package io.strapline.level.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.loop.LoopLimits;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.loop.RawCounts;
import io.strapline.level.plan.LoopFinding.Tolerance;
import io.strapline.level.plan.LoopFinding.Verdict;
import io.strapline.level.point.Mounting;
import io.strapline.level.signal.GateSettings;
import io.strapline.level.signal.NoReturnPolicy;
import io.strapline.level.signal.SignalSettings;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.LyingCylinder;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * Runs the examples of {@code docs/set-points.md} and {@code docs/loop-check.md}; the expected
 * numbers are worked by hand or, for volumes of the lying cylinder, with the circular segment.
 */
class PlanPagesTest {

  // docs/set-points.md

  private static final CapacityCurve TANK = new LyingCylinder(2.5, 8);

  private static SetPointPlan bitumenTank(double inflowPerHour) {
    SignalSettings signal =
        new SignalSettings(GateSettings.OPEN, NoReturnPolicy.hold(10), 5, 8, 30);
    DetectionDelay detection = DetectionDelay.of(signal, 1, 2, 1);
    Margin allowance = Margin.allowance(0.02);
    DesignFlows flows = new DesignFlows(inflowPerHour / 3600, 40.0 / 3600);
    return SetPointPlan.of(
        SetPointBasis.builder(TANK, flows)
            .criticalHigh(2.35)
            .criticalLow(0.30)
            .step(SetPoint.AUTOMATIC_SHUT_OFF, new ResponseStep(ResponseTime.of(0, 54), allowance))
            .step(
                SetPoint.HIGH_HIGH,
                new ResponseStep(new ResponseTime(234, 60, detection), allowance))
            .step(SetPoint.MAXIMUM_WORKING, new ResponseStep(ResponseTime.of(120, 0), Margin.NONE))
            .step(SetPoint.LOW_LOW, new ResponseStep(ResponseTime.of(120, 30), allowance))
            .build());
  }

  // Levels, volumes and the share of 51.3 % below: a separate Python program, bisection of the
  // segment formula in L (R^2 acos((R-h)/R) - (R-h) sqrt(2Rh-h^2)), R 1.25 m, L 8 m; it gives
  // V(2.35) 38.307942 m3 as overfill_examples.csv does. Detection: 1 s interval + (5 - 1) / 2 x 1 s
  // median + 2 s on-delay + 1 s other = 6 s.
  @Test
  void derivesTheSetPointsOfTheBitumenTank() {
    SetPointPlan plan = bitumenTank(60);

    assertTrue(plan.fits());
    double[][] expected = {
      {2.350000, 38.3079},
      {2.245363, 37.1703},
      {1.888661, 31.8283},
      {1.775597, 29.8283},
      {0.438937, 4.6375},
      {0.300000, 2.6693}
    };
    List<SetPointRow> rows = plan.rows();
    assertEquals(expected.length, rows.size());
    for (int i = 0; i < expected.length; i++) {
      assertEquals(expected[i][0], rows.get(i).levelMetres(), 1e-6, rows.get(i)::toString);
      assertEquals(expected[i][1], rows.get(i).volumeCubicMetres(), 1e-4, rows.get(i)::toString);
    }
    assertEquals(300, plan.row(SetPoint.HIGH_HIGH).requiredSeconds(), 1e-9);
  }

  @Test
  void tellsThatAGreaterPumpDoesNotFit() {
    SetPointPlan plan = bitumenTank(500);

    assertFalse(plan.fits());
    assertEquals(
        "high-high: the volume of the response time does not fit the vessel (short of 13.884 m3);"
            + " cut the greatest flows to 256 m3/h in and 20.5 m3/h out, or all response times to"
            + " 51.3 %, or widen the critical levels",
        plan.problems().get(0).text());
  }

  // docs/loop-check.md

  private static LoopSides silo(double receiverTop) {
    return new LoopSides(
        LoopRange.ofDistance(20.4, 0.4),
        LoopRange.ofLevel(0, receiverTop),
        Mounting.plumb(20.4),
        LoopLimits.NE43,
        Optional.of(RawCounts.signed16(0, 27648)));
  }

  // High-high 18.5 m: 18.5 / 20 x 16 + 4 = 18.8 mA, 92.5 %, 25 574.4 counts; the receiver's 18 m of
  // span make 16.65 m of it, and show 18.5 m at 18.5 / 18 x 16 + 4 = 20.444 mA: 20.556 m of level.
  @Test
  void findsTheReceiverOfTheSilo() {
    LoopCheck check = LoopCheck.of(silo(18), List.of(new CheckLevel("high-high", 18.5)));
    LoopCheckRow row = check.rows().get(5);

    assertEquals(18.8, row.signal().currentMilliamps(), 1e-9);
    assertEquals(92.5, row.signal().percent(), 1e-9);
    assertEquals(25_574, row.signal().rawCount().orElseThrow());
    assertEquals(1.9, row.surface().distanceMetres(), 1e-9);
    assertEquals(16.65, row.shown().levelMetres().orElseThrow(), 1e-9);
    assertEquals(-1.85, row.shown().errorMetres().orElseThrow(), 1e-9);
    assertEquals(20.5556, row.shown().surfaceMetres().orElseThrow(), 1e-4);
    assertEquals("100 %", check.problems().get(0).point());
    assertTrue(check.problems().get(0).text().contains("-2.0000 m"));
    assertTrue(LoopCheck.of(silo(20), List.of()).problems().isEmpty());
  }

  // 10 m by dip: 12 mA ideal; 12.40 mA is +2.5 %; 12.40 mA means 10.5 m, shown 10.51 m: +0.05 %.
  @Test
  void tellsTheSideOfTheSilo() {
    LoopObservation observed = new LoopObservation(10, 12.4, OptionalDouble.of(10.51));
    LoopFinding finding = LoopFinding.of(silo(20), observed, new Tolerance(0.5, 0.25));

    assertEquals(12, finding.idealMilliamps(), 1e-9);
    assertEquals(2.5, finding.transmitterErrorPercent(), 1e-9);
    assertEquals(10.5, finding.receiver().expectedMetres().orElseThrow(), 1e-9);
    assertEquals(0.05, finding.receiver().errorPercent().orElseThrow(), 1e-9);
    assertEquals(Verdict.TRANSMITTER_SIDE_AT_FAULT, finding.verdict());
  }
}
