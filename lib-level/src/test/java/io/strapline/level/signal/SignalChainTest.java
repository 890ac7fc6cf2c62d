package io.strapline.level.signal;

import static io.strapline.level.signal.SignalFilterContract.at;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.signal.SignalChain.Conditioned;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class SignalChainTest {

  private static final GateSettings GATES =
      new GateSettings(0.5, 30, OptionalDouble.empty(), List.of());

  private static SignalChain plain(NoReturnPolicy policy) {
    return SignalChain.of(new SignalSettings(GATES, policy, 1, 1, 0));
  }

  private static Conditioned good(SignalChain chain, double seconds, double metres) {
    return chain.accept(Reading.good(metres, at(seconds)), OptionalDouble.empty());
  }

  private static Conditioned given(SignalChain chain, double seconds, Quality quality) {
    return chain.accept(new Reading(9, quality, at(seconds)), OptionalDouble.empty());
  }

  private static Conditioned bad(SignalChain chain, double seconds, Cause cause) {
    return given(chain, seconds, Quality.bad(cause));
  }

  private static Conditioned noReturn(SignalChain chain, double seconds) {
    return bad(chain, seconds, Cause.NO_RETURN);
  }

  private static void assertBoth(double value, Quality quality, Conditioned output) {
    assertEquals(quality, output.early().quality());
    assertEquals(quality, output.smooth().quality());
    assertEquals(value, output.early().value());
    assertEquals(value, output.smooth().value());
  }

  private static final Quality HELD = Quality.uncertain(Cause.NO_RETURN_HELD);

  // No-return policy: hold

  @Test
  void holdsTheLastValueAsUncertainAndIsBadWhenTheHoldHasRunOut() {
    SignalChain chain = plain(NoReturnPolicy.hold(10));
    good(chain, 0, 4);

    assertBoth(4, HELD, noReturn(chain, 1));
    assertBoth(4, HELD, noReturn(chain, 10.999999999));
    assertBoth(4, Quality.bad(Cause.NO_RETURN), noReturn(chain, 11));
  }

  /** Counted from the first missing sample, whatever came before it and however many follow. */
  @Test
  void countsTheHoldAnewAfterEachMeasurement() {
    SignalChain chain = plain(NoReturnPolicy.hold(10));
    good(chain, 0, 4);
    noReturn(chain, 5);
    noReturn(chain, 14);
    good(chain, 14.5, 4.2);

    assertBoth(4.2, HELD, noReturn(chain, 20));
    assertBoth(4.2, HELD, noReturn(chain, 29.9));
    assertTrue(noReturn(chain, 30).smooth().quality().isBad());
  }

  @ParameterizedTest
  @CsvSource({"0.2, DEAD_ZONE", "31, FAR_LIMIT"})
  void namesTheGateAtOnceAndAfterTheHoldInTheValueToo(double distance, Cause cause) {
    SignalChain chain = plain(NoReturnPolicy.hold(2));
    good(chain, 0, 4);
    Conditioned held = good(chain, 1, distance);

    assertBoth(4, HELD, held);
    assertEquals(Quality.bad(cause), held.gate());
    assertBoth(4, Quality.bad(cause), good(chain, 3, distance));
  }

  @Test
  void holdsOverAWeakReturn() {
    GateSettings gates = new GateSettings(0.5, 30, OptionalDouble.of(12), List.of());
    SignalChain chain = SignalChain.of(new SignalSettings(gates, NoReturnPolicy.hold(2), 1, 1, 0));
    chain.accept(Reading.good(4, at(0)), OptionalDouble.of(12));
    Conditioned weak = chain.accept(Reading.good(28, at(1)), OptionalDouble.of(11.9));

    assertBoth(4, HELD, weak);
    assertEquals(Cause.WEAK_RETURN, weak.gate().cause());
  }

  /** Pains F10: nothing to hold, so no invented zero either. */
  @Test
  void holdsNothingBeforeTheFirstMeasurement() {
    SignalChain chain = plain(NoReturnPolicy.hold(10));

    assertTrue(noReturn(chain, 0).smooth().quality().isBad());
    assertTrue(chain.tick(at(1)).smooth().quality().isBad());
    assertTrue(good(chain, 2, 0.1).early().quality().isBad());
    assertBoth(4, Quality.GOOD, good(chain, 3, 4));
  }

  @Test
  void holdsNothingThatWasGivenUpBefore() {
    SignalChain chain = plain(NoReturnPolicy.hold(2));
    good(chain, 0, 4);
    noReturn(chain, 1);
    assertTrue(noReturn(chain, 3).smooth().quality().isBad());

    assertTrue(noReturn(chain, 3.5).smooth().quality().isBad());
    bad(chain, 4, Cause.LOOP_FAULT_LOW);
    assertTrue(noReturn(chain, 4.5).smooth().quality().isBad());
  }

  @Test
  void doesNotStretchTheHoldWhenTheSourceClockIsSetBack() {
    SignalChain chain = plain(NoReturnPolicy.hold(10));
    good(chain, 3600, 4);
    noReturn(chain, 3601);
    noReturn(chain, 5);

    assertTrue(noReturn(chain, 15).smooth().quality().isBad());
  }

  @Test
  void isBadAtOnceWithAHoldOfZero() {
    SignalChain chain = plain(NoReturnPolicy.hold(0));
    good(chain, 0, 4);

    assertBoth(4, Quality.bad(Cause.NO_RETURN), noReturn(chain, 1));
  }

  // No-return policy: fail and substitute

  @Test
  void isBadAtOnceUnderTheFailPolicy() {
    SignalChain chain = plain(NoReturnPolicy.fail());
    good(chain, 0, 4);

    assertBoth(4, Quality.bad(Cause.NO_RETURN), noReturn(chain, 1));
    assertTrue(chain.tick(at(2)).smooth().quality().isBad());
  }

  @Test
  void substitutesAfterTheHoldAndSaysSo() {
    SignalChain chain = plain(NoReturnPolicy.substitute(2, 12));
    good(chain, 0, 4);

    assertBoth(4, HELD, noReturn(chain, 1));
    Conditioned substituted = noReturn(chain, 3);
    assertBoth(12, Quality.uncertain(Cause.SUBSTITUTED), substituted);
    assertEquals(Quality.bad(Cause.NO_RETURN), substituted.gate());
    assertBoth(4.1, Quality.GOOD, good(chain, 4, 4.1));
  }

  /** Without a value to hold it is BAD for the hold time, then the substitute stands in. */
  @Test
  void substitutesAfterTheSameTimeWhenThereWasNeverAMeasurement() {
    SignalChain chain = plain(NoReturnPolicy.substitute(2, 12));

    assertBoth(0, Quality.bad(Cause.NO_RETURN), noReturn(chain, 0));
    assertBoth(12, Quality.uncertain(Cause.SUBSTITUTED), chain.tick(at(2)));
  }

  /** Pains F5: the reading is lost exactly when the tank is over-full. */
  @Test
  void neverSubstitutesForADistanceInsideTheDeadZone() {
    SignalChain chain = plain(NoReturnPolicy.substitute(2, 12));
    good(chain, 0, 0.6);
    good(chain, 1, 0.2);

    assertBoth(0.6, Quality.bad(Cause.DEAD_ZONE), good(chain, 3, 0.2));
  }

  @Test
  void startsTheFiltersAnewAfterASubstitute() {
    SignalChain chain =
        SignalChain.of(new SignalSettings(GATES, NoReturnPolicy.substitute(0, 12), 3, 4, 5));
    good(chain, 0, 4);
    noReturn(chain, 1);

    assertBoth(9, Quality.GOOD, good(chain, 2, 9));
  }

  // Causes that the policy leaves alone

  @ParameterizedTest
  @EnumSource(
      value = Cause.class,
      names = {
        "LOOP_FAULT_LOW",
        "LOOP_FAULT_HIGH",
        "DEVICE_FAILURE",
        "NO_COMMUNICATION",
        "SOURCE_SILENT",
        "PROCESSING_ERROR",
        "NOT_CONFIGURED"
      })
  void holdsNothingOverAFaultThatIsAlreadyCertain(Cause fault) {
    for (NoReturnPolicy policy :
        List.of(NoReturnPolicy.hold(10), NoReturnPolicy.substitute(10, 12))) {
      SignalChain chain = plain(policy);
      good(chain, 0, 4);

      assertBoth(4, Quality.bad(fault), bad(chain, 1, fault));
      assertBoth(4, Quality.bad(fault), chain.tick(at(60)));
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = Cause.class,
      names = {"NO_RETURN", "NOT_A_NUMBER", "INVALID_CODE"})
  void holdsOverASampleWithoutASurface(Cause cause) {
    SignalChain chain = plain(NoReturnPolicy.hold(2));
    good(chain, 0, 4);

    assertBoth(4, HELD, bad(chain, 1, cause));
    assertBoth(4, Quality.bad(cause), bad(chain, 3, cause));
  }

  // Readings that only repeat an old value

  @Test
  void passesAFailureCurrentBeingConfirmedAsUncertainWithoutTouchingTheFilters() {
    SignalSettings settings = new SignalSettings(GATES, NoReturnPolicy.hold(10), 1, 4, 0);
    SignalChain disturbed = SignalChain.of(settings);
    SignalChain quiet = SignalChain.of(settings);
    Quality confirming = Quality.uncertain(Cause.LOOP_FAULT_CONFIRMING);
    for (int i = 0; i < 4; i++) {
      good(disturbed, i, i + 1);
      good(quiet, i, i + 1);
    }
    Conditioned held = given(disturbed, 4, confirming);

    assertEquals(confirming, held.early().quality());
    assertEquals(4, held.early().value());
    assertEquals(2.5, held.smooth().value(), "mean of 1, 2, 3, 4");
    assertEquals(good(quiet, 5, 5), good(disturbed, 5, 5));
  }

  @Test
  void doesNotSeedTheFiltersWithARepeatedValue() {
    SignalChain chain =
        SignalChain.of(new SignalSettings(GATES, NoReturnPolicy.hold(10), 1, 4, 60));
    Quality confirming = Quality.uncertain(Cause.LOOP_FAULT_CONFIRMING);

    assertBoth(9, confirming, given(chain, 0, confirming));
    assertBoth(4, Quality.GOOD, good(chain, 1, 4));
  }

  // Ticks: a dead sensor never looks calm

  @Test
  void waitsForTheFirstSample() {
    Conditioned waiting = plain(NoReturnPolicy.hold(10)).tick(at(5));

    assertBoth(0, Quality.bad(Cause.WAITING_FOR_FIRST_SAMPLE), waiting);
  }

  /** Pains B3, one stage at a time: unplugged after a good spell, the output ends in BAD. */
  @ParameterizedTest
  @CsvSource({"1, 1, 0", "9, 1, 0", "1, 20, 0", "1, 1, 600", "9, 20, 600"})
  void letsTheHoldRunOutByTheClock(int median, int average, double lag) {
    SignalChain chain =
        SignalChain.of(new SignalSettings(GATES, NoReturnPolicy.hold(10), median, average, lag));
    for (int i = 0; i < 30; i++) {
      good(chain, i, 4);
    }
    noReturn(chain, 30);

    assertBoth(4, HELD, chain.tick(at(39.999999999)));
    assertBoth(4, Quality.bad(Cause.NO_RETURN), chain.tick(at(40)));
    assertBoth(4, Quality.bad(Cause.NO_RETURN), chain.tick(at(4000)));
  }

  @Test
  void dropsAHoldAtTheTimeItRanOutNotWhenSomebodyLooked() {
    SignalChain chain = plain(NoReturnPolicy.hold(10));
    good(chain, 0, 4);
    noReturn(chain, 1);

    assertEquals(at(11), chain.tick(at(500)).smooth().time());
    assertEquals(at(11), chain.tick(at(900)).smooth().time());
  }

  @Test
  void changesNothingElseOnATick() {
    SignalChain chain = plain(NoReturnPolicy.hold(10));
    Conditioned measured = good(chain, 0, 4);

    assertEquals(measured, chain.tick(at(3600)));
    Conditioned held = noReturn(chain, 3601);
    assertEquals(held, chain.tick(at(3602)));
    assertEquals(held, chain.tick(at(5)));
  }

  // Branches, delay, seeding

  /** Standards 9.5: re-initialise with the first valid sample, never a mean over the gap. */
  @Test
  void startsTheFiltersAnewAfterABadStretch() {
    SignalChain chain =
        SignalChain.of(new SignalSettings(GATES, NoReturnPolicy.hold(1), 5, 10, 30));
    for (int i = 0; i < 20; i++) {
      good(chain, i, 4);
    }
    noReturn(chain, 20);
    noReturn(chain, 21);

    assertBoth(9, Quality.GOOD, good(chain, 22, 9));
  }

  @Test
  void goesOnWithItsFiltersAfterAHold() {
    SignalChain chain = SignalChain.of(new SignalSettings(GATES, NoReturnPolicy.hold(5), 1, 4, 0));
    good(chain, 0, 4);
    noReturn(chain, 1);

    assertEquals(5, good(chain, 2, 8).smooth().value(), "mean of 4, 4, 4, 8");
  }

  /** Pains F8: smoothing must not delay a trip, and the delay is stated. */
  @Test
  void keepsTheEarlyBranchFreeOfAverageAndLag() {
    SignalChain chain = SignalChain.of(new SignalSettings(GATES, NoReturnPolicy.hold(5), 3, 8, 60));
    double early = 0;
    double smooth = 0;
    // A surface that rises 5 mm a second under the transmitter.
    for (int i = 0; i <= 2000; i++) {
      Conditioned output = good(chain, i, 20 - 0.005 * i);
      early = (output.early().value() - (20 - 0.005 * i)) / 0.005;
      smooth = (output.smooth().value() - (20 - 0.005 * i)) / 0.005;
    }

    assertEquals(1, chain.earlyDelaySeconds(1));
    assertEquals(1 + 3.5 + 60, chain.delaySeconds(1));
    assertEquals(chain.earlyDelaySeconds(1), early, 1e-6);
    // The sampled lag is up to half an interval quicker than its time constant.
    assertEquals(chain.delaySeconds(1), smooth, 0.5);
    assertTrue(smooth <= chain.delaySeconds(1));
  }

  /** Pains F8, stated there: 8 points lag 4 samples; exactly (8-1)/2 = 3.5. */
  @Test
  void reachesALimitLaterOnTheSmoothBranchByTheStatedDelay() {
    SignalChain chain = SignalChain.of(new SignalSettings(GATES, NoReturnPolicy.hold(5), 1, 8, 0));
    int early = -1;
    int smooth = -1;
    for (int i = 0; i <= 100; i++) {
      Conditioned output = good(chain, i, 20 - 0.125 * i);
      early = early < 0 && output.early().value() <= 12 ? i : early;
      smooth = smooth < 0 && output.smooth().value() <= 12 ? i : smooth;
    }

    assertEquals(64, early);
    assertEquals(Math.ceil(64 + chain.delaySeconds(1)), smooth);
  }

  // Field cases

  /**
   * Pains F1: target at least 1 m away; readings in mm, the near ones with the status "valid". The
   * level must never jump to the top.
   */
  @Test
  void givesNoNearDistanceForFalseNearReadings() {
    SignalChain chain = SignalChain.of(new SignalSettings(GATES, NoReturnPolicy.hold(5), 3, 1, 0));
    double second = 0;
    for (double millimetres : new double[] {1838, 27, 1806, 22}) {
      Conditioned output = good(chain, second++, millimetres / 1000);

      assertTrue(output.early().value() >= 1.8, output.toString());
      assertEquals(millimetres < 100, output.gate().cause() == Cause.DEAD_ZONE);
    }
  }

  /** Pains F2, field case S6, in metres and with the dead zone of the case. */
  @Test
  void showsAStillSurfaceStill() {
    SignalChain chain = SignalChain.of(new SignalSettings(GATES, NoReturnPolicy.hold(5), 5, 1, 0));
    double second = 0;
    for (double metres : new double[] {0.82, 0.82, 0.92, 0.82, 0.62}) {
      assertBoth(0.82, Quality.GOOD, good(chain, second++, metres));
    }
  }

  /** Pains F4: beyond its range the sensor gives random numbers; most lie beyond the far limit. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void endsInBadWhenTheSensorInventsDistancesBeyondItsRange(long seed) {
    java.util.Random random = new java.util.Random(seed);
    SignalChain chain = plain(NoReturnPolicy.hold(5));
    good(chain, 0, 29);
    Conditioned output = chain.tick(at(0));
    for (int i = 1; i <= 10; i++) {
      output = good(chain, i, 30.001 + 70 * random.nextDouble());
    }

    assertBoth(29, Quality.bad(Cause.FAR_LIMIT), output);
  }

  /**
   * Pains F6: 8190 comes repeatedly in place of a distance; the point turns it into this reading.
   */
  @Test
  void endsInBadWhenTheDeviceKeepsSendingACode() {
    GateSettings gates =
        new GateSettings(0, Double.POSITIVE_INFINITY, OptionalDouble.empty(), List.of(8190.0));
    SignalChain chain = SignalChain.of(new SignalSettings(gates, NoReturnPolicy.hold(5), 1, 1, 0));
    good(chain, 0, 4);
    assertTrue(gates.isInvalidCode(8190));
    for (int i = 1; i < 6; i++) {
      assertBoth(4, HELD, bad(chain, i, Cause.INVALID_CODE));
    }

    assertBoth(4, Quality.bad(Cause.INVALID_CODE), bad(chain, 6, Cause.INVALID_CODE));
  }

  @Test
  void forgetsEverythingOnReset() {
    SignalChain chain = SignalChain.of(new SignalSettings(GATES, NoReturnPolicy.hold(5), 3, 8, 60));
    good(chain, 0, 4);
    noReturn(chain, 1);
    chain.reset();

    assertBoth(0, Quality.bad(Cause.WAITING_FOR_FIRST_SAMPLE), chain.tick(at(2)));
    assertBoth(0, Quality.bad(Cause.NO_RETURN), noReturn(chain, 3));
    assertBoth(9, Quality.GOOD, good(chain, 4, 9));
  }

  @Test
  void keepsTwoChainsApart() {
    SignalChain one = plain(NoReturnPolicy.hold(5));
    SignalChain other = plain(NoReturnPolicy.hold(5));
    good(one, 0, 4);
    Conditioned unseeded = noReturn(other, 1);

    assertNotEquals(HELD, unseeded.early().quality());
    assertFalse(noReturn(one, 1).early().quality().isBad());
  }
}
