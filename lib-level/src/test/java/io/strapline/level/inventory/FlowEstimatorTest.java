package io.strapline.level.inventory;

import static io.strapline.level.inventory.Series.at;
import static io.strapline.level.inventory.Series.bad;
import static io.strapline.level.inventory.Series.good;
import static io.strapline.level.inventory.Series.held;
import static io.strapline.level.inventory.Series.uncertain;
import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.vessel.CapacityCurve;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FlowEstimatorTest {

  private static final double AREA = 20;
  private static final CapacityCurve TANK = Vessels.upright(AREA, 10);
  private static final Quality WAITING = Quality.bad(Cause.WAITING_FOR_FIRST_SAMPLE);

  private final FlowEstimator estimator = estimator(60, 0.001);

  private static FlowEstimator estimator(double window, double resolution) {
    return FlowEstimator.of(FlowSettings.of(window, resolution), Content.volume(TANK));
  }

  private Flow ramp(double from, double to, double start, double metresPerSecond) {
    Flow flow = estimator.at(at(from));
    for (double t = from; t <= to; t++) {
      flow = estimator.add(good(t, start + metresPerSecond * (t - from)));
    }
    return flow;
  }

  // Plan area 20 m2 and 60 m3/h are those of the worked example of an open PLC engineering course,
  // module on alarms, section 2.6: 0.05 m/min.
  @Test
  void tellsTheInflowOfAPublishedExampleFromItsRise() {
    Flow flow = ramp(0, 90, 4, 0.05 / 60);
    assertEquals(60.0 / 3600, flow.rate().value(), 1e-12);
    assertEquals(FlowDirection.FILLING, flow.direction());
    assertEquals(Quality.GOOD, flow.rate().quality());
    assertEquals(at(90), flow.rate().time());
  }

  @Test
  void drawingIsNegative() {
    Flow flow = ramp(0, 90, 4, -0.01);
    assertEquals(-0.2, flow.rate().value(), 1e-12);
    assertEquals(FlowDirection.DRAWING, flow.direction());
  }

  // One millimetre over 60 s on 20 m2.
  @Test
  void tellsTheLimitOfTheResolutionAsFlow() {
    Flow flow = ramp(0, 60, 4, 0.01);
    assertEquals(20 * 0.001 / 60, flow.resolutionLimit(), 1e-12);
    assertEquals(1.5 * 20 * 0.001 / 60, flow.deadZone(), 1e-12);
  }

  @Test
  void theLimitFollowsTheCrossSection() {
    FlowEstimator cone =
        FlowEstimator.of(FlowSettings.of(10, 0.001), Content.volume(Vessels.cone(1, 10)));
    double[] limits = new double[2];
    for (int i = 0; i < 2; i++) {
      cone.reset();
      for (int t = 0; t <= 10; t++) {
        limits[i] = cone.add(good(t, 2 + 2 * i)).resolutionLimit();
      }
    }
    // dV/dh = 3 h^2 at 2 m and at 4 m, a step of 1 mm over 10 s.
    assertEquals(12 * 0.0001, limits[0], 2e-6);
    assertEquals(48 * 0.0001, limits[1], 2e-6);
  }

  @Test
  void isZeroInsideTheDeadZoneAndTellsWhatItSuppressed() {
    Flow inside = ramp(0, 60, 4, 0.000_024);
    assertEquals(0, inside.rate().value());
    assertEquals(FlowDirection.STILL, inside.direction());
    assertEquals(20 * 0.000_024, inside.unsuppressed(), 1e-12);

    estimator.reset();
    Flow outside = ramp(0, 60, 4, 0.000_026);
    assertEquals(20 * 0.000_026, outside.rate().value(), 1e-12);
  }

  // A signal that moves between two neighbouring steps, sampled in bursts and pauses: never a flow,
  // and the slope never above 1.5 steps per window.
  @Test
  void oneStepOfTheSignalIsNeverAFlowHoweverItIsSampled() {
    long seed = 9;
    Random random = new Random(seed);
    for (int run = 0; run < 200; run++) {
      estimator.reset();
      double t = 0;
      for (int i = 0; i < 300; i++) {
        t += random.nextInt(10) == 0 ? 20 * random.nextDouble() : 0.01 * random.nextDouble() + 1e-6;
        Flow flow = estimator.add(good(t, 4 + (random.nextBoolean() ? 0.001 : 0)));
        String where = "seed " + seed + " run " + run + " sample " + i + " " + flow;
        assertEquals(0, flow.rate().value(), where);
        assertTrue(
            Math.abs(flow.unsuppressed()) <= 1.5 * flow.resolutionLimit() * (1 + 1e-9), where);
      }
    }
  }

  // The worst there is: the step at the middle of the window gives exactly 1.5 limits.
  @Test
  void aStepAtTheMiddleReachesTheBoundAndNoMore() {
    double most = 0;
    for (int i = 0; i <= 1200; i++) {
      double t = i / 10.0;
      Flow flow = estimator.add(good(t, t < 60.05 ? 4 : 4.001));
      most = Math.max(most, flow.unsuppressed());
      assertEquals(0, flow.rate().value());
    }
    assertEquals(1.5 * 20 * 0.001 / 60, most, 1e-6);
  }

  // A course on PLC engineering, module 14 section 5: +/-0.2 of noise makes +/-2.4 per minute over
  // 10 s from end to end, and +/-24 from scan to scan. The fitted line stays well inside.
  @Test
  void isQuieterThanTheDifferenceOfTheEnds() {
    FlowEstimator tenSeconds = estimator(10, 0.001);
    long seed = 24;
    Random random = new Random(seed);
    double squares = 0;
    int n = 20_000;
    for (int i = 0; i < n + 101; i++) {
      double level = 5 + 0.2 * (2 * random.nextDouble() - 1);
      Flow flow = tenSeconds.add(good(i / 10.0, level));
      double perMinute = 60 * flow.unsuppressed() / AREA;
      assertTrue(Math.abs(perMinute) < 2.4, "seed " + seed + " sample " + i);
      squares += i > 100 ? perMinute * perMinute : 0;
    }
    // Uniform noise of +/-0.2 has a standard deviation of 0.2 / sqrt(3); 100 samples per window.
    double expected = 60 * FlowSettings.of(10, 0.001).noise(0.2 / Math.sqrt(3), 100);
    assertEquals(expected, Math.sqrt(squares / n), 0.1 * expected);
  }

  @Test
  void aRampIsExactWithUnevenSamples() {
    long seed = 77;
    Random random = new Random(seed);
    double t = 0;
    Flow flow = estimator.at(at(0));
    for (int i = 0; i < 500; i++) {
      t += 0.001 + 5 * random.nextDouble() * random.nextDouble();
      flow = estimator.add(good(t, 1 + 0.002 * t));
      if (t > 70) {
        assertEquals(0.04, flow.rate().value(), 1e-9, "seed " + seed + " sample " + i);
      }
    }
    assertTrue(t > 70, "the ramp never covered the window");
    assertEquals(Quality.GOOD, flow.rate().quality());
  }

  @Test
  void waitsUntilTheSamplesCoverTheWindow() {
    for (int t = 0; t < 60; t++) {
      Flow flow = estimator.add(good(t, 4 + t));
      assertEquals(WAITING, flow.rate().quality());
      assertEquals(0, flow.rate().value());
      assertEquals(FlowDirection.STILL, flow.direction());
    }
    assertEquals(Quality.GOOD, estimator.add(good(60, 5)).rate().quality());
  }

  // Half a window after a ramp begins the window's second half holds it: 12/W^3 times the integral
  // of u (u) over [0, W/2] is a half of the slope.
  @Test
  void aNewFlowIsHalfSeenAfterHalfAWindowAndWhollyAfterOne() {
    ramp(0, 100, 4, 0);
    double half = 0;
    double whole = 0;
    for (int t = 101; t <= 160; t++) {
      double flow = estimator.add(good(t, 4 + 0.01 * (t - 100))).rate().value();
      half = t == 130 ? flow : half;
      whole = flow;
    }
    assertEquals(0.1, half, 1e-9);
    assertEquals(0.2, whole, 1e-9);
  }

  @Test
  void aGapLongerThanTheWindowEmptiesIt() {
    ramp(0, 100, 4, 0.01);
    assertEquals(Quality.GOOD, estimator.add(good(160, 5.6)).rate().quality());
    assertEquals(WAITING, estimator.add(good(220.001, 6.2)).rate().quality());
    assertEquals(WAITING, estimator.add(good(280, 6.8)).rate().quality());
    assertEquals(0.2, estimator.add(good(280.001, 6.8)).rate().value(), 1e-4);
  }

  @Test
  void badAndHeldSamplesAreLeftOutAndHoldTheFlow() {
    ramp(0, 100, 4, 0.01);
    Flow missing = estimator.add(bad(101));
    assertEquals(0.2, missing.rate().value(), 1e-12);
    assertEquals(Quality.uncertain(Cause.SOURCE_SILENT_HELD), missing.rate().quality());
    assertEquals(at(100), missing.rate().time());
    Flow repeated = estimator.add(held(102, 5));
    assertEquals(0.2, repeated.rate().value(), 1e-12);
    Flow again = estimator.add(good(103, 5.03));
    assertEquals(0.2, again.rate().value(), 1e-12);
    assertEquals(Quality.GOOD, again.rate().quality());
  }

  @Test
  void badSamplesForLongerThanTheWindowEmptyIt() {
    ramp(0, 100, 4, 0.01);
    assertEquals(0.2, estimator.add(bad(160)).rate().value(), 1e-12);
    Flow gone = estimator.add(bad(160.001));
    assertEquals(WAITING, gone.rate().quality());
    assertEquals(0, gone.rate().value());
  }

  @Test
  void anUncertainSampleMarksTheFlowWhileItIsInTheWindow() {
    ramp(0, 100, 4, 0.01);
    Quality mark = Quality.uncertain(Cause.OUTSIDE_VESSEL);
    assertEquals(mark, estimator.add(uncertain(101, 5.01)).rate().quality());
    Quality last = mark;
    for (int t = 102; t <= 161; t++) {
      last = estimator.add(good(t, 4 + 0.01 * t)).rate().quality();
      assertEquals(t <= 161 ? mark : Quality.GOOD, last, "at " + t);
    }
    assertEquals(Quality.GOOD, estimator.add(good(162, 5.62)).rate().quality());
  }

  @Test
  void repeatedAndBackwardTimesChangeNothing() {
    Flow before = ramp(0, 100, 4, 0.01);
    assertEquals(before, estimator.add(good(100, 9)));
    assertEquals(before, estimator.add(good(99.5, 0)));
    assertEquals(before, estimator.add(good(41, 0)));
    assertEquals(0.2, estimator.add(good(101, 5.01)).rate().value(), 1e-12);
  }

  // A clock that was set back must not silence the flow until the old time comes again.
  @Test
  void aClockSetBackStartsTheWindowAnew() {
    ramp(10_000, 10_100, 4, 0.01);
    assertEquals(WAITING, estimator.add(good(0, 5)).rate().quality());
    assertEquals(0.2, ramp(1, 61, 5.01, 0.01).rate().value(), 1e-9);
  }

  @Test
  void agesBetweenSamplesByTheTimeGiven() {
    Flow last = ramp(0, 100, 4, 0.01);
    assertEquals(last, estimator.at(at(160)));
    assertEquals(WAITING, estimator.at(at(160.001)).rate().quality());
  }

  @Test
  void massFlowsInKilogramsPerSecond() {
    MassCurve mass = MassCurve.of(TANK, BulkDensity.constant(850));
    FlowEstimator byMass = FlowEstimator.of(FlowSettings.of(60, 0.001), Content.mass(mass));
    Flow flow = byMass.at(at(0));
    for (int t = 0; t <= 60; t++) {
      flow = byMass.add(good(t, 4 + 0.01 * t));
    }
    assertEquals(0.2 * 850, flow.rate().value(), 1e-9);
  }

  @Test
  void keepsALimitedNumberOfSamplesOfAFastSource() {
    LevelWindow window = new LevelWindow(60);
    for (int i = 0; i < 200_000; i++) {
      double t = i / 1000.0;
      window.add(new LevelWindow.Entry(at(t), 0, 0.2 * t, Quality.GOOD));
    }
    assertTrue(window.entries().size() <= 4200, "samples " + window.entries().size());
    assertTrue(window.isCovered());
    assertEquals(0.2, window.slope(), 1e-9);
  }

  @Test
  void thinningKeepsTheWorstQuality() {
    LevelWindow window = new LevelWindow(4096);
    Quality mark = Quality.uncertain(Cause.OUTSIDE_VESSEL);
    window.add(new LevelWindow.Entry(at(0), 0, 0, Quality.GOOD));
    window.add(new LevelWindow.Entry(at(0.1), 0, 0, mark));
    window.add(new LevelWindow.Entry(at(0.2), 0, 0, Quality.GOOD));
    assertEquals(2, window.entries().size());
    assertEquals(mark, window.quality());
  }

  @Test
  void standsAtTheEndsOfTheVesselWithoutAFlow() {
    for (double level : new double[] {-1, 0, 10, 11}) {
      estimator.reset();
      Flow flow = ramp(0, 61, level, 0);
      assertEquals(0, flow.rate().value());
      assertEquals(Quality.GOOD, flow.rate().quality());
    }
    assertNotEquals(0, ramp(62, 123, 10, -0.01).rate().value());
  }

  @Test
  void refusesMissingParts() {
    assertThrows(IllegalArgumentException.class, () -> new Flow(good(0, 1), Double.NaN, 0, 0));
    assertRefused("Flow.deadZone", () -> new Flow(good(0, 1), 0, -1, 0));
    assertRefused("Flow.unsuppressed", () -> new Flow(good(0, 1), 0, 0, Double.NaN));
  }
}
