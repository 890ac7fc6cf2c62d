package io.strapline.level.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.inventory.TimeToTarget;
import io.strapline.level.plan.SetPointProblem.Reason;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.ConeSection;
import io.strapline.level.vessel.LyingCylinder;
import io.strapline.level.vessel.PrismSection;
import io.strapline.level.vessel.Rectangle;
import io.strapline.level.vessel.Sphere;
import io.strapline.level.vessel.StackedVessel;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SetPointPlanTest {

  private static final Instant NOW = Instant.parse("2024-05-01T06:00:00Z");

  /** Ten square metres, ten metres high: a metre is 10 m3. */
  private static final CapacityCurve TANK =
      StackedVessel.of(List.of(new PrismSection(new Rectangle(5, 2), 10)));

  /** A metre in 100 s both ways. */
  private static final DesignFlows FLOWS = new DesignFlows(0.1, 0.1);

  private static SetPointBasis.Builder basis() {
    return SetPointBasis.builder(TANK, FLOWS).criticalHigh(9.5).criticalLow(0.5);
  }

  private static SetPointBasis.Builder all(double seconds) {
    SetPointBasis.Builder builder = basis();
    for (SetPoint setPoint : SetPoint.values()) {
      if (!setPoint.isCritical()) {
        builder.step(setPoint, ResponseStep.ofSeconds(seconds));
      }
    }
    return builder;
  }

  private static double level(SetPointPlan plan, SetPoint setPoint) {
    return plan.row(setPoint).levelMetres();
  }

  // Worked by hand: 100 s of 0.1 m3/s are 10 m3, a metre.
  @Test
  void standsTheStepsOneOnTheOther() {
    SetPointPlan plan = SetPointPlan.of(all(100).build());

    List<Double> levels = List.of(9.5, 8.5, 7.5, 6.5, 2.5, 1.5, 0.5);
    List<SetPointRow> rows = plan.rows();
    assertEquals(List.of(SetPoint.values()), rows.stream().map(SetPointRow::setPoint).toList());
    for (int i = 0; i < levels.size(); i++) {
      assertEquals(levels.get(i), rows.get(i).levelMetres(), 1e-9, rows.get(i)::toString);
    }
    assertEquals(300, plan.row(SetPoint.MAXIMUM_WORKING).criticalSeconds(), 1e-6);
    assertEquals(200, plan.row(SetPoint.MINIMUM_WORKING).criticalSeconds(), 1e-6);
    assertEquals(100, plan.row(SetPoint.MINIMUM_WORKING).stepSeconds(), 1e-6);
    assertTrue(plan.fits());
    assertEquals(1, plan.shareThatFits().orElseThrow());
  }

  @Test
  void takesAllowanceLeastHeightLeastTimeAndFactorIntoAccount() {
    ResponseTime hundred = ResponseTime.of(60, 40);
    SetPointPlan plan =
        SetPointPlan.of(
            basis()
                .step(SetPoint.AUTOMATIC_SHUT_OFF, new ResponseStep(hundred, Margin.allowance(0.1)))
                .step(SetPoint.HIGH_HIGH, new ResponseStep(hundred, new Margin(1.5, 0, 0, 0)))
                .step(SetPoint.MAXIMUM_WORKING, new ResponseStep(hundred, new Margin(1, 0, 2, 0)))
                .step(SetPoint.LOW_LOW, new ResponseStep(hundred, new Margin(1, 150, 0, 0.2)))
                .build());

    assertEquals(9.5 - 1 - 0.1, level(plan, SetPoint.AUTOMATIC_SHUT_OFF), 1e-9);
    assertEquals(8.4 - 1.5, level(plan, SetPoint.HIGH_HIGH), 1e-9);
    assertEquals(6.9 - 2, level(plan, SetPoint.MAXIMUM_WORKING), 1e-9);
    assertEquals(0.5 + 1.5 + 0.2, level(plan, SetPoint.LOW_LOW), 1e-9);
    assertEquals(100, plan.row(SetPoint.MAXIMUM_WORKING).requiredSeconds());
    assertEquals(200, plan.row(SetPoint.MAXIMUM_WORKING).stepSeconds(), 1e-6);
  }

  /** "Not less than 5 min or 75 mm, whichever is greater": trade article in the examples' table. */
  @Test
  void takesTheGreaterOfLeastTimeAndLeastHeight() {
    Margin rule = new Margin(1, 300, 0.075, 0);
    ResponseStep step = new ResponseStep(ResponseTime.of(0, 10), rule);
    SetPointPlan fast = SetPointPlan.of(basis().step(SetPoint.AUTOMATIC_SHUT_OFF, step).build());
    SetPointPlan slow =
        SetPointPlan.of(
            SetPointBasis.builder(TANK, new DesignFlows(0.001, 0))
                .criticalHigh(9.5)
                .step(SetPoint.AUTOMATIC_SHUT_OFF, step)
                .build());

    assertEquals(9.5 - 3, level(fast, SetPoint.AUTOMATIC_SHUT_OFF), 1e-9);
    assertEquals(9.5 - 0.075, level(slow, SetPoint.AUTOMATIC_SHUT_OFF), 1e-9);
  }

  // 9 m between the critical levels are 90 m3; five steps of 200 s ask for 100 m3.
  @Test
  void tellsThatWorkingLevelsCrossAndWhatWouldFit() {
    SetPointPlan plan = SetPointPlan.of(all(200).build());

    assertFalse(plan.fits());
    SetPointProblem problem = plan.problems().get(0);
    assertEquals(SetPoint.MINIMUM_WORKING, problem.setPoint());
    assertEquals(Reason.ORDER, problem.reason());
    assertEquals(1, problem.shortMetres().orElseThrow(), 1e-9);
    assertEquals(10, problem.shortCubicMetres().orElseThrow(), 1e-8);
    assertEquals(0.9, plan.shareThatFits().orElseThrow(), 1e-9);
    assertTrue(problem.text().contains("323 m3/h in and 323 m3/h out"), problem.text());
    assertTrue(problem.text().contains("89.9 %"), problem.text());
    assertTrue(SetPointPlan.of(all(179.99).build()).fits());
    assertFalse(SetPointPlan.of(all(180).build()).fits(), "equal working levels leave no range");
  }

  @Test
  void givesNoLevelWhereTheVolumeDoesNotFit() {
    SetPointPlan plan =
        SetPointPlan.of(basis().step(SetPoint.HIGH_HIGH, ResponseStep.ofSeconds(1000)).build());

    SetPointProblem problem = plan.problems().get(0);
    assertEquals(SetPoint.HIGH_HIGH, problem.setPoint());
    assertEquals(Reason.NO_ROOM_FOR_VOLUME, problem.reason());
    assertEquals(10, problem.shortCubicMetres().orElseThrow(), 1e-9);
    assertEquals(0.9, plan.shareThatFits().orElseThrow(), 1e-9);
    assertThrows(IllegalArgumentException.class, () -> plan.row(SetPoint.HIGH_HIGH));
    assertEquals(2, plan.rows().size(), "the critical levels alone");
  }

  @Test
  void tellsThatAllowancesAloneLeaveNoRoom() {
    ResponseStep wide = new ResponseStep(ResponseTime.of(0, 1), new Margin(1, 0, 9.25, 0));
    SetPointPlan plan = SetPointPlan.of(basis().step(SetPoint.HIGH_HIGH, wide).build());

    SetPointProblem problem = plan.problems().get(0);
    assertEquals(Reason.NO_ROOM_FOR_HEIGHT, problem.reason());
    assertEquals(0.25, problem.shortMetres().orElseThrow(), 1e-9);
    assertTrue(plan.shareThatFits().isEmpty());
    assertTrue(problem.text().contains("reduce allowances"), problem.text());
  }

  @Test
  void tellsWhichSetPointTheTransmitterCannotMeasure() {
    SetPointPlan plan = SetPointPlan.of(all(100).window(new MeasuringWindow(1.6, 7.25)).build());

    assertEquals(
        List.of(SetPoint.HIGH_HIGH, SetPoint.LOW_LOW),
        plan.problems().stream().map(SetPointProblem::setPoint).toList());
    assertEquals(0.25, plan.problems().get(0).shortMetres().orElseThrow(), 1e-9);
    assertEquals(0.1, plan.problems().get(1).shortMetres().orElseThrow(), 1e-9);
    assertEquals(7, plan.rows().size(), "the levels themselves are right");
  }

  @Test
  void tellsTheTimeAvailableAtThePresentAndAtTheGreatestFlow() {
    SetPointPlan plan = SetPointPlan.of(all(100).build());
    List<TimeToTarget> times = plan.available(Reading.good(5, NOW), Reading.good(0.05, NOW));

    TimeToTarget critical = times.get(0);
    assertEquals("critical high", critical.target().name());
    assertEquals(900, critical.secondsAtPresentFlow().orElseThrow(), 1e-6);
    assertEquals(450, critical.secondsAtGreatestFlow().orElseThrow(), 1e-6);
    TimeToTarget lowLow = times.get(5);
    assertEquals("low-low", lowLow.target().name());
    assertTrue(lowLow.secondsAtPresentFlow().isEmpty(), "filling leads away from it");
    assertEquals(350, lowLow.secondsAtGreatestFlow().orElseThrow(), 1e-6);
  }

  @Test
  void tellsNoTimeOfABadLevel() {
    SetPointPlan plan = SetPointPlan.of(all(100).build());
    Reading bad = new Reading(5, Quality.bad(Cause.NO_RETURN), NOW);

    for (TimeToTarget time : plan.available(bad, Reading.good(0.05, NOW))) {
      assertTrue(time.secondsAtGreatestFlow().isEmpty());
      assertTrue(time.quality().isBad());
    }
  }

  private static List<CapacityCurve> vessels() {
    return List.of(
        TANK,
        new LyingCylinder(2.5, 8),
        new Sphere(4),
        StackedVessel.uprightCylinderOnCone(new ConeSection(0.3, 3, 2), 6));
  }

  /**
   * What the plan promises: after the passing of a set point, the greatest flow reaches the next
   * one not before the required time, even if the surface was the allowance above the reading.
   */
  @Test
  void leavesTheRequiredTimeInEveryVessel() {
    long seed = 20_240_501;
    Random random = new Random(seed);
    int fitting = 0;
    for (int i = 0; i < 500; i++) {
      CapacityCurve vessel = vessels().get(i % vessels().size());
      double capacity = vessel.capacityCubicMetres();
      double full = vessel.maxHeightMetres();
      double allowance = 0.01 * random.nextDouble() * full;
      SetPointBasis.Builder builder =
          SetPointBasis.builder(
                  vessel,
                  new DesignFlows(
                      capacity * (0.0001 + 0.0005 * random.nextDouble()),
                      capacity * (0.0001 + 0.0005 * random.nextDouble())))
              .criticalHigh(full * (0.9 + 0.1 * random.nextDouble()))
              .criticalLow(full * 0.1 * random.nextDouble());
      for (SetPoint setPoint : SetPoint.values()) {
        if (!setPoint.isCritical()) {
          ResponseTime time = ResponseTime.of(400 * random.nextDouble(), 100);
          builder.step(setPoint, new ResponseStep(time, Margin.allowance(allowance)));
        }
      }
      SetPointBasis basis = builder.build();
      SetPointPlan plan = SetPointPlan.of(basis);
      String told = "seed " + seed + ", loop " + i;
      if (plan.fits()) {
        fitting++;
        holdsItsPromise(basis, plan, allowance, told);
      } else {
        assertTrue(plan.shareThatFits().isPresent(), told);
      }
    }
    assertTrue(fitting > 100 && fitting < 500, "both outcomes occur: " + fitting);
  }

  private static void holdsItsPromise(
      SetPointBasis basis, SetPointPlan plan, double allowance, String told) {
    CapacityCurve vessel = basis.vessel();
    List<SetPointRow> rows = plan.rows();
    for (int i = 1; i < rows.size(); i++) {
      SetPointRow upper = rows.get(i - 1);
      SetPointRow lower = rows.get(i);
      assertTrue(upper.levelMetres() > lower.levelMetres(), told);
      if (upper.setPoint() == SetPoint.MAXIMUM_WORKING) {
        continue;
      }
      SetPointRow inner = lower.setPoint().isHigh() ? lower : upper;
      SetPointRow outer = lower.setPoint().isHigh() ? upper : lower;
      boolean up = inner.setPoint().isHigh();
      double surface = inner.levelMetres() + (up ? allowance : -allowance);
      double flow =
          up ? basis.flows().inCubicMetresPerSecond() : basis.flows().outCubicMetresPerSecond();
      double between = Math.abs(vessel.volumeCubicMetres(surface) - outer.volumeCubicMetres());
      assertEquals(
          inner.requiredSeconds(), between / flow, 1e-6, told + ", " + inner.setPoint().label());
    }
  }

  /** The share is on the edge: a little less fits, a little more does not. */
  @Test
  void findsTheGreatestShareInEveryVessel() {
    for (CapacityCurve vessel : vessels()) {
      double flow = vessel.capacityCubicMetres() / 500;
      SetPointPlan plan = planAtFlow(vessel, flow);
      double share = plan.shareThatFits().orElseThrow();

      assertFalse(plan.fits());
      assertTrue(planAtFlow(vessel, flow * share * (1 - 1e-9)).fits(), vessel.toString());
      assertFalse(planAtFlow(vessel, flow * share * (1 + 1e-9)).fits(), vessel.toString());
    }
  }

  private static SetPointPlan planAtFlow(CapacityCurve vessel, double flow) {
    ResponseStep step = ResponseStep.ofSeconds(300);
    return SetPointPlan.of(
        SetPointBasis.builder(vessel, new DesignFlows(flow, flow))
            .step(SetPoint.HIGH_HIGH, step)
            .step(SetPoint.LOW_LOW, step)
            .build());
  }
}
