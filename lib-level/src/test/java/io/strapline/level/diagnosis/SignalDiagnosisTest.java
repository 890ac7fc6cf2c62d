package io.strapline.level.diagnosis;

import static io.strapline.level.diagnosis.Feed.HOUR;
import static io.strapline.level.diagnosis.Feed.at;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.DiagnosticStatus;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SignalDiagnosisTest {

  private static final HoldOff MINUTE = HoldOff.MINUTE;

  // Strength

  private static Feed strength() {
    return new Feed(DiagnosisSettings.NONE.with(new StrengthCheck(0.3, 0.6, 1800, HOUR, MINUTE)));
  }

  private static List<Cause> strong(Feed feed, double seconds, double strength) {
    return feed.give(Facts.distance(at(seconds), 8).withStrength(strength));
  }

  /** From three a second to one a minute: the hold-off counts in time. */
  @ParameterizedTest
  @ValueSource(doubles = {1.0 / 3, 1, 10, 60})
  void tellsAWetWindowAfterTheHoldOff(double interval) {
    Feed feed = strength();
    double time = 0;
    for (; time <= 7200; time += interval) {
      assertEquals(List.of(), strong(feed, time, 100));
    }
    double start = time;
    for (; time < start + 60 - 1e-6; time += interval) {
      assertEquals(List.of(), strong(feed, time, 29));
    }
    assertEquals(List.of(Cause.STRENGTH_LOW), strong(feed, time, 29));
    assertEquals(
        DiagnosticStatus.MAINTENANCE_REQUIRED, feed.diagnosis().diagnostics().get(0).status());
    assertEquals(100, feed.diagnosis().baseline().strength(), 1e-9);
    start = time + interval;
    for (time = start; time < start + 60; time += interval) {
      assertEquals(List.of(Cause.STRENGTH_LOW), strong(feed, time, 31));
    }
    assertEquals(List.of(), strong(feed, start + 60, 31));
  }

  @Test
  void takesASpeckOfDustForNoFailure() {
    Feed feed = strength();
    for (int i = 0; i < 20_000; i++) {
      assertEquals(List.of(), strong(feed, i, i % 20 == 0 ? 2 : 100));
    }
  }

  /**
   * The window grows dirty over days: 100 falls by 1 an hour; the baseline follows over 25 days.
   */
  @Test
  void tellsAWindowThatGrowsDirty() {
    Learning slow = new Learning(3600, 25 * 86_400);
    Feed feed =
        new Feed(DiagnosisSettings.NONE.with(new StrengthCheck(0.1, 0.6, 7200, slow, MINUTE)));
    int told = -1;
    for (int minute = 0; minute < 60 * 90 && told < 0; minute++) {
      double strength = 100 - minute / 60.0;
      told = strong(feed, 60 * minute, strength).contains(Cause.STRENGTH_FALLING) ? minute : -1;
    }
    // The plain mean since the start is 100 - h / 2, the recent one 100 - h + 2: h = 57 h.
    assertEquals(57, told / 60.0, 3);
  }

  @Test
  void judgesNothingBeforeItKnowsWhatIsUsual() {
    Feed feed = strength();
    for (int i = 0; i < 3600; i++) {
      assertEquals(List.of(), strong(feed, i, i < 1800 ? 100 : 10));
    }
  }

  @Test
  void goesOnWithABaselineThatWasKept() {
    Feed before = strength();
    for (int i = 0; i < 7200; i++) {
      strong(before, i, 100);
    }
    Baseline kept = before.diagnosis().baseline();
    assertEquals(100, kept.strength(), 1e-9);
    assertEquals(7199, kept.strengthSeconds(), 1e-6);
    Feed after =
        new Feed(
            DiagnosisSettings.NONE.with(new StrengthCheck(0.3, 0.6, 1800, HOUR, MINUTE)), kept);
    for (int i = 0; i < 60; i++) {
      assertEquals(List.of(), strong(after, i, 20));
    }
    assertEquals(List.of(Cause.STRENGTH_LOW), strong(after, 60, 20));
  }

  // Noise

  @Test
  void tellsNoiseAboveItsBaselineAndNotARamp() {
    Feed feed = new Feed(DiagnosisSettings.NONE.with(new NoiseCheck(3, 0.01, HOUR, MINUTE)));
    Random random = new Random(11);
    double metres = 20;
    for (int i = 0; i < 7200; i++) {
      metres -= i % 3600 > 1800 ? 0.005 : 0;
      assertEquals(List.of(), feed.distance(i, metres + 0.005 * random.nextGaussian()));
    }
    assertEquals(0.005, feed.diagnosis().baseline().noiseMetres(), 0.0005);
    int told = -1;
    for (int i = 7200; i < 7500 && told < 0; i++) {
      boolean noisy =
          feed.distance(i, metres + 0.05 * random.nextGaussian()).contains(Cause.NOISE_HIGH);
      told = noisy ? i : -1;
    }
    // Half a window of the new noise, then the hold-off.
    assertTrue(told > 7260 && told < 7330, "told at " + told);
  }

  @Test
  void leavesAQuietSignalAloneThatDoubles() {
    Feed feed = new Feed(DiagnosisSettings.NONE.with(new NoiseCheck(3, 0.05, HOUR, MINUTE)));
    Random random = new Random(12);
    for (int i = 0; i < 10_000; i++) {
      double sigma = i < 7200 ? 0.001 : 0.02;
      assertEquals(List.of(), feed.distance(i, 8 + sigma * random.nextGaussian()));
    }
  }

  // Stuck

  @Test
  void tellsAValueThatStandsStillWhileAFlowIsExpected() {
    Feed feed = new Feed(DiagnosisSettings.NONE.with(new StuckCheck(0.02, 600, 0)));
    for (int i = 0; i < 3600; i++) {
      assertEquals(List.of(), feed.distance(i, 8 + 0.004 * Math.sin(i)));
    }
    feed.diagnosis().expectFlow(true);
    for (int i = 3600; i < 4200; i++) {
      assertEquals(List.of(), feed.distance(i, 8 + 0.004 * Math.sin(i)));
    }
    assertEquals(List.of(Cause.VALUE_STUCK), feed.distance(4200, 8));
    assertEquals(List.of(), feed.distance(4201, 8.03));
    feed.diagnosis().expectFlow(false);
    assertEquals(List.of(), feed.distance(9000, 8.03));
  }

  /** Pains F11: 7.5 jumps to 22 and stays, without any noise. */
  @ParameterizedTest
  @ValueSource(doubles = {0.5, 1, 60})
  void tellsAValueWithoutAnyNoise(double interval) {
    Feed feed = new Feed(DiagnosisSettings.NONE.with(new StuckCheck(0.02, 600, 900)));
    Random random = new Random(13);
    double time = 0;
    for (; time < 3600; time += interval) {
      assertEquals(List.of(), feed.distance(time, 7.5 + 0.002 * random.nextGaussian()));
    }
    double start = time;
    for (; time < start + 900; time += interval) {
      assertEquals(List.of(), feed.distance(time, 22));
    }
    assertEquals(List.of(Cause.VALUE_STUCK), feed.distance(time, 22));
    assertEquals(List.of(), feed.distance(time + interval, 22.001));
  }

  @Test
  void takesOneSampleThatComesAgainAndAgainForNoStuckValue() {
    Feed feed = new Feed(DiagnosisSettings.NONE.with(new StuckCheck(0.02, 600, 900)));
    for (int i = 0; i < 100; i++) {
      assertEquals(List.of(), feed.distance(0, 8));
    }
    assertEquals(List.of(), feed.distance(1000, 8));
  }

  // Rate

  private static Feed rate() {
    RateCheck check = new RateCheck(0.02, 0.05, 30, 0.05, new HoldOff(10, 10));
    return new Feed(DiagnosisSettings.NONE.with(check));
  }

  @Test
  void tellsASpeedThatNoSurfaceHas() {
    Feed feed = rate();
    double told = -1;
    for (int i = 0; i < 100; i++) {
      List<Cause> causes = feed.distance(i, 20 - 0.03 * i);
      told = told < 0 && causes.contains(Cause.RATE_IMPLAUSIBLE) ? i : told;
    }
    // 0.03 t - 0.05 m exceeds 0.02 m/s x 30 s after 21.7 s; ten seconds later it is told.
    assertEquals(32, told);
  }

  /** The surface may fall faster than it rises. */
  @Test
  void judgesRiseAndFallByTheirOwnLimits() {
    Feed feed = rate();
    for (int i = 0; i < 300; i++) {
      assertEquals(List.of(), feed.distance(i, 2 + 0.045 * i));
    }
  }

  /** Pains F9: a stepped signal spikes from scan to scan, not over a window. */
  @Test
  void takesTheStepsOfADeviceForNoSpeed() {
    Feed feed = rate();
    for (int i = 0; i < 3000; i++) {
      double rounded = Math.rint((20 - 0.005 * i / 3) / 0.05) * 0.05;
      assertEquals(List.of(), feed.distance(i / 3.0, rounded));
    }
  }

  @Test
  void tellsAJumpThatStaysForItsWindow() {
    Feed feed = rate();
    boolean told = false;
    for (int i = 0; i < 60; i++) {
      told |= feed.distance(i, i < 40 ? 7.5 : 22).contains(Cause.RATE_IMPLAUSIBLE);
    }
    assertTrue(told);
  }

  // Current

  private static List<Cause> current(Feed feed, double seconds, double milliamps) {
    return feed.give(Facts.distance(at(seconds), 8).withCurrent(milliamps));
  }

  private static Feed loop() {
    return new Feed(DiagnosisSettings.NONE.with(CurrentCheck.USUAL));
  }

  @ParameterizedTest
  @ValueSource(doubles = {3.8, 3.795, 20.5, 20.508})
  void tellsASaturatedCurrent(double milliamps) {
    Feed feed = loop();
    for (int i = 0; i < 60; i++) {
      assertEquals(List.of(), current(feed, i, milliamps));
    }
    assertEquals(List.of(Cause.CURRENT_SATURATED), current(feed, 60, milliamps));
  }

  /** A loop that can carry 19.2 mA at most cuts the signal and its noise off there. */
  private static double cut(double milliamps, Random random) {
    return Math.min(19.2, milliamps + 0.02 * random.nextGaussian());
  }

  @Test
  void tellsALoopThatDoesNotReachTwentyMilliamps() {
    Feed feed = loop();
    Random random = new Random(14);
    int told = -1;
    for (int i = 0; i < 3000 && told < 0; i++) {
      List<Cause> causes = current(feed, i, cut(12 + 0.005 * i, random));
      told = causes.contains(Cause.CURRENT_FLAT_TOP) ? i : -1;
    }
    // The true current passes 19.2 mA at 1440 s; its noise is cut off a few seconds later.
    assertTrue(told > 1495 && told < 1530, "told at " + told);
  }

  /** A vessel that is nearly full: the surface rests, its noise does not. */
  @Test
  void leavesASurfaceAtRestAlone() {
    Feed feed = loop();
    Random random = new Random(15);
    for (int i = 0; i < 10_000; i++) {
      double level = Math.min(19.2, 12 + 0.005 * i);
      assertEquals(List.of(), current(feed, i, level + 0.02 * random.nextGaussian()));
    }
  }

  @Test
  void leavesALoopAloneThatHasCarriedMoreBefore() {
    Feed feed = loop();
    Random random = new Random(16);
    for (int i = 0; i < 100; i++) {
      current(feed, i, 12 + 0.02 * random.nextGaussian());
    }
    current(feed, 100, 19.9);
    for (int i = 101; i < 1000; i++) {
      assertEquals(List.of(), current(feed, i, 19.2));
    }
  }

  @Test
  void judgesNoLoopThatIsAlwaysStill() {
    Feed feed = loop();
    for (int i = 0; i < 1000; i++) {
      assertEquals(List.of(), current(feed, i, i < 100 ? 12 : 19.2));
    }
  }

  // Reach

  private static Feed reach() {
    ReachCheck check = new ReachCheck(25, 0.5, 1, 120, MINUTE);
    return new Feed(DiagnosisSettings.NONE.with(check));
  }

  @Test
  void tellsARangeShorterThanTheVessel() {
    Feed feed = reach();
    for (int i = 0; i < 1000; i++) {
      assertEquals(List.of(), feed.distance(i, 8 + 0.01 * i));
    }
    for (int i = 1000; i < 1060; i++) {
      assertEquals(List.of(), feed.give(Facts.lost(at(i)).withStrength(0)));
    }
    assertEquals(List.of(Cause.RANGE_SHORT), feed.give(Facts.lost(at(1060))));
    for (int i = 1061; i <= 1121; i++) {
      feed.distance(i, 18);
    }
    assertTrue(feed.diagnosis().diagnostics().isEmpty());
  }

  @Test
  void tellsNothingWhenTheBottomIsReachedOrTheSurfaceStandsOrTheReturnIsThere() {
    Feed bottom = reach();
    Feed standing = reach();
    Feed weak = reach();
    for (int i = 0; i < 1000; i++) {
      bottom.distance(i, 14.6 + 0.01 * i);
      standing.distance(i, 18);
      weak.distance(i, 8 + 0.01 * i);
    }
    for (int i = 1000; i < 1200; i++) {
      assertEquals(List.of(), bottom.give(Facts.lost(at(i))));
      assertEquals(List.of(), standing.give(Facts.lost(at(i))));
      assertEquals(List.of(), weak.give(Facts.lost(at(i)).withStrength(5)));
    }
  }

  // All together

  /** Nothing looked for, nothing told, whatever comes. */
  @Test
  void tellsNothingByDefaultAndNeverThrows() {
    DiagnosisSettings all =
        DiagnosisSettings.NONE
            .with(StrengthCheck.USUAL)
            .with(NoiseCheck.USUAL)
            .with(new StuckCheck(0.02, 60, 60))
            .with(new RateCheck(0.02, 0.05, 30, 0.05, MINUTE))
            .with(CurrentCheck.USUAL)
            .with(new ReachCheck(25, 0.5, 0, 60, MINUTE));
    double[] odd = {Double.NaN, Double.POSITIVE_INFINITY, -1e300, 1e300, 0, -0.0};
    for (long seed = 1; seed <= 20; seed++) {
      Random random = new Random(seed);
      Feed none = new Feed(DiagnosisSettings.NONE);
      Feed every = new Feed(all);
      double time = 0;
      for (int i = 0; i < 500; i++) {
        time += random.nextInt(6) == 0 ? -random.nextInt(100) : 30 * random.nextDouble();
        double value = random.nextBoolean() ? odd[random.nextInt(6)] : 20 * random.nextDouble();
        Facts facts =
            random.nextInt(4) == 0 ? Facts.lost(at(time)) : Facts.distance(at(time), value);
        facts = facts.withStrength(value).withCurrent(value);
        assertEquals(List.of(), none.give(facts), "seed " + seed);
        every.give(facts);
        every.diagnosis().expectFlow(random.nextBoolean());
      }
      Baseline learned = every.diagnosis().baseline();
      assertTrue(Double.isFinite(learned.noiseMetres()), "seed " + seed);
    }
  }
}
