package io.strapline.level.signal;

import static io.strapline.level.signal.SignalFilterContract.at;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.signal.ObstructionSettings.Doubt;
import io.strapline.level.signal.SignalChain.Conditioned;
import io.strapline.level.signal.StageTrace.Effect;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The chain with the stages that know how a surface can move. */
class SurfaceChainTest {

  private static final GateSettings GATES =
      new GateSettings(0.5, 30, OptionalDouble.empty(), List.of());
  private static final ObstructionSettings GATE =
      new ObstructionSettings(new Doubt(0.3, 3, 5), new Doubt(0.5, 2, 3), 0.1, 20);
  private static final RateSettings RATES = RateSettings.speed(0.05, 0.1, 0.02);
  private static final LostBeamSettings LOST = new LostBeamSettings(0.2, 60);
  private static final Quality DOUBTED = Quality.uncertain(Cause.OBSTRUCTION_HELD);

  private static SignalChain chain(NoReturnPolicy policy, SurfaceChecks surface) {
    return SignalChain.of(new SignalSettings(GATES, policy, 1, 1, 0, surface));
  }

  private static SignalChain gated() {
    return chain(NoReturnPolicy.hold(10), SurfaceChecks.NONE.with(GATE));
  }

  private static SignalChain watched(NoReturnPolicy policy) {
    return chain(policy, SurfaceChecks.NONE.with(LOST));
  }

  private static Conditioned good(SignalChain chain, double seconds, double metres) {
    return chain.accept(Reading.good(metres, at(seconds)), OptionalDouble.empty());
  }

  private static Conditioned lost(SignalChain chain, double seconds, Cause cause) {
    return chain.accept(new Reading(9, Quality.bad(cause), at(seconds)), OptionalDouble.empty());
  }

  private static Conditioned noReturn(SignalChain chain, double seconds) {
    return lost(chain, seconds, Cause.NO_RETURN);
  }

  private static void assertBoth(double value, Quality quality, Conditioned output) {
    assertEquals(quality, output.early().quality());
    assertEquals(quality, output.smooth().quality());
    assertEquals(value, output.early().value());
    assertEquals(value, output.smooth().value());
  }

  // Obstruction gate in the chain

  @Test
  void holdsTheLastValueAsUncertainWhileAJumpIsDoubted() {
    SignalChain chain = gated();
    good(chain, 0, 8);
    Conditioned speck = good(chain, 1, 2);

    assertBoth(8, DOUBTED, speck);
    assertEquals(at(1), speck.smooth().time());
    assertEquals(Quality.GOOD, speck.gate());
    assertEquals(Set.of(Cause.OBSTRUCTION_HELD), speck.findings());
    assertBoth(8.05, Quality.GOOD, good(chain, 2, 8.05));
  }

  /** Pains E5: the surface stands still while material leaves, then it collapses. */
  @Test
  void followsACollapseAfterTheAgreeingSamples() {
    SignalChain chain = gated();
    good(chain, 0, 8);
    assertBoth(8, DOUBTED, good(chain, 1, 14));
    assertBoth(14.05, Quality.GOOD, good(chain, 2, 14.05));
  }

  @Test
  void neverHoldsBeyondTheStatedTimeEvenWithoutSamples() {
    SignalChain chain = gated();
    good(chain, 0, 8);
    good(chain, 1, 2);

    assertBoth(8, DOUBTED, chain.tick(at(20.999999999)));
    Conditioned taken = chain.tick(at(21));
    assertBoth(2, Quality.uncertain(Cause.JUMP_UNCONFIRMED), taken);
    assertEquals(at(21), taken.smooth().time());
    assertEquals(Set.of(Cause.JUMP_UNCONFIRMED), taken.findings());
  }

  /**
   * Dust gives lost returns and near specks in turn: the one must not open the door to the other.
   */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void believesNoSpeckBecauseAReturnWasLostBefore(boolean holds) {
    NoReturnPolicy policy = holds ? NoReturnPolicy.hold(10) : NoReturnPolicy.fail();
    SignalChain chain = chain(policy, SurfaceChecks.NONE.with(GATE));
    good(chain, 0, 8);
    noReturn(chain, 1);
    Conditioned speck = good(chain, 2, 2);

    assertBoth(8, holds ? DOUBTED : Quality.bad(Cause.NO_RETURN), speck);
    assertEquals(at(2), speck.early().time());
    assertTrue(speck.findings().contains(Cause.OBSTRUCTION_HELD));
    assertBoth(8.1, Quality.GOOD, good(chain, 3, 8.1));
  }

  /** The beam is lost after the speck: the clock must not bring the speck back. */
  @Test
  void takesNoDoubtedReadingOverAfterTheBeamWasLost() {
    SignalChain chain = chain(NoReturnPolicy.hold(40), SurfaceChecks.NONE.with(GATE));
    good(chain, 0, 8);
    good(chain, 1, 2);
    noReturn(chain, 2);

    assertBoth(8, Quality.uncertain(Cause.NO_RETURN_HELD), chain.tick(at(30)));
    assertBoth(8, Quality.bad(Cause.NO_RETURN), chain.tick(at(42)));
    // The run goes on: its time is up, and a reading is there again.
    assertBoth(3, Quality.uncertain(Cause.JUMP_UNCONFIRMED), good(chain, 43, 3));
  }

  @Test
  void letsNoDoubtedReadingStretchTheHoldOfALostReturn() {
    SignalChain chain = gated();
    good(chain, 0, 8);
    noReturn(chain, 1);
    good(chain, 6, 2);

    assertTrue(noReturn(chain, 11).smooth().quality().isBad());
  }

  @Test
  void showsTheDoubtBesideASimulatedValueInTheFindings() {
    SignalChain chain = gated();
    Quality simulated = Quality.uncertain(Cause.SIMULATED);
    chain.accept(new Reading(8, simulated, at(0)), OptionalDouble.empty());
    Conditioned speck = chain.accept(new Reading(2, simulated, at(1)), OptionalDouble.empty());

    assertBoth(8, simulated, speck);
    assertEquals(Set.of(Cause.OBSTRUCTION_HELD), speck.findings());
  }

  // Rate limits in the chain

  @Test
  void limitsTheSmoothBranchOnly() {
    SignalChain chain = chain(NoReturnPolicy.hold(10), SurfaceChecks.NONE.with(RATES));
    good(chain, 0, 8);
    Conditioned fast = good(chain, 2, 7);

    assertEquals(Reading.good(7, at(2)), fast.early());
    assertEquals(7.9, fast.smooth().value(), 1e-12);
    assertEquals(Quality.uncertain(Cause.RATE_LIMITED), fast.smooth().quality());
    assertEquals(Set.of(Cause.RATE_LIMITED), fast.findings());
    Conditioned back = good(chain, 20, 7);
    assertEquals(Quality.GOOD, back.smooth().quality());
    assertEquals(Set.of(), back.findings());
  }

  @Test
  void refusesAFlowWithoutAVessel() {
    SurfaceChecks flow = SurfaceChecks.NONE.with(RateSettings.flow(0.1, 0.1, 0));
    io.strapline.level.testing.Refusals.assertRefused(
        "RateSettings.measure", () -> chain(NoReturnPolicy.fail(), flow));
  }

  // Lost beam

  /** Pains F5: the reading is lost exactly when the tank is over-full. */
  @ParameterizedTest
  @EnumSource(
      value = Cause.class,
      names = {"NO_RETURN", "NOT_A_NUMBER", "INVALID_CODE"})
  void suspectsOverfullWhenTheBeamIsLostCloseToTheDeadZone(Cause cause) {
    for (NoReturnPolicy policy :
        List.of(
            NoReturnPolicy.hold(60), NoReturnPolicy.substitute(60, 25), NoReturnPolicy.fail())) {
      SignalChain chain = watched(policy);
      good(chain, 0, 0.7);
      Conditioned output = lost(chain, 1, cause);

      assertBoth(0.7, Quality.bad(Cause.OVERFULL_SUSPECTED), output);
      assertEquals(Quality.bad(cause), output.gate());
      assertEquals(Set.of(Cause.OVERFULL_SUSPECTED), output.findings());
      assertEquals(output, chain.tick(at(4000)));
    }
  }

  @Test
  void suspectsOverfullWhenTheDistanceItselfLiesInTheDeadZone() {
    SignalChain chain = watched(NoReturnPolicy.hold(60));
    good(chain, 0, 0.6);

    assertBoth(0.6, Quality.bad(Cause.OVERFULL_SUSPECTED), good(chain, 1, 0.4));
  }

  /** By hand: 1.7 m, rising 20 mm/s, 60 s on: 0.5 m. Rising 10 mm/s only: 1.1 m. */
  @ParameterizedTest
  @CsvSource({"0.020, true", "0.010, false", "0, false", "-0.020, false"})
  void suspectsOverfullByTheTrend(double risingMetresPerSecond, boolean suspected) {
    SignalChain chain = watched(NoReturnPolicy.hold(60));
    for (int i = -60; i <= 0; i++) {
      good(chain, 60 + i, 1.7 - risingMetresPerSecond * i);
    }
    Conditioned output = noReturn(chain, 61);

    assertEquals(suspected, output.findings().contains(Cause.OVERFULL_SUSPECTED));
    assertEquals(suspected, output.smooth().quality().isBad());
  }

  @Test
  void suspectsNothingWhileTheSurfaceLeavesTheDeadZone() {
    SignalChain chain = watched(NoReturnPolicy.hold(60));
    // Within the margin at 0.68 m, but at 4 mm/s it is 0.24 m farther after 60 s.
    for (int i = 0; i <= 45; i += 5) {
      good(chain, i, 0.5 + 0.004 * i);
    }

    Conditioned held = noReturn(chain, 46);
    assertEquals(Quality.uncertain(Cause.NO_RETURN_HELD), held.smooth().quality());
    assertEquals(0.68, held.smooth().value(), 1e-12);
  }

  @Test
  void suspectsNothingFarFromBothEnds() {
    SignalChain chain = watched(NoReturnPolicy.hold(60));
    good(chain, 0, 8);
    assertEquals(Set.of(), noReturn(chain, 1).findings());
    // Pains F1: a false reading in the dead zone while the surface is far away.
    assertEquals(Set.of(), good(chain, 2, 0.027).findings());
  }

  @Test
  void suspectsEmptyBesideTheUsualHoldWhenTheBeamIsLostCloseToTheFarLimit() {
    SignalChain chain = watched(NoReturnPolicy.hold(10));
    good(chain, 0, 29.9);
    Conditioned held = good(chain, 1, 30.5);

    assertBoth(29.9, Quality.uncertain(Cause.NO_RETURN_HELD), held);
    assertEquals(Quality.bad(Cause.FAR_LIMIT), held.gate());
    assertEquals(Set.of(Cause.EMPTY_SUSPECTED), held.findings());
    Conditioned after = chain.tick(at(11));
    assertBoth(29.9, Quality.bad(Cause.FAR_LIMIT), after);
    assertEquals(Set.of(Cause.EMPTY_SUSPECTED), after.findings());
  }

  @Test
  void dropsTheSuspicionWithTheNextMeasurementOnly() {
    SignalChain chain = watched(NoReturnPolicy.hold(10));
    good(chain, 0, 0.6);
    noReturn(chain, 1);
    Conditioned fault = lost(chain, 2, Cause.DEVICE_FAILURE);
    assertEquals(Quality.bad(Cause.DEVICE_FAILURE), fault.early().quality());
    assertEquals(Set.of(Cause.OVERFULL_SUSPECTED), fault.findings());

    assertEquals(Set.of(), good(chain, 3, 0.8).findings());
  }

  @Test
  void suspectsNothingBeforeTheFirstMeasurementOrAfterAReset() {
    SignalChain chain = watched(NoReturnPolicy.hold(10));
    assertEquals(Set.of(), noReturn(chain, 0).findings());
    good(chain, 1, 0.6);
    noReturn(chain, 2);
    chain.reset();
    assertEquals(Set.of(), noReturn(chain, 3).findings());
  }

  /** A batch falls in and the beam is lost in its dust: the jump is no speed of the surface. */
  @Test
  void takesAJumpForNoTrend() {
    SignalChain chain = chain(NoReturnPolicy.hold(60), SurfaceChecks.NONE.with(LOST).with(GATE));
    for (int i = 0; i < 30; i++) {
      good(chain, i, 14);
    }
    for (int i = 30; i < 34; i++) {
      good(chain, i, 6);
    }

    assertEquals(Set.of(), noReturn(chain, 35).findings());
  }

  // Trace

  private static List<String> lines(SignalChain chain, double seconds, double metres) {
    SignalChain.Traced traced =
        chain.explain(Reading.good(metres, at(seconds)), OptionalDouble.empty());
    return traced.stages().stream().map(StageTrace::text).toList();
  }

  @Test
  void tellsWhatEachStageDidInTheirOrder() {
    SurfaceChecks surface = SurfaceChecks.NONE.with(GATE).with(RATES);
    SignalChain chain =
        SignalChain.of(new SignalSettings(GATES, NoReturnPolicy.hold(10), 3, 4, 5, surface));
    assertEquals(
        List.of(
            "gates: PASSED 8.000 m",
            "obstruction gate: PASSED 8.000 m",
            "median: PASSED 8.000 m",
            "rate limits: PASSED 8.000 m",
            "moving average: PASSED 8.000 m",
            "lag: PASSED 8.000 m"),
        lines(chain, 0, 8));
    assertEquals(
        List.of(
            "gates: PASSED 2.000 m",
            "obstruction gate: HELD 8.000 m"
                + " (a sudden change is not yet confirmed, value of before in use)"),
        lines(chain, 1, 2));
    assertEquals(
        List.of(
            "gates: REJECTED 0.200 m (distance inside the dead zone)",
            "no-return policy: HELD 8.000 m (no return from the surface, last value held)"),
        lines(chain, 2, 0.2));
  }

  @Test
  void leavesStagesOutThatAreNotInUse() {
    SignalChain chain = chain(NoReturnPolicy.fail(), SurfaceChecks.NONE.with(RATES));
    lines(chain, 0, 8);
    assertEquals(
        List.of(
            "gates: PASSED 9.000 m",
            "rate limits: LIMITED 8.100 m"
                + " (signal faster than the surface can move, value follows at the limit)"),
        lines(chain, 1, 9));
    SignalChain.Traced lost =
        chain.explain(new Reading(0, Quality.bad(Cause.NO_RETURN), at(2)), OptionalDouble.empty());
    // At 9 m, where the early branch is: no limit of the rate touches it.
    assertEquals(
        new StageTrace(Stage.NO_RETURN, Effect.REJECTED, Cause.NO_RETURN, 9), lost.stages().get(1));
  }

  /** Explaining is the same chain: it changes neither the output nor what follows. */
  @Test
  void givesTheSameOutputWhetherOrNotSomebodyAsks() {
    SurfaceChecks surface = SurfaceChecks.NONE.with(GATE).with(RATES).with(LOST);
    SignalSettings settings = new SignalSettings(GATES, NoReturnPolicy.hold(10), 3, 4, 5, surface);
    SignalChain plain = SignalChain.of(settings);
    SignalChain asked = SignalChain.of(settings);
    java.util.Random random = new java.util.Random(3);
    for (int i = 0; i < 500; i++) {
      Reading reading = Reading.good(35 * random.nextDouble(), at(i));
      assertEquals(
          plain.accept(reading, OptionalDouble.empty()),
          asked.explain(reading, OptionalDouble.empty()).output());
    }
  }

  // Delays

  private static SignalChain full() {
    SurfaceChecks surface = SurfaceChecks.NONE.with(GATE).with(RATES);
    return SignalChain.of(new SignalSettings(GATES, NoReturnPolicy.hold(10), 3, 4, 5, surface));
  }

  /** By hand, 1 s samples, 8 m to 12 m: (2-1) s, (3-1)/2 s, 4 m / 0.1 m/s, 3 s, 5 s ln 100. */
  @Test
  void statesTheDelayOfEachStage() {
    List<StageDelay> delays = full().delays(1, 8, 12);
    assertEquals(
        List.of(Stage.OBSTRUCTION, Stage.MEDIAN, Stage.RATE_LIMITS, Stage.AVERAGE, Stage.LAG),
        delays.stream().map(StageDelay::stage).toList());
    double[] ramps = {0, 1, 0, 1.5, 5};
    double[] steps = {1, 1, 40, 3, 5 * Math.log(100)};
    for (int i = 0; i < delays.size(); i++) {
      assertEquals(ramps[i], delays.get(i).rampSeconds(), 1e-9);
      assertEquals(steps[i], delays.get(i).stepSeconds(), 1e-9);
    }
  }

  /** Of 99 % of the step, at the rate of samples from three a second to one a minute. */
  @ParameterizedTest
  @CsvSource({"0.333333333, 8, 12", "1, 8, 12", "1, 12, 8", "5, 8, 7", "60, 8, 28", "600, 20, 10"})
  void reachesAStepAfterTheStatedDelayAndNotLongBefore(double interval, double from, double to) {
    SignalChain chain = full();
    for (int i = 0; i < 10; i++) {
      good(chain, i * interval, from);
    }
    double start = 10 * interval;
    double stated =
        chain.delays(interval, from, to).stream().mapToDouble(StageDelay::stepSeconds).sum();
    double reached = -1;
    for (int i = 0; i < 2000 && reached < 0; i++) {
      double time = start + i * interval;
      chain.tick(at(time));
      double value = good(chain, time, to).smooth().value();
      reached = Math.abs(value - to) <= 0.01 * Math.abs(to - from) ? time - start : -1;
    }

    assertTrue(reached >= 0, "never");
    assertTrue(reached <= stated + interval, reached + " s, stated " + stated + " s");
    // A limited step arrives as a ramp, which the later stages delay by less than a step.
    assertTrue(reached >= 0.5 * stated - 2 * interval, reached + " s, stated " + stated + " s");
  }

  @ParameterizedTest
  @ValueSource(doubles = {1.0 / 3, 1, 2})
  void isLateOnARampByTheStatedDelay(double interval) {
    SignalChain chain = full();
    double late = 0;
    for (int i = 0; i * interval < 400; i++) {
      double metres = 28 - 0.04 * i * interval;
      late = (good(chain, i * interval, metres).smooth().value() - metres) / 0.04;
    }
    double stated =
        chain.delays(interval, 0, 1).stream().mapToDouble(StageDelay::rampSeconds).sum();

    assertEquals(chain.delaySeconds(interval), stated, 1e-9);
    // The sampled lag is up to half an interval quicker than its time constant.
    assertEquals(stated, late, interval / 2 + 1e-6);
    assertTrue(late <= stated + 1e-6);
  }

  @Test
  void statesTheDelayOfTheBranchThatFeedsTheAlarms() {
    SurfaceChecks smooth = SurfaceChecks.NONE.with(AlarmBranch.SMOOTH);
    SignalSettings settings = new SignalSettings(GATES, NoReturnPolicy.fail(), 3, 1, 20);

    assertEquals(1, SignalChain.of(settings).alarmDelaySeconds(1));
    assertEquals(21, SignalChain.of(settings.with(smooth)).alarmDelaySeconds(1));
    assertEquals(21, SignalChain.of(settings.with(smooth)).longestAlarmDelaySeconds(1));
    SurfaceChecks gated = SurfaceChecks.NONE.with(GATE);
    assertEquals(20 + 1, SignalChain.of(settings.with(gated)).longestAlarmDelaySeconds(1));
    assertFalse(settings.equals(settings.with(smooth)));
  }
}
