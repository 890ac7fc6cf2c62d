package io.strapline.level.signal;

import static io.strapline.level.signal.SignalFilterContract.at;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.signal.SignalChain.Conditioned;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Random settings and samples; the seed stands in the text of each failure. */
class SignalChainPropertyTest {

  private static final double[] EXTREMES = {
    0, -0.0, 1e300, -1e300, Double.MAX_VALUE, -Double.MAX_VALUE, Double.MIN_VALUE, 0.5, 30
  };

  @Test
  void neverGivesABetterQualityThanTheSampleNorAValueThatIsNotFinite() {
    for (long seed = 1; seed <= 300; seed++) {
      Random random = new Random(seed);
      SignalChain chain = SignalChain.of(settings(random));
      double time = 0;
      for (int i = 0; i < 100; i++) {
        time += random.nextInt(8) == 0 ? -random.nextDouble() : 3 * random.nextDouble();
        Reading sample = sample(random, time);
        Conditioned output = chain.accept(sample, strength(random));
        check(sample, output, "seed " + seed + " sample " + i);
        check(sample, chain.tick(at(time + random.nextInt(4))), "seed " + seed + " tick " + i);
      }
    }
  }

  private static void check(Reading sample, Conditioned output, String where) {
    for (Reading reading : List.of(output.early(), output.smooth())) {
      assertTrue(Double.isFinite(reading.value()), where);
      // A held or substituted value is uncertain, never good, whatever the missing sample was.
      Quality.Level best = sample.quality().isGood() ? Quality.Level.GOOD : Quality.Level.UNCERTAIN;
      assertTrue(reading.quality().level().compareTo(best) >= 0, where + ": " + reading);
    }
    assertEquals(output.early().quality(), output.smooth().quality(), where);
    if (output.early().quality().isGood()) {
      assertEquals(Quality.GOOD, output.gate(), where);
    }
  }

  /** BAD samples alone never give a usable value, whatever policy is set. */
  @Test
  void neverHoldsWithoutAMeasurement() {
    for (long seed = 1; seed <= 300; seed++) {
      Random random = new Random(seed);
      SignalChain chain = SignalChain.of(settings(random));
      for (int i = 0; i < 50; i++) {
        Reading sample = new Reading(4, Quality.bad(badCause(random)), at(i));
        Cause cause = chain.accept(sample, strength(random)).early().quality().cause();
        assertTrue(cause != Cause.NO_RETURN_HELD && cause != Cause.NONE, "seed " + seed);
      }
    }
  }

  private static SignalSettings settings(Random random) {
    OptionalDouble least = random.nextBoolean() ? OptionalDouble.of(12) : OptionalDouble.empty();
    double far = random.nextBoolean() ? 30 : Double.POSITIVE_INFINITY;
    GateSettings gates = new GateSettings(random.nextInt(2) * 0.5, far, least, List.of());
    return new SignalSettings(
        gates,
        policy(random),
        1 + 2 * random.nextInt(5),
        1 + random.nextInt(20),
        random.nextInt(3) * random.nextDouble());
  }

  private static NoReturnPolicy policy(Random random) {
    List<NoReturnPolicy> policies =
        List.of(
            NoReturnPolicy.hold(random.nextInt(10)),
            NoReturnPolicy.substitute(random.nextInt(10), 25),
            NoReturnPolicy.fail());
    return policies.get(random.nextInt(policies.size()));
  }

  private static Reading sample(Random random, double time) {
    double value =
        random.nextInt(10) == 0
            ? EXTREMES[random.nextInt(EXTREMES.length)]
            : 35 * random.nextDouble();
    return new Reading(value, quality(random), at(time));
  }

  private static Quality quality(Random random) {
    return switch (random.nextInt(4)) {
      case 0 -> Quality.bad(badCause(random));
      case 1 -> Quality.uncertain(Cause.LOOP_UNDER_RANGE);
      case 2 ->
          random.nextBoolean() ? Quality.uncertain(Cause.LOOP_FAULT_CONFIRMING) : Quality.GOOD;
      default -> Quality.GOOD;
    };
  }

  private static Cause badCause(Random random) {
    Cause[] causes = {Cause.NO_RETURN, Cause.NOT_A_NUMBER, Cause.LOOP_FAULT_HIGH};
    return causes[random.nextInt(causes.length)];
  }

  private static OptionalDouble strength(Random random) {
    double[] strengths = {5, 12, 40, Double.NaN, Double.POSITIVE_INFINITY};
    int pick = random.nextInt(strengths.length + 1);
    return pick < strengths.length ? OptionalDouble.of(strengths[pick]) : OptionalDouble.empty();
  }
}
