package io.strapline.bridge.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings.Event;
import io.strapline.bridge.config.SourceSettings.Event.Fault;
import io.strapline.bridge.config.SourceSettings.LevelProcess;
import io.strapline.bridge.config.SourceSettings.ShowsAs;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.bridge.config.SourceSettings.Simulated;
import io.strapline.bridge.testing.Plants;
import io.strapline.bridge.testing.Refused;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.loop.RawCounts;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.DiagnosticStatus;
import io.strapline.level.signal.GateSettings;
import io.strapline.level.signal.NoReturnPolicy;
import io.strapline.level.signal.SignalSettings;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class SimulatedTransmitterTest {

  private static final Instant START = Instant.parse("2026-03-01T06:00:00Z");
  private static final double REFERENCE = 10;

  /** No vessel: the level rises 0.1 m/s from 1 m to 9.8 m, that is in 88 s. */
  private static final LevelProcess RISING = new LevelProcess(1, 1, 9.8, 0.1, 0.1);

  private static Simulated source(Signal signal, double noise, Event... events) {
    return new Simulated(signal, ShowsAs.LIVE, 7, 1, noise, RISING, List.of(events));
  }

  private static PointSettings.Builder point() {
    GateSettings deadZone =
        new GateSettings(0.5, Double.POSITIVE_INFINITY, OptionalDouble.empty(), List.of());
    return Plants.plumb("LT-101", REFERENCE)
        .range(LoopRange.ofLevel(2, 9))
        .signal(new SignalSettings(deadZone, NoReturnPolicy.fail(), 1, 1, 0));
  }

  private static SimulatedTransmitter transmitter(PointSettings point, Simulated source) {
    PointConfig config = Plants.point(point, source);
    return new SimulatedTransmitter(config, source, START);
  }

  private static Sample at(SimulatedTransmitter transmitter, double seconds) {
    return transmitter.next(START.plusMillis((long) (seconds * 1000))).orElseThrow();
  }

  @Test
  void givesTheDistanceAlongAPlumbBeam() {
    Sample sample = at(transmitter(point().build(), source(Signal.DISTANCE, 0)), 30);
    assertEquals(Sample.Kind.DISTANCE, sample.kind());
    assertEquals(REFERENCE - 4, sample.value(), 1e-9);
    assertEquals(START.plusSeconds(30), sample.time());
    assertFalse(sample.simulated());
  }

  /** Range 2 m at 4 mA, 9 m at 20 mA; I = 4 + 16 (L - 2) / 7, standards.md 1.1 rearranged. */
  @ParameterizedTest
  @CsvSource({
    "10, 4",
    "45, 12",
    "80, 20",
    "9.5625, 3.9",
    "5, 3.8",
    "0, 3.8",
    "81.75, 20.4",
    "84, 20.5"
  })
  void givesTheCurrentOfTheRangeAndSaturatesAsATransmitterDoes(double seconds, double milliamps) {
    Sample sample = at(transmitter(point().build(), source(Signal.CURRENT, 0)), seconds);
    assertEquals(Sample.Kind.CURRENT, sample.kind());
    assertEquals(milliamps, sample.value(), 1e-3);
  }

  @Test
  void givesTheCurrentOfADistanceRangeToo() {
    PointSettings reverse = point().range(LoopRange.ofDistance(8, 1)).build();
    Sample sample = at(transmitter(reverse, source(Signal.CURRENT, 0)), 45);
    assertEquals(12, sample.value(), 1e-9);
  }

  /** 12 mA lies half-way between the counts of 4 and 20 mA. */
  @Test
  void givesWholeCountsOfAnInputCard() {
    PointSettings card =
        point().rawCounts(new RawCounts(RawCounts.Encoding.SIGNED_16, 1, 27648)).build();
    Sample sample = at(transmitter(card, source(Signal.RAW_COUNT, 0)), 45);
    assertEquals(Sample.Kind.RAW_COUNT, sample.kind());
    assertEquals(Math.rint((1 + 27648) / 2.0), sample.value());
  }

  @Test
  void sameSeedGivesTheSameSamplesAndAnotherSeedOthers() {
    Simulated noisy = source(Signal.DISTANCE, 0.02);
    Simulated other = new Simulated(Signal.DISTANCE, ShowsAs.LIVE, 8, 1, 0.02, RISING, List.of());
    assertEquals(series(noisy), series(noisy));
    assertNotEquals(series(noisy), series(other));
  }

  private static List<Optional<Sample>> series(Simulated source) {
    SimulatedTransmitter transmitter = transmitter(point().build(), source);
    List<Optional<Sample>> samples = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      samples.add(transmitter.next(START.plusSeconds(i)));
    }
    return samples;
  }

  @Test
  void pointsWithOneSeedDoNotTrembleInStep() {
    Simulated noisy = source(Signal.DISTANCE, 0.02);
    PointSettings twin = Plants.plumb("LT-102", REFERENCE).build();
    assertNotEquals(
        at(transmitter(point().build(), noisy), 0).value(),
        at(transmitter(twin, noisy), 0).value());
  }

  /**
   * Mean and standard deviation of n draws lie within four standard errors: s/sqrt(n) and
   * s/sqrt(2n), any statistics handbook.
   */
  @Test
  void noiseHasTheStandardDeviationThatIsAskedFor() {
    double sigma = 0.05;
    int n = 20_000;
    SimulatedTransmitter transmitter =
        transmitter(Plants.plumb("LT-101", REFERENCE).build(), source(Signal.DISTANCE, sigma));
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double error = at(transmitter, 30).value() - 6;
      sum += error;
      squares += error * error;
    }
    assertEquals(0, sum / n, 4 * sigma / Math.sqrt(n));
    assertEquals(sigma, Math.sqrt(squares / n), 4 * sigma / Math.sqrt(2.0 * n));
  }

  @Test
  void aFaultDoesNotChangeTheNoiseAfterIt() {
    Event silent = new Event(Fault.SILENT, 3, 4, OptionalDouble.empty());
    List<Optional<Sample>> disturbed = series(source(Signal.DISTANCE, 0.02, silent));
    List<Optional<Sample>> calm = series(source(Signal.DISTANCE, 0.02));
    assertEquals(Optional.empty(), disturbed.get(3));
    assertEquals(Optional.empty(), disturbed.get(6));
    assertEquals(calm.subList(7, 200), disturbed.subList(7, 200));
  }

  @Test
  void tellsAMissingReturn() {
    Event lost = new Event(Fault.NO_RETURN, 3, 4, OptionalDouble.empty());
    assertEquals(
        Sample.Kind.NO_RETURN,
        at(transmitter(point().build(), source(Signal.DISTANCE, 0, lost)), 3).kind());
    Sample loop = at(transmitter(point().build(), source(Signal.CURRENT, 0, lost)), 3);
    assertTrue(loop.value() >= 21, () -> "a loop tells it by its fault current: " + loop);
  }

  @ParameterizedTest
  @EnumSource(
      value = Fault.class,
      names = {"FAULT_CURRENT_LOW", "FAULT_CURRENT_HIGH"})
  void faultCurrentsLieInTheFailureBands(Fault fault) {
    Event event = new Event(fault, 3, 4, OptionalDouble.empty());
    double current = at(transmitter(point().build(), source(Signal.CURRENT, 0, event)), 3).value();
    assertTrue(fault == Fault.FAULT_CURRENT_LOW ? current <= 3.6 : current >= 21.0);
    Sample digital = at(transmitter(point().build(), source(Signal.DISTANCE, 0, event)), 3);
    assertEquals(DiagnosticStatus.FAILURE, digital.deviceStatus());
  }

  /** Dead zone 0.5 m below the reference point at 10 m: reached at 9.5 m, that is after 85 s. */
  @Test
  void seesNothingInsideTheDeadZone() {
    SimulatedTransmitter transmitter = transmitter(point().build(), source(Signal.DISTANCE, 0));
    assertEquals(Sample.Kind.DISTANCE, at(transmitter, 84.9).kind());
    assertEquals(Sample.Kind.NO_RETURN, at(transmitter, 85.1).kind());
  }

  @Test
  void marksItsSamplesUnlessItShowsAsLive() {
    Simulated marked =
        new Simulated(Signal.DISTANCE, ShowsAs.SIMULATED, 7, 1, 0, RISING, List.of());
    assertTrue(at(transmitter(point().build(), marked), 1).simulated());
  }

  @Test
  void refusesACurrentWithoutARangeAndACountWithoutAScale() {
    PointSettings bare = Plants.plumb("LT-101", REFERENCE).build();
    for (Signal signal : List.of(Signal.CURRENT, Signal.RAW_COUNT)) {
      Simulated source = source(signal, 0);
      String refused =
          Refused.message(IllegalArgumentException.class, () -> transmitter(bare, source));
      assertTrue(refused.contains("LT-101.range"), refused);
    }
    String refused =
        Refused.message(
            IllegalArgumentException.class,
            () -> transmitter(point().build(), source(Signal.RAW_COUNT, 0)));
    assertTrue(refused.contains("LT-101.raw_counts"), refused);
  }
}
