package io.strapline.level.diagnosis;

import io.strapline.level.internal.Elapsed;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Diagnostic;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Looks for a loop current at its end.
 *
 * <p>A flat top: a current in the upper part that stands dead still, whose value no current has
 * ever exceeded, in a loop that is usually noisier than that. A surface that has come to rest there
 * still has its noise; a loop that carries no more has none. A signal that is always as still
 * cannot be judged, and is not.
 */
final class CurrentWatch implements Watch {

  private static final double FULL_MILLIAMPS = 20;

  private final CurrentCheck check;
  private final Duration hold;
  private final Latch saturated;
  private final Latch flat;
  private final NoiseEstimate noise = new NoiseEstimate();
  private double usualNoise;
  private double highest = Double.NEGATIVE_INFINITY;
  private double low;
  private double high;
  private @Nullable Instant stillSince;

  CurrentWatch(CurrentCheck check) {
    this.check = check;
    hold = Elapsed.delay(check.holdOff().onSeconds());
    saturated = new Latch(Cause.CURRENT_SATURATED, check.holdOff());
    // The stretch that must be still is the hold-off itself.
    flat = new Latch(Cause.CURRENT_FLAT_TOP, new HoldOff(0, check.holdOff().offSeconds()));
  }

  @Override
  public void accept(Facts facts) {
    if (facts.currentMilliamps().isPresent()) {
      double current = facts.currentMilliamps().getAsDouble();
      saturated.update(isAtAnEnd(current), facts.time());
      learn(current, facts.time());
      Instant since = still(current, facts.time());
      boolean still = Elapsed.reached(since, facts.time(), hold);
      flat.update(still && isTop(current), facts.time());
    }
  }

  private boolean isAtAnEnd(double current) {
    return isNear(current, check.lowEndMilliamps()) || isNear(current, check.highEndMilliamps());
  }

  private boolean isNear(double current, double end) {
    return Math.abs(current - end) <= check.bandMilliamps();
  }

  private void learn(double current, Instant time) {
    highest = Math.max(highest, current);
    if (current >= check.flatFromMilliamps()) {
      noise.interrupt();
      return;
    }
    noise.add(current, time);
    usualNoise = noise.isFull() ? noise.sigma() : 0;
  }

  private Instant still(double current, Instant time) {
    low = Math.min(low, current);
    high = Math.max(high, current);
    boolean moved = high - low > check.bandMilliamps();
    if (stillSince == null || moved || time.isBefore(stillSince)) {
      low = current;
      high = current;
      stillSince = time;
    }
    return stillSince;
  }

  private boolean isTop(double current) {
    boolean upper = current >= check.flatFromMilliamps() && current < FULL_MILLIAMPS;
    return upper
        && highest - current <= check.bandMilliamps()
        && usualNoise >= check.bandMilliamps();
  }

  @Override
  public Stream<Diagnostic> diagnostics() {
    return Stream.of(saturated, flat).map(Latch::diagnostic).flatMap(Optional::stream);
  }
}
