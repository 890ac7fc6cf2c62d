package io.strapline.level.plan;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.loop.LoopRange;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.signal.SignalSettings;
import io.strapline.level.vessel.StackedVessel;
import io.strapline.level.vessel.Vessel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the plan is told, and what it refuses. */
class SetPointBasisTest {

  private static final Vessel TANK = StackedVessel.uprightCylinder(3, 10);

  private static SetPointBasis.Builder basis() {
    return SetPointBasis.builder(TANK, new DesignFlows(0.1, 0.1));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1e-9})
  void refusesWhatIsNegativeOrNotFinite(double wrong) {
    DetectionDelay none = DetectionDelay.NONE;
    assertRefused("DesignFlows.in", () -> new DesignFlows(wrong, 0));
    assertRefused("DesignFlows.out", () -> new DesignFlows(0, wrong));
    assertRefused("DesignFlows.in", () -> DesignFlows.ofMass(wrong, 0, 700));
    assertRefused("DesignFlows.out", () -> DesignFlows.ofMass(0, wrong, 700));
    assertRefused("DesignFlows.density", () -> DesignFlows.ofMass(1, 1, wrong));
    assertRefused("ResponseTime.operator", () -> new ResponseTime(wrong, 0, none));
    assertRefused("ResponseTime.shutOff", () -> new ResponseTime(0, wrong, none));
    assertRefused("DetectionDelay.sampling", () -> new DetectionDelay(wrong, 0, 0, 0));
    assertRefused("DetectionDelay.filter", () -> new DetectionDelay(0, wrong, 0, 0));
    assertRefused("DetectionDelay.onDelay", () -> new DetectionDelay(0, 0, wrong, 0));
    assertRefused("DetectionDelay.other", () -> new DetectionDelay(0, 0, 0, wrong));
    assertRefused(
        "DetectionDelay.sampleInterval",
        () -> DetectionDelay.of(SignalSettings.PLAIN, wrong, 0, 0));
    assertRefused("Margin.leastSeconds", () -> new Margin(1, wrong, 0, 0));
    assertRefused("Margin.leastMetres", () -> new Margin(1, 0, wrong, 0));
    assertRefused("Margin.allowance", () -> Margin.allowance(wrong));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1, 0, 0.999})
  void refusesAFactorThatWouldTakeTimeAway(double wrong) {
    assertRefused("Margin.factor", () -> new Margin(wrong, 0, 0, 0));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -0.001, 10.001})
  void refusesACriticalLevelOutsideTheVessel(double wrong) {
    assertRefused("SetPointBasis.criticalHigh", () -> basis().criticalHigh(wrong).build());
    assertRefused("SetPointBasis.criticalLow", () -> basis().criticalLow(wrong).build());
  }

  @Test
  void refusesCriticalLevelsOutOfOrder() {
    assertRefused(
        "SetPointBasis.criticalHigh", () -> basis().criticalHigh(4).criticalLow(4).build());
  }

  @Test
  void refusesASideWithoutFlow() {
    ResponseStep step = ResponseStep.ofSeconds(60);
    SetPointBasis.Builder noInflow = SetPointBasis.builder(TANK, new DesignFlows(0, 0.1));
    SetPointBasis.Builder noOutflow = SetPointBasis.builder(TANK, new DesignFlows(0.1, 0));

    assertRefused("SetPointBasis.flows.in", () -> noInflow.step(SetPoint.HIGH_HIGH, step).build());
    assertRefused("SetPointBasis.flows.out", () -> noOutflow.step(SetPoint.LOW_LOW, step).build());
  }

  @Test
  void refusesToDeriveACriticalLevel() {
    ResponseStep step = ResponseStep.ofSeconds(60);
    assertRefused("SetPointBasis.step", () -> basis().step(SetPoint.CRITICAL_HIGH, step));
    assertRefused("SetPointBasis.step", () -> basis().step(SetPoint.CRITICAL_LOW, step));
  }

  @Test
  void takesTheVesselsEndsAsCriticalUnlessTold() {
    SetPointPlan plan = SetPointPlan.of(basis().build());

    assertEquals(10, plan.row(SetPoint.CRITICAL_HIGH).levelMetres());
    assertEquals(0, plan.row(SetPoint.CRITICAL_LOW).levelMetres());
    assertTrue(plan.fits());
  }

  // Reference 10.5 m; the loop reaches from 10.2 m (4 mA) to 0.7 m (20 mA) of distance.
  @Test
  void measuresBetweenTheEndsOfTheLoopRange() {
    PointSettings.Builder point =
        PointSettings.builder("LT-101").mounting(Mounting.plumb(10.5)).vessel(TANK);
    MeasuringWindow open = MeasuringWindow.of(point.build());
    MeasuringWindow ranged =
        MeasuringWindow.of(point.range(LoopRange.ofDistance(10.2, 0.7)).build());

    assertEquals(new MeasuringWindow(0, 10), open);
    assertEquals(0.3, ranged.lowestMetres(), 1e-9);
    assertEquals(9.8, ranged.highestMetres(), 1e-9);
    assertEquals(0.2, ranged.missMetres(10), 1e-9);
    assertEquals(0.3, ranged.missMetres(0), 1e-9);
    assertEquals(0, ranged.missMetres(9.7));
  }

  @Test
  void refusesAWindowThatLeavesNothing() {
    PointSettings.Builder above =
        PointSettings.builder("LT-101")
            .mounting(Mounting.plumb(30))
            .vessel(TANK)
            .range(LoopRange.ofDistance(15, 1));

    assertRefused("MeasuringWindow.highest", () -> MeasuringWindow.of(above.build()));
    assertRefused("MeasuringWindow.highest", () -> new MeasuringWindow(1, Double.NaN));
  }
}
