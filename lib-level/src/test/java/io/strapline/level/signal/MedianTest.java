package io.strapline.level.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.testing.CsvRow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MedianTest extends SignalFilterContract {

  @Override
  SignalFilter stage() {
    return Median.of(5);
  }

  /** Field case S6: a mean would give 80. */
  @Test
  void takesOutliersOutOfAStillSurface() {
    Median median = Median.of(5);
    double output = 0;
    int second = 0;
    for (double reading : new double[] {82, 82, 92, 82, 62}) {
      output = feed(median, second++, reading);
    }

    assertEquals(82, output);
    assertEquals(2, median.delaySeconds(1), "(5-1)/2 samples of a second");
  }

  /** filters.csv: rejects completely up to (N-1)/2 consecutive outliers. */
  @ParameterizedTest
  @ValueSource(ints = {3, 5, 7, 99})
  void rejectsHalfAWindowOfOutliersInARowAndNotOneMore(int samples) {
    int most = (samples - 1) / 2;
    Median median = Median.of(samples);
    feed(median, 0, 4);
    for (int i = 1; i <= most; i++) {
      assertEquals(4, feed(median, i, 30));
    }

    assertEquals(30, feed(median, most + 1, 30));
  }

  /** filters.csv: delay of a clean step (N-1)/2 samples, edges not smeared. */
  @ParameterizedTest
  @ValueSource(ints = {1, 3, 5, 9})
  void delaysACleanStepByHalfTheWindowAndKeepsItsEdge(int samples) {
    Median median = Median.of(samples);
    for (int i = 0; i < samples; i++) {
      feed(median, i, 1);
    }
    int late = 0;
    double output = feed(median, samples, 3);
    while (output < 3) {
      assertEquals(1, output, "no value between the two");
      late++;
      output = feed(median, samples + late, 3);
    }

    assertEquals(median.delaySeconds(1), late);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 3, 5, 99})
  void isLateOnARampByTheDelayItStates(int samples) {
    assertEquals(
        Median.of(samples).delaySeconds(0.25), delayOnARamp(Median.of(samples), 0.25), 1e-9);
  }

  @Test
  void agreesWithTheVectors() {
    assertEquals(24, FilterVectors.check("median", row -> Median.of(samples(row))));
  }

  private static int samples(CsvRow row) {
    return FilterVectors.parameter(row, "N").intValue();
  }
}
