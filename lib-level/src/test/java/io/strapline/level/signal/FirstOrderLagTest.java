package io.strapline.level.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FirstOrderLagTest extends SignalFilterContract {

  private static final Pattern COVERED = Pattern.compile("time to cover ([0-9.]+) % of a step");

  @Override
  SignalFilter stage() {
    return FirstOrderLag.of(2);
  }

  @Test
  void agreesWithTheVectors() {
    int checked =
        FilterVectors.check(
            "ema_exact", row -> FirstOrderLag.of(FilterVectors.parameter(row, "tau")));

    assertEquals(21, checked);
  }

  /** filters.csv: share of a step after so many time constants, in one sample. */
  @Test
  void coversTheSharesOfAStepThatTheTableGives() {
    int checked = 0;
    for (CsvRow row : rows()) {
      Matcher covered = COVERED.matcher(row.text("property"));
      if (covered.find()) {
        // The table prints a tenth of a percent; the time itself has six decimals at most.
        double percent = Double.parseDouble(covered.group(1));
        assertEquals(percent, 100 * shareAfter(row.number("value")), 0.05, row::toString);
        checked++;
      }
    }
    assertEquals(11, checked);
  }

  private static List<CsvRow> rows() {
    return CsvRows.read(FirstOrderLagTest.class, "filters.csv");
  }

  private static double shareAfter(double timeConstants) {
    FirstOrderLag lag = FirstOrderLag.of(10);
    feed(lag, 0, 0);
    return feed(lag, 10 * timeConstants, 1);
  }

  @Test
  void coversTheShareOfOneTimeConstantToAllPrintedDigits() {
    double printed =
        rows().stream()
            .filter(row -> row.text("property").equals("share covered at 1 tau"))
            .findFirst()
            .orElseThrow()
            .number("value");

    assertEquals(printed, shareAfter(1), 0.5e-9);
  }

  /**
   * Worked example of the course (M14 section 4.2): tau 2 s, a step of 1.0 to 3.0 m gives 2.26 m
   * after 2 s, 2.90 m after 6 s and 2.99 m after 10 s.
   */
  @ParameterizedTest
  @CsvSource({"2, 2.26", "6, 2.90", "10, 2.99"})
  void followsTheWorkedExampleOfAStep(double seconds, double metres) {
    FirstOrderLag lag = FirstOrderLag.of(2);
    feed(lag, 0, 1);
    double output = 0;
    for (int i = 1; i <= Math.round(seconds / 0.01); i++) {
      output = feed(lag, i * 0.01, 3);
    }

    assertEquals(metres, output, 0.005);
  }

  /** The weight is exact: how a time is cut into samples does not matter. */
  @Test
  void givesTheSameForUnevenSamples() {
    FirstOrderLag once = FirstOrderLag.of(4);
    FirstOrderLag often = FirstOrderLag.of(4);
    feed(once, 0, 1);
    feed(often, 0, 1);
    double output = 0;
    for (double time : new double[] {0.1, 0.15, 1, 2.5, 2.6, 5}) {
      output = feed(often, time, 9);
    }

    assertEquals(feed(once, 5, 9), output, 1e-12);
  }

  @Test
  void standsStillWhenTimeStandsStillOrGoesBack() {
    FirstOrderLag disturbed = FirstOrderLag.of(4);
    FirstOrderLag quiet = FirstOrderLag.of(4);
    feed(disturbed, 0, 1);
    feed(quiet, 0, 1);
    double before = feed(disturbed, 2, 2);
    feed(quiet, 2, 2);

    assertEquals(before, feed(disturbed, 2, 50));
    assertEquals(before, feed(disturbed, -3600, 50));
    assertEquals(feed(quiet, 3, 2.5), feed(disturbed, 3, 2.5));
  }

  /**
   * filters.csv: steady lag behind a ramp {@code tau x rate}, with the exact weight {@code
   * Ts(1-alpha)/alpha x rate} after the update: the stated delay is at most half an interval more.
   */
  @ParameterizedTest
  @CsvSource({"2, 0.01", "2, 0.5", "20, 1", "1, 3"})
  void isLateOnARampByItsTimeConstant(double tau, double interval) {
    double late = delayOnARamp(FirstOrderLag.of(tau), interval);
    double alpha = 1 - Math.exp(-interval / tau);
    double stated = FirstOrderLag.of(tau).delaySeconds(interval);

    assertEquals(interval * (1 - alpha) / alpha, late, 1e-6);
    assertTrue(stated >= late && stated - late <= interval / 2, stated + " s for " + late + " s");
  }

  /** filters.csv: white-noise reduction sqrt(alpha / (2 - alpha)). */
  @Test
  void lowersWhiteNoiseAsItsWeightTells() {
    long seed = 20240502;
    double alpha = 1 - Math.exp(-1 / 5.0);
    double ratio = Noise.ratio(FirstOrderLag.of(5), new Random(seed));

    assertEquals(Math.sqrt(alpha / (2 - alpha)), ratio, 0.01, "seed " + seed);
  }

  @Test
  void passesEverySampleWithoutATimeConstant() {
    FirstOrderLag none = FirstOrderLag.of(0);
    feed(none, 0, 1);

    assertEquals(5, feed(none, 0, 5));
  }

  @Test
  void bearsCenturiesBetweenTwoSamples() {
    FirstOrderLag lag = FirstOrderLag.of(4);
    feed(lag, 0, 1);

    assertEquals(5, feed(lag, 9e9, 5));
  }
}
