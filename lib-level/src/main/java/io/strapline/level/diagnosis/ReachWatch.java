package io.strapline.level.diagnosis;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Diagnostic;
import java.time.Instant;
import java.util.stream.Stream;

/** Looks for a return that vanishes on the way down, well above the bottom. */
final class ReachWatch implements Watch {

  private final ReachCheck check;
  private final RecentDistances recent;
  private final Latch shortReach;
  private double lastMetres;
  private boolean leaving;

  ReachWatch(ReachCheck check) {
    this.check = check;
    recent = new RecentDistances(check.windowSeconds());
    shortReach = new Latch(Cause.RANGE_SHORT, check.holdOff());
  }

  @Override
  public void accept(Facts facts) {
    Instant time = facts.time();
    if (facts.distanceMetres().isPresent()) {
      lastMetres = facts.distanceMetres().getAsDouble();
      leaving = recent.to(lastMetres, time).metres() > check.marginMetres();
      recent.add(lastMetres, time);
      shortReach.update(false, time);
    } else if (facts.lost()) {
      boolean none = facts.strength().orElse(0) <= check.zeroStrength();
      boolean early = lastMetres < check.bottomMetres() - check.marginMetres();
      shortReach.update(none && early && leaving, time);
    }
  }

  @Override
  public Stream<Diagnostic> diagnostics() {
    return shortReach.diagnostic().stream();
  }
}
