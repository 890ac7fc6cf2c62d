package io.strapline.level.signal;

import static io.strapline.level.signal.SignalFilterContract.at;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.signal.ObstructionSettings.Doubt;
import io.strapline.level.signal.SignalChain.Conditioned;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Random settings of all stages and random samples; the seed stands in each failure. */
class SurfaceChainPropertyTest {

  private static final double SUBSTITUTE = 25;

  private static SignalChain chain(Random random) {
    SurfaceChecks surface = SurfaceChecks.NONE;
    if (random.nextBoolean()) {
      int half = random.nextInt(4);
      Doubt near = new Doubt(0.1 + random.nextDouble(), half + 1, 2 * half + 1);
      Doubt far = new Doubt(0.1 + 2 * random.nextDouble(), 2, 3);
      surface = surface.with(new ObstructionSettings(near, far, 0.2, 1 + 30 * random.nextDouble()));
    }
    if (random.nextBoolean()) {
      surface = surface.with(RateSettings.speed(0.01 + random.nextDouble(), 0.5, 0.05));
    }
    if (random.nextBoolean()) {
      surface = surface.with(new LostBeamSettings(random.nextDouble(), 1 + random.nextInt(100)));
    }
    GateSettings gates = new GateSettings(0.5, 30, OptionalDouble.empty(), List.of());
    NoReturnPolicy policy =
        List.of(
                NoReturnPolicy.hold(random.nextInt(10)),
                NoReturnPolicy.substitute(random.nextInt(10), SUBSTITUTE),
                NoReturnPolicy.fail())
            .get(random.nextInt(3));
    return SignalChain.of(
        new SignalSettings(
            gates,
            policy,
            1 + 2 * random.nextInt(4),
            1 + random.nextInt(10),
            5 * random.nextInt(2),
            surface));
  }

  private static Reading sample(Random random, double time) {
    Quality quality =
        switch (random.nextInt(6)) {
          case 0 -> Quality.bad(Cause.NO_RETURN);
          case 1 -> Quality.uncertain(Cause.LOOP_OVER_RANGE);
          default -> Quality.GOOD;
        };
    double metres = random.nextInt(3) == 0 ? 31 * random.nextDouble() : 10 + random.nextDouble();
    return new Reading(metres, quality, at(time));
  }

  @Test
  void neverImprovesAQualityAndStaysInTheRangeOfWhatPassedTheGates() {
    for (long seed = 1; seed <= 400; seed++) {
      Random random = new Random(seed);
      SignalChain chain = chain(random);
      Range range = new Range();
      double time = 0;
      for (int i = 0; i < 120; i++) {
        // Late, early, repeated and out of order.
        time += random.nextInt(8) == 0 ? -random.nextInt(2) : 20 * Math.pow(random.nextDouble(), 4);
        Reading sample = sample(random, time);
        Conditioned output = chain.accept(sample, OptionalDouble.empty());
        range.add(sample, output);
        String where = "seed " + seed + " sample " + i;
        check(sample, output, range, where);
        checkRange(chain.tick(at(time + random.nextInt(4))), range, where);
      }
    }
  }

  private static void check(Reading sample, Conditioned output, Range range, String where) {
    checkRange(output, range, where);
    Quality.Level best = sample.quality().isGood() ? Quality.Level.GOOD : Quality.Level.UNCERTAIN;
    assertTrue(output.early().quality().level().compareTo(best) >= 0, where);
    // From the early branch to the smooth one nothing gets better.
    int later = output.smooth().quality().level().compareTo(output.early().quality().level());
    assertTrue(later >= 0, where);
    boolean silent = output.findings().isEmpty() && output.gate().isGood();
    assertTrue(!sample.quality().isGood() || silent || !output.smooth().quality().isGood(), where);
    assertTrue(known(output.findings()), where + ": " + output.findings());
  }

  private static void checkRange(Conditioned output, Range range, String where) {
    for (Reading reading : List.of(output.early(), output.smooth())) {
      if (!reading.quality().isBad() && reading.quality().cause() != Cause.SUBSTITUTED) {
        assertTrue(range.holds(reading.value()), where + ": " + reading);
      }
    }
  }

  private static boolean known(Set<Cause> findings) {
    return Set.of(
            Cause.OBSTRUCTION_HELD,
            Cause.JUMP_UNCONFIRMED,
            Cause.RATE_LIMITED,
            Cause.OVERFULL_SUSPECTED,
            Cause.EMPTY_SUSPECTED)
        .containsAll(findings);
  }

  /** The range of all readings that were a measurement. */
  private static final class Range {
    private double low = Double.POSITIVE_INFINITY;
    private double high = Double.NEGATIVE_INFINITY;

    void add(Reading sample, Conditioned output) {
      if (output.gate().isGood() && !sample.quality().isBad()) {
        low = Math.min(low, sample.value());
        high = Math.max(high, sample.value());
      }
    }

    boolean holds(double value) {
      return value >= low - 1e-9 && value <= high + 1e-9;
    }
  }

  /** A lasting jump is believed at the latest after the stated time, whatever the stages. */
  @Test
  void acceptsEveryLastingJumpAfterTheStatedTime() {
    for (long seed = 1; seed <= 300; seed++) {
      Random random = new Random(seed);
      double acceptAfter = 1 + 60 * random.nextDouble();
      int half = random.nextInt(10);
      Doubt doubt = new Doubt(0.2, half + 1, 2 * half + 1);
      ObstructionSettings gate = new ObstructionSettings(doubt, doubt, 0.1, acceptAfter);
      SignalChain chain = SignalChain.of(SignalSettings.PLAIN.with(SurfaceChecks.NONE.with(gate)));
      chain.accept(Reading.good(10, at(0)), OptionalDouble.empty());
      double to = random.nextBoolean() ? 2 : 20;
      double time = 1;
      while (time < 1 + acceptAfter) {
        chain.accept(Reading.good(to, at(time)), OptionalDouble.empty());
        time += 0.1 + 40 * random.nextDouble() * random.nextDouble();
      }
      double value = chain.tick(at(1 + acceptAfter)).smooth().value();
      assertTrue(value == to, "seed " + seed + ": " + value);
    }
  }
}
