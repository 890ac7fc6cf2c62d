package io.strapline.level.inventory;

import static io.strapline.level.inventory.Series.at;
import static io.strapline.level.inventory.Series.bad;
import static io.strapline.level.inventory.Series.good;
import static io.strapline.level.inventory.Series.uncertain;
import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.inventory.Batch.Trust;
import io.strapline.level.reading.Reading;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BatchDetectorTest {

  private static final double AREA = 20;
  private static final Content VOLUME = Content.volume(Vessels.upright(AREA, 50));
  private static final FlowSettings FLOW = FlowSettings.of(30, 0.001);
  // A millimetre a second is 0.02 m3/s.
  private static final BatchSettings BATCHES = new BatchSettings(0.005, 0.003, 60, 1);

  private final BatchDetector detector = BatchDetector.of(FLOW, BATCHES, VOLUME);
  private final List<Batch> batches = new ArrayList<>();

  private void add(Reading level) {
    detector.add(level).ifPresent(batches::add);
  }

  private void run(double from, double to, DoubleUnaryOperator level) {
    for (double t = from; t <= to; t++) {
      add(good(t, level.applyAsDouble(t)));
    }
  }

  // Level that rises by a metre from 200 s to 1200 s.
  private static double fill(double t) {
    return 4 + 0.001 * Math.max(0, Math.min(1000, t - 200));
  }

  private static void assertNear(double expectedSeconds, java.time.Instant time, double tolerance) {
    double seconds = Duration.between(Series.START, time).toNanos() / 1e9;
    assertEquals(expectedSeconds, seconds, tolerance);
  }

  @Test
  void findsStartEndAndAmountOfAFill() {
    run(0, 1400, BatchDetectorTest::fill);
    assertEquals(1, batches.size());
    Batch batch = batches.get(0);
    assertEquals(FlowDirection.FILLING, batch.direction());
    assertEquals(20, batch.amount(), 1e-9);
    assertNear(200, batch.start(), 2);
    assertNear(1200, batch.end(), 2);
    assertEquals(Trust.FULL, batch.trust());
    assertTrue(detector.open().isEmpty());
  }

  @Test
  void findsADrawByTheMirrorImage() {
    run(0, 1400, t -> 10 - fill(t));
    assertEquals(1, batches.size());
    assertEquals(FlowDirection.DRAWING, batches.get(0).direction());
    assertEquals(20, batches.get(0).amount(), 1e-9);
  }

  // Noise with a step of the signal: the contents at rest are means, so the amount is unbiased to
  // the noise of a mean of 31 samples.
  @Test
  void noiseAndStepsOfTheSignalDoNotBiasTheAmount() {
    long seed = 31;
    Random random = new Random(seed);
    double sum = 0;
    for (int run = 0; run < 40; run++) {
      BatchDetector noisy = BatchDetector.of(FLOW, BATCHES, VOLUME);
      for (int t = 0; t <= 1400; t++) {
        double level = fill(t) + 0.002 * random.nextGaussian();
        double stepped = Math.round(level * 1000) / 1000.0;
        Optional<Batch> batch = noisy.add(good(t, stepped));
        if (batch.isPresent()) {
          sum += batch.get().amount() - 20;
          assertEquals(20, batch.get().amount(), 0.05, "seed " + seed + " run " + run);
          assertNear(200, batch.get().start(), 15);
          assertNear(1200, batch.get().end(), 15);
        }
      }
    }
    assertEquals(0, sum / 40, 0.01, "seed " + seed);
  }

  @Test
  void tellsTheBatchUnderWay() {
    run(0, 700, BatchDetectorTest::fill);
    OpenBatch open = detector.open().orElseThrow();
    assertEquals(FlowDirection.FILLING, open.direction());
    assertNear(200, open.start(), 2);
    assertEquals(80, open.startAmount(), 1e-9);
    assertEquals(0.02, detector.flow().rate().value(), 1e-9);
  }

  // A flow that moves about the start rate, between it and the stop rate: one batch and not many.
  @Test
  void hysteresisKeepsAWaveringFlowInOneBatch() {
    double level = 4;
    for (int t = 0; t <= 4000; t++) {
      boolean running = t > 200 && t <= 3500;
      double rate = running ? 0.0003 + 0.0001 * Math.sin(t / 40.0) : 0;
      level += rate;
      add(good(t, level));
    }
    assertEquals(1, batches.size());
    assertEquals(AREA * (level - 4), batches.get(0).amount(), 1e-9);
  }

  @Test
  void aPauseShorterThanTheQuietTimeDoesNotSplitABatch() {
    run(0, 1600, t -> fill(t < 600 ? t : Math.max(600, t - 40)));
    assertEquals(1, batches.size());
    assertEquals(20, batches.get(0).amount(), 1e-9);
    assertNear(1240, batches.get(0).end(), 2);
  }

  @Test
  void aPauseLongerThanTheQuietTimeMakesTwo() {
    run(0, 2000, t -> fill(t < 600 ? t : Math.max(600, t - 200)));
    assertEquals(2, batches.size());
    assertEquals(8, batches.get(0).amount(), 1e-9);
    assertEquals(12, batches.get(1).amount(), 1e-9);
    assertNear(600, batches.get(0).end(), 2);
    assertNear(800, batches.get(1).start(), 2);
  }

  @Test
  void smallMovementsAreNoBatches() {
    run(0, 1000, t -> 4 + 0.001 * Math.max(0, Math.min(49, t - 200)));
    assertEquals(List.of(), batches);
    assertTrue(detector.open().isEmpty());
  }

  @Test
  void turningRoundEndsOneAndStartsTheNext() {
    run(0, 2600, t -> t < 1200 ? fill(t) : 5 - 0.001 * Math.min(600, t - 1200));
    assertEquals(2, batches.size());
    Batch up = batches.get(0);
    Batch down = batches.get(1);
    assertEquals(20, up.amount(), 0.021);
    assertEquals(FlowDirection.DRAWING, down.direction());
    assertEquals(12, down.amount(), 0.021);
    assertEquals(up.end(), down.start());
    assertNear(1200, up.end(), 1);
    assertNear(1800, down.end(), 2);
    assertEquals(Trust.FULL, down.trust());
  }

  @Test
  void aFillThatRanAlreadyIsPartlySeen() {
    run(500, 1400, BatchDetectorTest::fill);
    assertEquals(1, batches.size());
    assertEquals(Trust.PARTLY_SEEN, batches.get(0).trust());
    assertEquals(14, batches.get(0).amount(), 1e-9);
    assertNear(500, batches.get(0).start(), 1);
  }

  @Test
  void aGapInsideABatchCountsNetAndIsMarked() {
    run(0, 600, BatchDetectorTest::fill);
    for (int t = 601; t < 800; t++) {
      add(bad(t));
    }
    assertTrue(detector.open().isPresent());
    run(800, 1400, BatchDetectorTest::fill);
    assertEquals(1, batches.size());
    assertEquals(20, batches.get(0).amount(), 1e-9);
    assertEquals(Trust.PARTLY_SEEN, batches.get(0).trust());
  }

  @Test
  void aBatchThatEndedInAGapEndsWithTheFirstSampleAfterIt() {
    run(0, 600, BatchDetectorTest::fill);
    run(1500, 1700, t -> 5);
    assertEquals(1, batches.size());
    assertEquals(20, batches.get(0).amount(), 1e-9);
    assertEquals(Trust.PARTLY_SEEN, batches.get(0).trust());
    assertNear(1500, batches.get(0).end(), 0);
  }

  @Test
  void shortGapsBadSamplesAndRepeatedTimesDoNotDisturb() {
    for (int t = 0; t <= 1400; t++) {
      add(t % 7 == 3 ? bad(t) : good(t, fill(t)));
      add(good(t, 40 * (t % 7 == 3 ? 0 : 1) + (t % 7 == 3 ? fill(t) : 0)));
      add(good(t - 3, 0));
    }
    assertEquals(1, batches.size());
    assertEquals(20, batches.get(0).amount(), 1e-9);
    assertEquals(Trust.FULL, batches.get(0).trust());
  }

  @Test
  void uncertainSamplesMarkTheBatch() {
    run(0, 600, BatchDetectorTest::fill);
    add(uncertain(601, fill(601)));
    run(602, 1400, BatchDetectorTest::fill);
    assertEquals(Trust.UNCERTAIN_INPUT, batches.get(0).trust());
  }

  @Test
  void aSavedBatchGoesOnAfterAStop() {
    run(0, 600, BatchDetectorTest::fill);
    BatchDetector after = BatchDetector.of(FLOW, BATCHES, VOLUME);
    after.resume(detector.open().orElseThrow());
    for (int t = 700; t <= 1400; t++) {
      after.add(good(t, fill(t))).ifPresent(batches::add);
    }
    assertEquals(1, batches.size());
    assertEquals(20, batches.get(0).amount(), 1e-9);
    assertNear(1200, batches.get(0).end(), 2);
    assertEquals(Trust.PARTLY_SEEN, batches.get(0).trust());
  }

  // Random fills, draws and rests: batches and totals, two ways of counting, agree with what moved.
  @Test
  void agreesWithTheTotalsAndWithWhatMoved() {
    long seed = 2718;
    Random random = new Random(seed);
    Totals totals = Totals.of(0.005, VOLUME);
    double level = 20;
    double[] moved = new double[2];
    int t = 0;
    int movements = 0;
    for (int phase = 0; phase < 120; phase++) {
      int direction = phase % 2 == 0 ? 0 : random.nextBoolean() ? 1 : -1;
      double rate = direction * (0.0008 + 0.002 * random.nextDouble());
      int seconds = 120 + random.nextInt(400);
      movements += Math.abs(direction);
      for (int i = 0; i < seconds; i++) {
        level += rate;
        moved[rate > 0 ? 0 : 1] += AREA * Math.abs(rate);
        Reading reading = good(t++, level);
        totals.add(reading);
        add(reading);
      }
    }
    double last = level;
    run(t, t + 200.0, second -> last);
    String where = "seed " + seed;
    assertTrue(movements > 40 && batches.size() == movements, where + " " + batches.size());
    assertEquals(moved[0], sum(batches, FlowDirection.FILLING), 1e-6, where);
    assertEquals(moved[1], sum(batches, FlowDirection.DRAWING), 1e-6, where);
    assertEquals(moved[0], totals.state().filledAmount(), 1e-6, where);
    assertEquals(moved[1], totals.state().drawnAmount(), 1e-6, where);
  }

  private static double sum(List<Batch> batches, FlowDirection direction) {
    return batches.stream()
        .filter(batch -> batch.direction() == direction)
        .mapToDouble(Batch::amount)
        .sum();
  }

  @Test
  void aClockSetBackDoesNotEndTheSearch() {
    run(100_000, 100_010, t -> 4);
    run(0, 1400, BatchDetectorTest::fill);
    assertEquals(1, batches.size());
    assertEquals(20, batches.get(0).amount(), 1e-9);
    assertEquals(Trust.FULL, batches.get(0).trust());
  }

  @Test
  void standingMakesNoBatchWhateverTheNoise() {
    long seed = 12;
    Random random = new Random(seed);
    for (int t = 0; t < 20_000; t++) {
      add(good(t, Math.round((4 + 0.001 * random.nextGaussian()) * 1000) / 1000.0));
    }
    assertEquals(List.of(), batches, "seed " + seed);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1})
  void refusesSettings(double wrong) {
    assertRefused("BatchSettings.startRate", () -> new BatchSettings(wrong, 0, 1, 1));
    assertRefused("BatchSettings.stopRate", () -> new BatchSettings(1, wrong, 1, 1));
    assertRefused("BatchSettings.quiet", () -> new BatchSettings(1, 0, wrong, 1));
    assertRefused("BatchSettings.minimumAmount", () -> new BatchSettings(1, 0, 1, wrong));
  }

  @Test
  void refusesRatesWithoutHysteresisAndBatchesWithoutDirection() {
    assertRefused("BatchSettings.startRate", () -> new BatchSettings(0, 0, 1, 1));
    assertRefused("BatchSettings.stopRate", () -> new BatchSettings(1, 1, 1, 1));
    assertRefused(
        "OpenBatch.direction", () -> new OpenBatch(FlowDirection.STILL, at(0), 1, Trust.FULL));
    assertRefused(
        "Batch.direction", () -> new Batch(FlowDirection.STILL, at(0), at(1), 1, Trust.FULL));
    assertRefused(
        "Batch.direction", () -> new Batch(FlowDirection.FILLING, at(1), at(0), 1, Trust.FULL));
    assertRefused(
        "Batch.amount", () -> new Batch(FlowDirection.FILLING, at(0), at(1), -1, Trust.FULL));
  }
}
