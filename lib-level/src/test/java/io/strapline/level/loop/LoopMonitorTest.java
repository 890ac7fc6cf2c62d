package io.strapline.level.loop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.loop.LoopLimits.Recovery;
import io.strapline.level.loop.LoopSignal.State;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LoopMonitorTest {

  private static final Instant START = Instant.parse("2026-03-01T06:00:00Z");

  /** Confirmation and recovery 2 s, hysteresis 0.1 mA, as in the computed sequences. */
  private static final LoopLimits TWO_SECONDS =
      new LoopLimits(3.6, 3.8, 20.5, 21, 2, new Recovery(0.1, 2));

  private final LoopMonitor monitor = LoopMonitor.of(TWO_SECONDS);

  // The state machine is this project's; the sequences were computed apart from this code.
  @ParameterizedTest
  @ValueSource(strings = {"GLITCH", "WIREBREAK", "DOWNSCALE", "UPSCALE"})
  void followsTheComputedSequence(String name) {
    List<CsvRow> rows = sequence(name);
    for (CsvRow row : rows) {
      LoopSignal signal = accept(row.number("current_mA"), row.number("t_s"));

      assertEquals(State.valueOf(row.text("state")), signal.state(), row::toString);
      assertEquals(
          row.number("output_percent"),
          LoopRange.percentOfCurrent(signal.currentMilliamps()),
          1e-9,
          row::toString);
      assertEquals(row.text("in_failure_band").equals("1"), signal.band().isFailure());
      assertEquals(expectedLevel(row, signal.band()), signal.quality().level(), row::toString);
    }
  }

  private static List<CsvRow> sequence(String name) {
    List<CsvRow> rows =
        CsvRows.read(LoopMonitorTest.class, "ne43_sequences.csv").stream()
            .filter(row -> row.text("sequence").equals(name))
            .toList();
    assertFalse(rows.isEmpty(), name);
    return rows;
  }

  private static Quality.Level expectedLevel(CsvRow row, LoopBand band) {
    String quality = row.text("output_quality");
    if (quality.startsWith("by band")) {
      return band.quality().level();
    }
    return quality.startsWith("Bad") ? Quality.Level.BAD : Quality.Level.UNCERTAIN;
  }

  // Field case S3: limits 3.6 and 21 mA, delay 4 s, one sample a second.
  @Test
  void bearsADipOfThreeSecondsAndFaultsFourSecondsIntoTheNext() {
    LoopMonitor field = LoopMonitor.of(LoopLimits.NE43);
    List<State> states = new ArrayList<>();
    for (int second = 0; second <= 20; second++) {
      boolean dip = (second >= 1 && second < 4) || (second >= 14 && second < 19);
      LoopSignal signal = field.accept(dip ? 3.4 : 12, START.plusSeconds(second));
      states.add(signal.state());
      assertEquals(12, signal.currentMilliamps(), "no sample may look like an empty vessel");
      assertEquals(dip, !signal.quality().isGood() && second < 19, "second " + second);
    }

    assertFalse(states.subList(0, 18).contains(State.FAULT));
    assertEquals(State.FAULT, states.get(18), "first low sample at 14 s, fault at 18 s");
    assertEquals(List.of(State.FAULT, State.FAULT), states.subList(19, 21), "not yet recovered");
  }

  @Test
  void holdsTheLastValueAsUncertainWhileConfirming() {
    accept(12, 0);

    assertEquals(
        new LoopSignal(
            LoopBand.FAILURE_LOW,
            State.SUSPECT,
            12,
            Quality.uncertain(Cause.LOOP_FAULT_CONFIRMING)),
        accept(0, 1));
  }

  @Test
  void confirmsAtTheExactTimeWithUnevenSamples() {
    accept(12, 0);
    accept(0, 1);
    assertEquals(State.SUSPECT, accept(0, 1.003).state());
    assertEquals(State.SUSPECT, accept(0, 2.999999999).state());
    assertEquals(State.FAULT, accept(0, 3).state());
  }

  @Test
  void confirmsAtOnceAfterALongGapBetweenTwoFailingSamples() {
    accept(12, 0);
    accept(0, 1);
    assertEquals(State.FAULT, accept(0, 3600).state());
  }

  @Test
  void startsTheConfirmationAnewAfterAValidCurrent() {
    accept(0, 0);
    accept(12, 1.5);
    assertEquals(State.SUSPECT, accept(0, 2).state());
    assertEquals(State.SUSPECT, accept(0, 3.9).state());
    assertEquals(State.FAULT, accept(0, 4).state());
  }

  @Test
  void faultsAtTheFirstFailingSampleWithoutConfirmationTime() {
    LoopMonitor hasty = LoopMonitor.of(new LoopLimits(3.6, 3.8, 20.5, 21, 0, new Recovery(0.1, 0)));
    hasty.accept(12, START);

    assertEquals(State.FAULT, hasty.accept(0, START.plusSeconds(1)).state());
    assertEquals(State.FAULT, hasty.accept(3.65, START.plusSeconds(2)).state(), "hysteresis");
    assertEquals(State.OK, hasty.accept(3.75, START.plusSeconds(3)).state());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 23, Double.NaN, Double.NEGATIVE_INFINITY})
  void isBadAtOnceWhenTheFirstCurrentFails(double current) {
    Quality bad = TWO_SECONDS.classify(current).quality();

    LoopSignal first = accept(current, 0);
    assertEquals(State.SUSPECT, first.state());
    assertEquals(bad, first.quality());
    assertEquals(4, first.currentMilliamps());
    LoopSignal confirmed = accept(current, 2);
    assertEquals(State.FAULT, confirmed.state());
    assertEquals(bad, confirmed.quality());
    assertEquals(4, confirmed.currentMilliamps());
  }

  @Test
  void takesTheFirstValidCurrentAtOnceAfterAFailingStart() {
    accept(0, 0);

    LoopSignal signal = accept(12, 1);
    assertEquals(State.OK, signal.state());
    assertEquals(Quality.GOOD, signal.quality());
    assertEquals(12, signal.currentMilliamps());
  }

  @Test
  void countsOnWhenTheFailureChangesSidesAndTellsThePresentSide() {
    accept(12, 0);
    accept(0, 1);
    accept(22, 2);

    LoopSignal high = accept(22, 3);
    assertEquals(State.FAULT, high.state());
    assertEquals(Quality.bad(Cause.LOOP_FAULT_HIGH), high.quality());
    LoopSignal low = accept(0, 4);
    assertEquals(State.FAULT, low.state());
    assertEquals(Quality.bad(Cause.LOOP_FAULT_LOW), low.quality());
    assertEquals(LoopBand.FAILURE_LOW, low.band());
  }

  @Test
  void countsACurrentThatIsNoNumberAsAFailure() {
    accept(12, 0);
    assertEquals(State.SUSPECT, accept(Double.NaN, 1).state());

    LoopSignal signal = accept(Double.POSITIVE_INFINITY, 3);
    assertEquals(State.FAULT, signal.state());
    assertEquals(LoopBand.UNDEFINED, signal.band());
    assertEquals(Quality.bad(Cause.NOT_A_NUMBER), signal.quality());
    assertEquals(12, signal.currentMilliamps());
  }

  @Test
  void staysBadWithItsCauseUntilRecovered() {
    fault();

    LoopSignal inside = accept(8, 10);
    assertEquals(LoopBand.NORMAL, inside.band());
    assertEquals(State.FAULT, inside.state());
    assertEquals(Quality.bad(Cause.LOOP_FAULT_LOW), inside.quality());
    assertEquals(12, inside.currentMilliamps());
    assertEquals(State.FAULT, accept(8, 11.999).state());
    LoopSignal recovered = accept(9, 12);
    assertEquals(State.OK, recovered.state());
    assertEquals(9, recovered.currentMilliamps());
    assertEquals(Quality.GOOD, recovered.quality());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 3.65, 20.95, 22, Double.NaN})
  void startsTheRecoveryAnewWhenItIsInterrupted(double interruption) {
    fault();
    accept(8, 10);
    accept(interruption, 11);
    accept(8, 11.5);
    assertEquals(State.FAULT, accept(8, 13).state());
    assertEquals(State.OK, accept(8, 13.5).state());
  }

  @Test
  void neverShortensAConfirmationWhenTimeGoesBack() {
    accept(12, 100);
    accept(0, 101);
    assertEquals(State.SUSPECT, accept(0, 102).state());
    assertEquals(State.SUSPECT, accept(0, 50).state());
    assertEquals(State.SUSPECT, accept(0, 51.9).state());
    assertEquals(State.FAULT, accept(0, 52).state());
  }

  // Swapped neighbours: 1, 0, 3, 2 s. The fault must neither come early nor be put off for ever.
  @Test
  void confirmsThoughNeighbouringSamplesAreSwapped() {
    accept(0, 1);
    assertEquals(State.SUSPECT, accept(0, 0).state());
    assertEquals(State.FAULT, accept(0, 3).state());
  }

  @Test
  void neverShortensARecoveryWhenTimeGoesBack() {
    fault();
    accept(8, 10);
    accept(8, 11);
    assertEquals(State.FAULT, accept(8, 7).state());
    assertEquals(State.FAULT, accept(8, 8.9).state());
    assertEquals(State.OK, accept(8, 9).state());
  }

  @Test
  void bearsTheEndsOfTime() {
    monitor.accept(0, Instant.MIN);
    assertEquals(State.FAULT, monitor.accept(0, Instant.MAX).state());
    assertEquals(State.FAULT, monitor.accept(12, Instant.MIN).state());
  }

  @Test
  void forgetsEverythingOnReset() {
    fault();
    monitor.reset();

    LoopSignal first = accept(0, 4);
    assertEquals(State.SUSPECT, first.state());
    assertEquals(4, first.currentMilliamps());
  }

  @Test
  void givesAFiniteCurrentAndNeverGoodInAFailureBandWhateverComes() {
    long seed = 20260301;
    Random random = new Random(seed);
    Function<Random, Double> wild =
        r -> r.nextInt(10) == 0 ? Double.longBitsToDouble(r.nextLong()) : r.nextDouble() * 26 - 1;
    double time = 0;
    Set<State> seen = EnumSet.noneOf(State.class);
    for (int i = 0; i < 20_000; i++) {
      time += random.nextDouble() - 0.1;
      LoopSignal signal = accept(wild.apply(random), time);
      String where = "seed " + seed + " sample " + i + " " + signal;
      assertTrue(Double.isFinite(signal.currentMilliamps()), where);
      assertEquals(signal.state() == State.OK, !signal.band().isFailure() && isOk(signal), where);
      if (signal.state() != State.OK) {
        assertNotEquals(Quality.Level.GOOD, signal.quality().level(), where);
      }
      seen.add(signal.state());
    }
    assertEquals(EnumSet.allOf(State.class), seen);
  }

  private static boolean isOk(LoopSignal signal) {
    return signal.quality().equals(signal.band().quality()) && !signal.quality().isBad();
  }

  private void fault() {
    accept(12, 0);
    accept(0, 1);
    assertEquals(State.FAULT, accept(0, 3).state());
  }

  private LoopSignal accept(double current, double second) {
    return monitor.accept(current, START.plusNanos(Math.round(second * 1e9)));
  }
}
