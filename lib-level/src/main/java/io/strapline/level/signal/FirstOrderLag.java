package io.strapline.level.signal;

import io.strapline.level.internal.Check;
import io.strapline.level.internal.Elapsed;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * First-order lag, also called damping. Stateful, one thread at a time.
 *
 * <p>{@code y += a (x - y)} with {@code a = 1 - exp(-dt / tau)}: the step-exact weight, which holds
 * for uneven sampling too (open PLC engineering course, module on analog signals, section 4.2).
 * Starts at the first usable sample, never at zero.
 *
 * <p>A sample whose time equals the one before it, or lies before it, covers no time: the output
 * stays where it is, and time goes on from the latest one seen.
 */
public final class FirstOrderLag implements SignalFilter {

  private final double timeConstantSeconds;
  private double output;
  private @Nullable Instant latest;

  private FirstOrderLag(double timeConstantSeconds) {
    this.timeConstantSeconds = timeConstantSeconds;
  }

  /**
   * Returns a lag that has seen nothing yet.
   *
   * @param timeConstantSeconds time to cover 63.2 % of a step, finite, zero or more; zero passes
   *     every sample unchanged
   */
  public static FirstOrderLag of(double timeConstantSeconds) {
    return new FirstOrderLag(
        checkedTimeConstant("FirstOrderLag.timeConstant", timeConstantSeconds));
  }

  static double checkedTimeConstant(String field, double seconds) {
    return Check.notNegative(field, seconds, "s", "enter the time constant, 0 for no lag");
  }

  @Override
  public Reading apply(Reading input) {
    if (input.quality().isBad() || timeConstantSeconds == 0) {
      return input;
    }
    step(input.value(), input.time());
    return input.derived(output, Quality.GOOD);
  }

  private void step(double value, Instant time) {
    if (latest == null) {
      output = value;
      latest = time;
      return;
    }
    double elapsed = Elapsed.seconds(latest, time);
    if (elapsed > 0) {
      output = blend(value, -Math.expm1(-elapsed / timeConstantSeconds));
      latest = time;
    }
  }

  private double blend(double value, double weight) {
    double difference = value - output;
    // The difference of two huge values of opposite sign overflows; the weighted sum does not.
    return Double.isFinite(difference)
        ? output + weight * difference
        : (1 - weight) * output + weight * value;
  }

  /**
   * {@inheritDoc}
   *
   * <p>The time constant: on a ramp the output of a continuous lag is late by exactly that. The
   * sampled output is a little earlier at the samples themselves, by less than half an interval:
   * {@code Ts / (exp(Ts / tau) - 1)} (derived here from the steady state of the formula above).
   */
  @Override
  public double delaySeconds(double sampleIntervalSeconds) {
    Delays.checkedInterval(sampleIntervalSeconds);
    return timeConstantSeconds;
  }

  @Override
  public void reset() {
    latest = null;
  }
}
