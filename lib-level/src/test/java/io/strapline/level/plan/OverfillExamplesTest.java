package io.strapline.level.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.units.MassFlowUnit;
import io.strapline.level.units.VolumeFlowUnit;
import io.strapline.level.units.VolumeUnit;
import io.strapline.level.vessel.LyingCylinder;
import io.strapline.level.vessel.PrismSection;
import io.strapline.level.vessel.Rectangle;
import io.strapline.level.vessel.StackedVessel;
import io.strapline.level.vessel.Vessel;
import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The worked rows of {@code overfill_examples.csv}, whose last columns name the sources. A value of
 * the table must be met to one unit of its last printed digit.
 */
class OverfillExamplesTest {

  private static final List<CsvRow> ROWS =
      CsvRows.read(OverfillExamplesTest.class, "overfill_examples.csv");

  private static CsvRow row(String example, String quantity) {
    return ROWS.stream()
        .filter(row -> row.text("example").equals(example))
        .filter(row -> row.text("quantity").equals(quantity))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException(example + ": no row " + quantity));
  }

  private static double value(String example, String quantity) {
    return row(example, quantity).number("value");
  }

  private static void meets(String example, String quantity, double actual) {
    CsvRow row = row(example, quantity);
    BigDecimal printed = new BigDecimal(row.text("value"));
    assertEquals(printed.doubleValue(), actual, printed.ulp().doubleValue(), row::toString);
  }

  private static double minutes(double seconds) {
    return seconds / 60;
  }

  private static DesignFlows inflow(double cubicMetresPerHour) {
    return new DesignFlows(VolumeFlowUnit.CUBIC_METRE_PER_HOUR.toSi(cubicMetresPerHour), 0);
  }

  private static ResponseStep step(double minutes, double factor, double allowance) {
    return new ResponseStep(ResponseTime.of(0, 60 * minutes), new Margin(factor, 0, 0, allowance));
  }

  private static double riseMetresPerMinute(Vessel vessel, DesignFlows flows, double level) {
    return 60 * flows.inCubicMetresPerSecond() / vessel.surfaceSquareMetres(level);
  }

  /** Both in one: the limit alone from the overflow, and the trip between overflow and limit. */
  @Test
  void meetsThePublishedExampleOfTheCourse() {
    String name = "COURSE-T101";
    Vessel tank = StackedVessel.of(List.of(new PrismSection(new Rectangle(5, 4), 10)));
    DesignFlows flows = inflow(value(name, "maximum inflow"));
    double overflow = value(name, "overflow level");
    ResponseTime response =
        ResponseTime.of(
            60 * value(name, "operator response"), 60 * value(name, "time for the action to work"));
    double factor = value(name, "margin factor");
    SetPointRow limit =
        SetPointPlan.of(
                SetPointBasis.builder(tank, flows)
                    .criticalHigh(overflow)
                    .step(
                        SetPoint.HIGH_HIGH, new ResponseStep(response, new Margin(factor, 0, 0, 0)))
                    .build())
            .row(SetPoint.HIGH_HIGH);

    meets(name, "plan area", tank.surfaceSquareMetres(overflow));
    meets(name, "rise rate", riseMetresPerMinute(tank, flows, overflow));
    meets(name, "time available required", minutes(limit.requiredSeconds()));
    meets(name, "level margin", overflow - limit.levelMetres());
    meets(name, "high alarm limit", limit.levelMetres());

    double tripMinutes = (overflow - value(name, "independent trip")) / 0.05;
    SetPointPlan withTrip =
        SetPointPlan.of(
            SetPointBasis.builder(tank, flows)
                .criticalHigh(overflow)
                .step(SetPoint.AUTOMATIC_SHUT_OFF, step(tripMinutes, 1, 0))
                .step(SetPoint.HIGH_HIGH, new ResponseStep(response, Margin.NONE))
                .build());
    meets(name, "independent trip", withTrip.row(SetPoint.AUTOMATIC_SHUT_OFF).levelMetres());
    meets(name, "high alarm limit", withTrip.row(SetPoint.HIGH_HIGH).levelMetres());
    meets(name, "alarm to trip", minutes(withTrip.row(SetPoint.HIGH_HIGH).stepSeconds()));
  }

  @Test
  void meetsTheStateRuleOfTwoMinutesAtLeast() {
    String name = "RULE-2MIN";
    double capacity = VolumeUnit.US_GALLON.toSi(value(name, "rated capacity"));
    Vessel tank = StackedVessel.of(List.of(new PrismSection(new Rectangle(3, 3), capacity / 9)));
    double flow = VolumeFlowUnit.US_GALLON_PER_MINUTE.toSi(value(name, "fill rate"));
    ResponseStep stop =
        new ResponseStep(
            ResponseTime.of(0, 60 * value(name, "stop time")), new Margin(1, 120, 0, 0));
    SetPointRow limit =
        SetPointPlan.of(
                SetPointBasis.builder(tank, new DesignFlows(flow, 0))
                    .step(SetPoint.HIGH_HIGH, stop)
                    .build())
            .row(SetPoint.HIGH_HIGH);

    meets(name, "time used", minutes(limit.requiredSeconds()));
    double gallons = VolumeUnit.US_GALLON.fromSi(limit.volumeCubicMetres());
    assertEquals(value(name, "maximum safe fill volume"), gallons, 1e-6);
  }

  @Test
  void meetsTheVerticalCylinder() {
    String name = "EX1-VERTICAL";
    Vessel tank = StackedVessel.uprightCylinder(value(name, "diameter"), 12);
    DesignFlows flows = inflow(value(name, "maximum fill rate"));
    double allowance = value(name, "measurement allowance");
    double operator = value(name, "operator time between working level and high-high");
    SetPointPlan plan =
        SetPointPlan.of(
            SetPointBasis.builder(tank, flows)
                .criticalHigh(value(name, "critical high"))
                .step(
                    SetPoint.HIGH_HIGH,
                    step(value(name, "response time for high-high"), 1, allowance))
                .step(SetPoint.MAXIMUM_WORKING, step(operator, 1, allowance))
                .build());
    SetPointRow highHigh = plan.row(SetPoint.HIGH_HIGH);
    double critical = plan.row(SetPoint.CRITICAL_HIGH).volumeCubicMetres();

    assertTrue(plan.fits());
    meets(name, "plan area", tank.surfaceSquareMetres(5));
    meets(name, "rise rate", riseMetresPerMinute(tank, flows, 5));
    meets(name, "high-high = CH - rate x response - allowance", highHigh.levelMetres());
    meets(
        name,
        "maximum working level = HH - rate x time - allowance",
        plan.row(SetPoint.MAXIMUM_WORKING).levelMetres());
    meets(name, "volume between HH and CH", critical - highHigh.volumeCubicMetres());
    meets(name, "time HH to CH at maximum rate", minutes(highHigh.criticalSeconds()));
  }

  @Test
  void meetsTheLyingCylinderWhereAConstantSpeedWouldMiss() {
    String name = "EX2-HORIZONTAL";
    Vessel tank = new LyingCylinder(2 * value(name, "radius"), value(name, "length"));
    DesignFlows flows = inflow(value(name, "maximum fill rate"));
    double critical = value(name, "critical high");
    double minutes = value(name, "response time");
    SetPointPlan plan =
        SetPointPlan.of(
            SetPointBasis.builder(tank, flows)
                .criticalHigh(critical)
                .step(SetPoint.HIGH_HIGH, step(minutes, 1, 0))
                .build());
    SetPointRow highHigh = plan.row(SetPoint.HIGH_HIGH);

    meets(name, "volume at critical high", plan.row(SetPoint.CRITICAL_HIGH).volumeCubicMetres());
    meets(name, "volume at high-high = V(CH) - Q x t", highHigh.volumeCubicMetres());
    meets(name, "high-high level (inverse)", highHigh.levelMetres());
    double atHighHigh = riseMetresPerMinute(tank, flows, highHigh.levelMetres());
    meets(name, "rise rate at critical high", riseMetresPerMinute(tank, flows, critical));
    meets(name, "rise rate at high-high", atHighHigh);
    meets(
        name,
        "error if the rate at high-high were used as constant",
        critical - atHighHigh * minutes - highHigh.levelMetres());
  }

  /** Levels of equal volume: two thirds of the cone below its apex, one third above the wall. */
  @Test
  void meetsTheSiloByItsLevelOfEqualVolume() {
    String name = "EX3-SILO";
    double diameter = value(name, "diameter");
    Vessel silo = StackedVessel.uprightCylinder(diameter, value(name, "inlet height"));
    double cone = diameter / 2 * Math.tan(Math.toRadians(value(name, "angle of repose")));
    double kilogramsPerSecond = MassFlowUnit.TONNE_PER_HOUR.toSi(value(name, "fill rate"));
    DesignFlows flows = DesignFlows.ofMass(kilogramsPerSecond, 0, value(name, "bulk density"));
    double apex = value(name, "critical high at the apex (0.5 m below inlet)");
    double minutes = value(name, "response time (conveyor run-out included)");
    SetPointRow highHigh =
        SetPointPlan.of(
                SetPointBasis.builder(silo, flows)
                    .criticalHigh(apex - 2 * cone / 3)
                    .step(
                        SetPoint.HIGH_HIGH, step(minutes, 1, value(name, "measurement allowance")))
                    .build())
            .row(SetPoint.HIGH_HIGH);

    meets(name, "plan area", silo.surfaceSquareMetres(5));
    meets(name, "rise rate of the pile", riseMetresPerMinute(silo, flows, 5));
    meets(name, "cone height", cone);
    meets(name, "equivalent flat level (apex - 2/3 cone)", highHigh.levelMetres());
    meets(name, "high-high at the apex", highHigh.levelMetres() + 2 * cone / 3);
    meets(name, "equivalent level at the wall", highHigh.levelMetres() - cone / 3);
    meets(
        name,
        "mass still admitted after high-high",
        kilogramsPerSecond * highHigh.requiredSeconds() / 1000);
  }

  /** The order of the levels from the top, as the trade article gives it. */
  @Test
  void namesTheLevelsInThePublishedOrder() {
    String order = row("API2350", "level order from the top").text("value");
    List<String> published = List.of(order.split(" > ", -1));
    List<String> ours =
        List.of(SetPoint.values()).stream()
            .limit(published.size())
            .map(SetPoint::label)
            .map(label -> label.replace("automatic", "automated"))
            .toList();

    assertEquals(published, ours);
  }
}
