package io.strapline.level.surface;

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
import io.strapline.level.units.LengthUnit;
import io.strapline.level.units.VolumeUnit;
import io.strapline.level.vessel.StackedVessel;
import java.time.Instant;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SurfaceModelTest {

  private static final Instant START = Instant.parse("2025-03-01T06:00:00Z");
  private static final FlowThresholds FLOWS = new FlowThresholds(0.01, 0.005);

  private int second;

  private static SurfaceSettings silo(PlanPoint gauge, ShapeChoice choice) {
    return new SurfaceSettings(Vessels.SILO, Beam.plumb(21.5, gauge), Piling.central(32), choice);
  }

  private static SurfaceModel byFlow(PlanPoint gauge, DrawPattern pattern) {
    return new SurfaceModel(
        silo(gauge, new ShapeChoice(SurfaceRule.BY_FLOW, SurfaceShape.FLAT, pattern, FLOWS)));
  }

  private SurfaceSnapshot update(SurfaceModel model, double level, double flow) {
    Instant now = START.plusSeconds(second++);
    return model.update(Reading.good(level, now), Reading.good(flow, now));
  }

  /**
   * A 15 ft cylinder with a central heap of 3 ft resting on level L: 176.715 ft3 or 1.000 ft in the
   * heap; a beam at radius 0, 5 and 7.5 ft reads 3, 1 and 0 ft above L and is off by +2, 0 and -1
   * ft as a flat reading; corrected, all three agree.
   */
  @ParameterizedTest
  @CsvSource({"0, 3, 2", "5, 1, 0", "7.5, 0, -1"})
  void fieldCaseOneThirdRule(double radiusFeet, double aboveFeet, double errorFeet) {
    String inputs = CsvRows.read(SurfaceModelTest.class, "field_cases.csv").get(0).text("input");
    assertTrue(inputs.contains("diameter 15 ft") && inputs.contains("radius 0, 5 and 7.5 ft"));
    double foot = LengthUnit.FOOT.toSi(1);
    double base = 20 * foot;
    SolidsVessel silo = SolidsVessel.of(StackedVessel.uprightCylinder(15 * foot, 60 * foot));
    SurfaceSettings settings =
        new SurfaceSettings(
            silo,
            Beam.plumb(61 * foot, new PlanPoint(radiusFeet * foot, 0)),
            Piling.central(Math.toDegrees(Math.atan(3 / 7.5))),
            ShapeChoice.always(SurfaceRule.ALWAYS_HEAP));
    SurfaceSnapshot snapshot = update(new SurfaceModel(settings), base + aboveFeet * foot, 0);
    double heap = snapshot.volume().value() - silo.curve().volumeCubicMetres(base);
    assertEquals(176.715, VolumeUnit.CUBIC_FOOT.fromSi(heap), 0.001);
    assertEquals(1, (snapshot.equivalentLevel().value() - base) / foot, 1e-9);
    assertEquals(errorFeet, snapshot.bias().levelMetres() / foot, 1e-9);
    double area = silo.plan().areaSquareMetres();
    assertEquals(errorFeet * foot * area, snapshot.bias().volumeCubicMetres(), 1e-9);
  }

  /** Worked example 3: apex, wall and flat equivalent of a 6 m silo with 28 degrees. */
  @Test
  void overfillExampleThree() {
    Map<String, Double> example =
        CsvRows.read(SurfaceModelTest.class, "overfill_examples.csv").stream()
            .collect(Collectors.toMap(row -> row.text("quantity"), row -> value(row)));
    SolidsVessel silo = SolidsVessel.of(StackedVessel.uprightCylinder(of(example, "diameter"), 20));
    Piling piling = Piling.central(of(example, "angle of repose"));
    Beam beam = Beam.plumb(20.5, PlanPoint.CENTRE);
    ShapeChoice choice = ShapeChoice.always(SurfaceRule.ALWAYS_HEAP);
    SurfaceModel model = new SurfaceModel(new SurfaceSettings(silo, beam, piling, choice));
    double apex = of(example, "high-high at the apex");
    SurfaceSnapshot snapshot = update(model, apex, 0);
    assertEquals(apex, snapshot.highest().value());
    assertEquals(of(example, "equivalent level at the wall"), snapshot.lowest().value(), 1e-6);
    assertEquals(
        of(example, "equivalent flat level (apex - 2/3 cone)"),
        snapshot.equivalentLevel().value(),
        1e-6);
    assertEquals(
        of(example, "cone height"), snapshot.highest().value() - snapshot.lowest().value(), 1e-6);
  }

  private static double value(CsvRow row) {
    return Double.parseDouble(row.text("value"));
  }

  private static double of(Map<String, Double> example, String quantity) {
    Double value = example.get(quantity);
    return value == null ? Double.NaN : value;
  }

  /** At two thirds of the radius a flat reading is right, filling or drawing. */
  @Test
  void atTwoThirdsOfTheRadiusAFlatReadingIsRight() {
    SurfaceModel model = byFlow(PlanPoint.polar(2, 10), DrawPattern.WHOLE_FUNNEL);
    for (double flow : new double[] {0.02, -0.02}) {
      SurfaceBias bias = update(model, 12, flow).bias();
      assertEquals(0, bias.levelMetres(), 1e-12);
      assertEquals(0, bias.volumeCubicMetres(), 1e-9);
    }
  }

  /** By hand on the axis: a heap holds 2/3 of its height less than flat, a funnel as much more. */
  @Test
  void theShapeFollowsTheFlowAndStaysWhileStill() {
    SurfaceModel model = byFlow(PlanPoint.CENTRE, DrawPattern.WHOLE_FUNNEL);
    double third = 2 * Math.tan(Math.toRadians(32));
    assertEquals(0, update(model, 12, 0).bias().levelMetres());
    SurfaceSnapshot filling = update(model, 12, 0.01);
    assertEquals(third, filling.bias().levelMetres(), 1e-12);
    assertEquals(MaterialFlow.FILLING, filling.state().flow());
    SurfaceSnapshot still = update(model, 12, 0.004);
    assertEquals(SurfaceShape.HEAP, still.state().shape());
    assertEquals(MaterialFlow.STILL, still.state().flow());
    assertEquals(START.plusSeconds(1), still.state().shapeSince());
    SurfaceSnapshot drawing = update(model, 12, -0.01);
    assertEquals(-third, drawing.bias().levelMetres(), 1e-12);
    assertEquals(SurfaceShape.FUNNEL, drawing.state().shape());
    assertEquals(START.plusSeconds(3), drawing.state().shapeSince());
  }

  @Test
  void flowsBetweenTheThresholdsChangeNothing() {
    assertEquals(MaterialFlow.STILL, FLOWS.next(MaterialFlow.STILL, 0.0099));
    assertEquals(MaterialFlow.FILLING, FLOWS.next(MaterialFlow.STILL, 0.01));
    assertEquals(MaterialFlow.FILLING, FLOWS.next(MaterialFlow.FILLING, 0.005));
    assertEquals(MaterialFlow.STILL, FLOWS.next(MaterialFlow.FILLING, 0.0049));
    assertEquals(MaterialFlow.STILL, FLOWS.next(MaterialFlow.FILLING, -0.0099));
    assertEquals(MaterialFlow.DRAWING, FLOWS.next(MaterialFlow.FILLING, -0.01));
    assertEquals(MaterialFlow.DRAWING, FLOWS.next(MaterialFlow.DRAWING, -0.005));
    assertEquals(MaterialFlow.STILL, FLOWS.next(MaterialFlow.DRAWING, 0));
  }

  @Test
  void theUsersChoiceIsChangedByNoFlow() {
    for (SurfaceRule rule : SurfaceRule.values()) {
      if (rule == SurfaceRule.BY_FLOW) {
        continue;
      }
      SurfaceModel model = new SurfaceModel(silo(PlanPoint.CENTRE, ShapeChoice.always(rule)));
      SurfaceShape shape = update(model, 12, 0.5).state().shape();
      assertEquals(shape, update(model, 12, -0.5).state().shape());
      assertTrue(rule.name().endsWith(shape.name()), rule + " gives " + shape);
      Reading bad = new Reading(0, Quality.bad(Cause.SOURCE_SILENT), START);
      assertTrue(model.update(Reading.good(12, START), bad).volume().quality().isGood());
    }
  }

  /** Kept around the crater, the heap holds more than a funnel over the whole plan would. */
  @Test
  void aCraterLeavesTheHeapStandingAroundIt() {
    SurfaceModel model = byFlow(PlanPoint.polar(0.5, 0), DrawPattern.CRATER);
    SurfaceSnapshot full = update(model, 15, 0.02);
    SurfaceSnapshot begun = update(model, 15, -0.02);
    assertEquals(SurfaceShape.CRATER, begun.state().shape());
    assertEquals(full.volume().value(), begun.volume().value());
    assertTrue(begun.uncertaintyCubicMetres() > 0);
    SurfaceSnapshot seen = update(model, 14.5, -0.02);
    ConeSurface heap =
        ConeSurface.heap(PlanPoint.CENTRE, 0, 32).through(PlanPoint.polar(0.5, 0), 15);
    ConeSurface funnel =
        ConeSurface.funnel(PlanPoint.CENTRE, 0, 32).through(PlanPoint.polar(0.5, 0), 14.5);
    double expected =
        SurfaceContent.of(Vessels.SILO, new CraterSurface(heap, funnel)).volumeCubicMetres();
    assertEquals(expected, seen.volume().value());
    assertEquals(0, seen.uncertaintyCubicMetres());
    assertTrue(seen.volume().value() < full.volume().value());
    double funnelOnly = SurfaceContent.of(Vessels.SILO, funnel).volumeCubicMetres();
    assertNotEquals(funnelOnly, seen.volume().value(), 1);
  }

  /** The crater only grows while drawing: its volume never rises with a falling level. */
  @Test
  void theVolumeFallsWithTheLevelInTheCrater() {
    SurfaceModel model = byFlow(PlanPoint.polar(1, 0), DrawPattern.CRATER);
    double before = update(model, 15, 0.02).volume().value();
    for (double level = 15; level > 3; level -= 0.25) {
      double now = update(model, level, -0.02).volume().value();
      assertTrue(now <= before + 1e-6, "at " + level + ": " + now + " after " + before);
      before = now;
    }
  }

  @Test
  void aBadLevelLeavesTheLastValuesAtBad() {
    SurfaceModel model = byFlow(PlanPoint.CENTRE, DrawPattern.WHOLE_FUNNEL);
    SurfaceSnapshot good = update(model, 12, 0.02);
    Quality noReturn = Quality.bad(Cause.NO_RETURN);
    SurfaceSnapshot bad =
        model.update(
            new Reading(12, noReturn, START.plusSeconds(9)), Reading.good(0, START.plusSeconds(9)));
    assertEquals(noReturn, bad.volume().quality());
    assertEquals(noReturn, bad.highest().quality());
    assertEquals(START.plusSeconds(9), bad.volume().time());
    assertEquals(good.volume().value(), bad.volume().value());
  }

  @Test
  void aBadFlowKeepsTheShapeAndMakesTheResultUncertain() {
    SurfaceModel model = byFlow(PlanPoint.CENTRE, DrawPattern.WHOLE_FUNNEL);
    update(model, 12, 0.02);
    Reading silent = new Reading(-5, Quality.bad(Cause.SOURCE_SILENT), START.plusSeconds(9));
    SurfaceSnapshot snapshot = model.update(Reading.good(12, START.plusSeconds(9)), silent);
    assertEquals(SurfaceShape.HEAP, snapshot.state().shape());
    assertEquals(Quality.uncertain(Cause.SOURCE_SILENT), snapshot.volume().quality());
  }

  /** Otherwise alarms would be held back on a live level because the flow is held. */
  @Test
  void aHeldFlowDoesNotMakeALiveLevelCountAsHeld() {
    SurfaceModel model = byFlow(PlanPoint.CENTRE, DrawPattern.WHOLE_FUNNEL);
    update(model, 12, 0.02);
    Reading held = new Reading(-5, Quality.uncertain(Cause.NO_RETURN_HELD), START);
    SurfaceSnapshot snapshot = model.update(Reading.good(12, START), held);
    assertEquals(Quality.GOOD, snapshot.highest().quality());
    assertEquals(SurfaceShape.HEAP, snapshot.state().shape());
  }

  @Test
  void aWorseLevelStaysTheWorst() {
    SurfaceModel model = byFlow(PlanPoint.CENTRE, DrawPattern.WHOLE_FUNNEL);
    Quality simulated = Quality.uncertain(Cause.SIMULATED);
    SurfaceSnapshot snapshot =
        model.update(new Reading(12, simulated, START), Reading.good(0.02, START));
    assertEquals(simulated, snapshot.equivalentLevel().quality());
    assertEquals(simulated, snapshot.lowest().quality());
  }

  @Test
  void levelsOutsideTheVesselAreClampedAndUncertain() {
    SurfaceModel model =
        new SurfaceModel(silo(PlanPoint.CENTRE, ShapeChoice.always(SurfaceRule.ALWAYS_FLAT)));
    SurfaceSnapshot above = update(model, 22, 0);
    assertEquals(Vessels.SILO.curve().capacityCubicMetres(), above.volume().value());
    assertEquals(Cause.OUTSIDE_VESSEL, above.volume().quality().cause());
    SurfaceSnapshot below = update(model, -1, 0);
    assertEquals(0, below.volume().value());
    assertEquals(Cause.OUTSIDE_VESSEL, below.volume().quality().cause());
  }

  /** A beam on the bare hopper wall cannot tell a small pile from none. */
  @Test
  void bareWallUnderTheBeamIsOnlyABound() {
    SurfaceModel model =
        new SurfaceModel(silo(PlanPoint.polar(2, 0), ShapeChoice.always(SurfaceRule.ALWAYS_HEAP)));
    double wall = Vessels.SILO.floorMetres(PlanPoint.polar(2, 0));
    SurfaceSnapshot snapshot = update(model, wall, 0);
    assertEquals(Cause.OUTSIDE_VESSEL, snapshot.volume().quality().cause());
    assertEquals(snapshot.volume().value(), snapshot.uncertaintyCubicMetres());
    assertTrue(update(model, wall + 0.5, 0).volume().quality().isGood());
  }

  /** A heap whose peak would stand above the roof cannot be: the beam or the angle is wrong. */
  @Test
  void aHeapThroughTheRoofIsUncertain() {
    SurfaceModel model =
        new SurfaceModel(
            silo(PlanPoint.polar(2.9, 0), ShapeChoice.always(SurfaceRule.ALWAYS_HEAP)));
    SurfaceSnapshot snapshot = update(model, 20.5, 0);
    assertEquals(Cause.OUTSIDE_VESSEL, snapshot.highest().quality().cause());
    assertEquals(21.2, snapshot.highest().value(), 1e-12);
  }

  /** A tilted beam meets the heap elsewhere than under its mounting. */
  @Test
  void theFootOfATiltedBeamMovesWithTheLevel() {
    Beam tilted = Beam.plumb(21.5, PlanPoint.polar(2, 0)).aimed(5, 180);
    SurfaceSettings settings =
        new SurfaceSettings(
            Vessels.SILO, tilted, Piling.central(32), ShapeChoice.always(SurfaceRule.ALWAYS_HEAP));
    double foot = 2 - 9.5 * Math.tan(Math.toRadians(5));
    double expected = Math.tan(Math.toRadians(32)) * (2 - foot);
    assertEquals(expected, update(new SurfaceModel(settings), 12, 0).bias().levelMetres(), 1e-9);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, 0, -5, 80.001, 90})
  void refusesAnglesOfReposeThatNoSolidHas(double bad) {
    PlanPoint centre = PlanPoint.CENTRE;
    assertRefused("Piling.fillRepose", () -> new Piling(centre, centre, bad, 30));
    assertRefused("Piling.drawRepose", () -> new Piling(centre, centre, 30, bad));
  }

  @Test
  void coneTakesEveryAngleFromFlatToTheSteepest() {
    assertEquals(0, ConeSurface.heap(PlanPoint.CENTRE, 5, 0).slope());
    assertTrue(ConeSurface.heap(PlanPoint.CENTRE, 5, 80).isHeap());
    assertFalse(ConeSurface.funnel(PlanPoint.CENTRE, 5, 80).isHeap());
    assertRefused("ConeSurface.repose", () -> ConeSurface.heap(PlanPoint.CENTRE, 5, -0.1));
    assertRefused("ConeSurface.repose", () -> ConeSurface.funnel(PlanPoint.CENTRE, 5, 90));
    assertRefused("ConeSurface.apexLevel", () -> ConeSurface.heap(PlanPoint.CENTRE, Double.NaN, 9));
  }

  @Test
  void refusesPlacesOutsideTheVesselAndStatesThatCannotBe() {
    PlanPoint outside = PlanPoint.polar(3.2, 0);
    ShapeChoice flat = ShapeChoice.always(SurfaceRule.ALWAYS_FLAT);
    Beam beam = Beam.plumb(21.5, PlanPoint.CENTRE);
    Piling fill = new Piling(outside, PlanPoint.CENTRE, 30, 30);
    Piling draw = new Piling(PlanPoint.CENTRE, outside, 30, 30);
    assertRefused("Piling.fillPoint", () -> new SurfaceSettings(Vessels.SILO, beam, fill, flat));
    assertRefused("Piling.drawPoint", () -> new SurfaceSettings(Vessels.SILO, beam, draw, flat));
    assertRefused("Beam.position", () -> silo(outside, flat));
    assertRefused("ShapeChoice.atStart", () -> ShapeChoice.byFlow(SurfaceShape.CRATER, FLOWS));
    assertRefused("ShapeChoice.rule", () -> ShapeChoice.always(SurfaceRule.BY_FLOW));
    assertRefused(
        "CraterSurface.slopes",
        () ->
            new CraterSurface(
                /* heap= */ ConeSurface.funnel(outside, 1, 9),
                /* funnel= */ ConeSurface.heap(outside, 1, 9)));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1, 0})
  void refusesFlowsThatAreNoThreshold(double bad) {
    assertRefused("FlowThresholds.start", () -> new FlowThresholds(bad, 0));
    assertRefused("FlowThresholds.stop", () -> new FlowThresholds(0.01, bad == 0 ? 0.01 : bad));
  }
}
