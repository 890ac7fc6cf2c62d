package io.strapline.level.diagnosis;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Diagnostic;
import java.time.Instant;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Looks for returns weaker than usual: at once a wet window or dust, over days a window that grows
 * dirty. The baseline is not learned from a symptom. A lost return without strength is none.
 */
final class StrengthWatch implements Watch {

  private final StrengthCheck check;
  private final SlowMean baseline;
  private final SlowMean recent;
  private final Latch low;
  private final Latch falling;

  StrengthWatch(StrengthCheck check, Baseline kept) {
    this.check = check;
    baseline = new SlowMean(check.learning().timeConstantSeconds());
    baseline.restore(kept.strength(), kept.strengthSeconds());
    recent = new SlowMean(check.recentSeconds());
    low = new Latch(Cause.STRENGTH_LOW, check.holdOff());
    falling = new Latch(Cause.STRENGTH_FALLING, check.holdOff());
  }

  @Override
  public void accept(Facts facts) {
    double strength = facts.strength().orElse(0);
    if (strength > 0) {
      judge(strength, facts.time());
    }
  }

  private void judge(double strength, Instant time) {
    recent.add(strength, time);
    boolean known = baseline.learnedSeconds() >= check.learning().leastSeconds();
    low.update(known && strength < check.lowShare() * baseline.value(), time);
    boolean settled = recent.learnedSeconds() >= check.recentSeconds();
    boolean fallen = recent.value() < check.fallingShare() * baseline.value();
    falling.update(known && settled && fallen, time);
    if (low.isSuspicious() || falling.isSuspicious()) {
      baseline.skip(time);
    } else {
      baseline.add(strength, time);
    }
  }

  double strength() {
    return baseline.value();
  }

  double learnedSeconds() {
    return baseline.learnedSeconds();
  }

  @Override
  public Stream<Diagnostic> diagnostics() {
    return Stream.of(low, falling).map(Latch::diagnostic).flatMap(Optional::stream);
  }
}
