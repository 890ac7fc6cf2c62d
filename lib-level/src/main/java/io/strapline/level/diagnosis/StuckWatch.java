package io.strapline.level.diagnosis;

import io.strapline.level.internal.Elapsed;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Diagnostic;
import java.time.Duration;
import java.time.Instant;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Looks for a value that stands still although it should move, or without any noise at all. */
final class StuckWatch implements Watch {

  /** A value that came fewer times may be chance. */
  private static final int LEAST_SAMPLES = 10;

  private final StuckCheck check;
  private final Duration flow;
  private final Duration frozen;
  private final Latch stuck = new Latch(Cause.VALUE_STUCK, new HoldOff(0, 0));
  private boolean flowExpected;
  private double anchor;
  private @Nullable Instant stillSince;
  private double same;
  private int sameCount;
  private @Nullable Instant sameSince;
  private Instant latest = Instant.MIN;

  StuckWatch(StuckCheck check) {
    this.check = check;
    flow = Elapsed.delay(check.flowSeconds());
    frozen = Elapsed.delay(check.frozenSeconds());
  }

  void expectFlow(boolean expected) {
    if (expected && !flowExpected) {
      stillSince = null;
    }
    flowExpected = expected;
  }

  @Override
  public void accept(Facts facts) {
    if (facts.distanceMetres().isEmpty()) {
      return;
    }
    if (facts.time().isBefore(latest)) {
      stillSince = null;
      sameSince = null;
    }
    double distance = facts.distanceMetres().getAsDouble();
    Instant still = still(distance, facts.time());
    Instant exact = exact(distance, facts.time());
    latest = facts.time();
    boolean inFlow = flowExpected && Elapsed.reached(still, latest, flow);
    boolean dead = check.frozenSeconds() > 0 && sameCount >= LEAST_SAMPLES;
    stuck.update(inFlow || (dead && Elapsed.reached(exact, latest, frozen)), latest);
  }

  private Instant still(double distance, Instant time) {
    if (stillSince == null || Math.abs(distance - anchor) > check.bandMetres()) {
      anchor = distance;
      stillSince = time;
    }
    return stillSince;
  }

  private Instant exact(double distance, Instant time) {
    if (sameSince == null || distance != same) {
      same = distance;
      sameSince = time;
      sameCount = 0;
    }
    sameCount += time.isAfter(latest) && sameCount < LEAST_SAMPLES ? 1 : 0;
    return sameSince;
  }

  @Override
  public Stream<Diagnostic> diagnostics() {
    return stuck.diagnostic().stream();
  }
}
