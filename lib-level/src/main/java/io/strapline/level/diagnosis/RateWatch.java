package io.strapline.level.diagnosis;

import io.strapline.level.diagnosis.RecentDistances.Movement;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Diagnostic;
import java.util.stream.Stream;

/** Looks for speeds that no surface has. */
final class RateWatch implements Watch {

  private final RateCheck check;
  private final RecentDistances recent;
  private final Latch fast;

  RateWatch(RateCheck check) {
    this.check = check;
    recent = new RecentDistances(check.windowSeconds());
    fast = new Latch(Cause.RATE_IMPLAUSIBLE, check.holdOff());
  }

  @Override
  public void accept(Facts facts) {
    if (facts.distanceMetres().isPresent()) {
      double distance = facts.distanceMetres().getAsDouble();
      Movement movement = recent.to(distance, facts.time());
      recent.add(distance, facts.time());
      if (movement.seconds() > 0) {
        fast.update(isTooFast(movement), facts.time());
      }
    }
  }

  private boolean isTooFast(Movement movement) {
    double limit = movement.metres() < 0 ? check.nearing() : check.leaving();
    double way = Math.abs(movement.metres()) - check.resolutionMetres();
    // A window that is not yet full would make a speed of a single wrong sample.
    return way > limit * Math.max(movement.seconds(), check.windowSeconds());
  }

  @Override
  public Stream<Diagnostic> diagnostics() {
    return fast.diagnostic().stream();
  }
}
