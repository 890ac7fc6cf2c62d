package io.strapline.level.diagnosis;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Diagnostic;
import java.time.Instant;
import java.util.stream.Stream;

/** Looks for scatter above the usual one. The baseline is not learned from a symptom. */
final class NoiseWatch implements Watch {

  private final NoiseCheck check;
  private final NoiseEstimate estimate = new NoiseEstimate();
  private final SlowMean baseline;
  private final Latch high;

  NoiseWatch(NoiseCheck check, Baseline kept) {
    this.check = check;
    baseline = new SlowMean(check.learning().timeConstantSeconds());
    baseline.restore(kept.noiseMetres(), kept.noiseSeconds());
    high = new Latch(Cause.NOISE_HIGH, check.holdOff());
  }

  @Override
  public void accept(Facts facts) {
    if (facts.distanceMetres().isEmpty()) {
      estimate.interrupt();
      return;
    }
    estimate.add(facts.distanceMetres().getAsDouble(), facts.time());
    if (estimate.isFull()) {
      judge(estimate.sigma(), facts.time());
    }
  }

  private void judge(double sigma, Instant time) {
    boolean known = baseline.learnedSeconds() >= check.learning().leastSeconds();
    double most = Math.max(check.leastMetres(), check.factor() * baseline.value());
    high.update(known && sigma > most, time);
    if (high.isSuspicious()) {
      baseline.skip(time);
    } else {
      baseline.add(sigma, time);
    }
  }

  double metres() {
    return baseline.value();
  }

  double learnedSeconds() {
    return baseline.learnedSeconds();
  }

  @Override
  public Stream<Diagnostic> diagnostics() {
    return high.diagnostic().stream();
  }
}
