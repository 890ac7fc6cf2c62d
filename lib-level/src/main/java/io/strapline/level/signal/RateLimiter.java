package io.strapline.level.signal;

import io.strapline.level.internal.Check;
import io.strapline.level.internal.Elapsed;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Lets the distance move no faster than the surface can. Stateful, one thread at a time.
 *
 * <p>The output goes towards the signal by at most {@code v dt}, v being the limit at the output's
 * own distance. While it is away from the signal by more than the tolerance, it is UNCERTAIN with
 * {@link Cause#RATE_LIMITED}. Starts at the first usable sample. A sample whose time equals the one
 * before it, or lies before it, covers no time: the output stays.
 */
public final class RateLimiter implements SignalFilter {

  private static final Quality LIMITED = Quality.uncertain(Cause.RATE_LIMITED);

  /** Slices of a step when its duration is worked out. */
  private static final int SLICES = 1000;

  /** Pieces of the time between two samples. */
  private static final int PIECES = 16;

  private final SpeedLimits limits;
  private final double toleranceMetres;
  private double output;
  private boolean back = true;
  private @Nullable Instant latest;

  private RateLimiter(SpeedLimits limits, double toleranceMetres) {
    this.limits = limits;
    this.toleranceMetres = toleranceMetres;
  }

  /**
   * Returns a limiter that has seen nothing yet.
   *
   * @param limits speeds along the beam
   * @param toleranceMetres finite, zero or more
   */
  public static RateLimiter of(SpeedLimits limits, double toleranceMetres) {
    Check.present("RateLimiter.limits", limits, "give the limits");
    return new RateLimiter(
        limits,
        Check.notNegative(
            "RateLimiter.tolerance", toleranceMetres, "m", "enter three to six times the noise"));
  }

  @Override
  public Reading apply(Reading input) {
    if (input.quality().isBad()) {
      return input;
    }
    step(input.value(), input.time());
    back = Math.abs(input.value() - output) <= toleranceMetres;
    return input.derived(output, back ? Quality.GOOD : LIMITED);
  }

  /** Returns whether the output is back at the signal, within the tolerance. */
  boolean isBack() {
    return back;
  }

  private void step(double value, Instant time) {
    if (latest == null) {
      output = value;
      latest = time;
      return;
    }
    double elapsed = Elapsed.seconds(latest, time);
    if (elapsed > 0) {
      // Pieces, because the limit may change on a long way; most ways end in the first.
      for (int i = 0; i < PIECES && output != value; i++) {
        output = moved(value, elapsed / PIECES);
      }
      latest = time;
    }
  }

  private double moved(double value, double seconds) {
    return value < output
        ? Math.max(value, output - limits.nearing(output) * seconds)
        : Math.min(value, output + limits.leaving(output) * seconds);
  }

  /**
   * {@inheritDoc}
   *
   * <p>None: a ramp slower than the limit passes as it is.
   */
  @Override
  public double delaySeconds(double sampleIntervalSeconds) {
    Delays.checkedInterval(sampleIntervalSeconds);
    return 0;
  }

  /**
   * Returns how long the output takes from one distance to another: the sum of {@code dd / v(d)}
   * over small pieces of the way, D / v where the limit is the same everywhere (open PLC
   * engineering course, module on analog signals, section 4.4).
   */
  public double stepSeconds(double fromMetres, double toMetres) {
    double piece = Math.abs(toMetres - fromMetres) / SLICES;
    double seconds = 0;
    for (int i = 0; i < SLICES; i++) {
      double middle = fromMetres + (toMetres - fromMetres) * (i + 0.5) / SLICES;
      seconds += piece / (toMetres < fromMetres ? limits.nearing(middle) : limits.leaving(middle));
    }
    return seconds;
  }

  @Override
  public void reset() {
    latest = null;
  }
}
