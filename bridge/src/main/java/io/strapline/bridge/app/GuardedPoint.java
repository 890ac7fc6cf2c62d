package io.strapline.bridge.app;

import io.strapline.bridge.model.Operations.Outcome;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmSnapshot;
import io.strapline.level.alarm.AlarmState;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.Cause;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One measuring point behind its own lock. A scan that throws, whatever it throws, is counted,
 * logged when it begins and when it is over, and turns the point BAD; it reaches neither the caller
 * nor another point. Snapshots are published in the order in which they were made. Safe for any
 * thread.
 */
final class GuardedPoint {

  private static final Logger LOG = LoggerFactory.getLogger(GuardedPoint.class);

  private final PointSettings settings;
  private final Evaluation.Factory factory;
  private final ChangeLog changes = new ChangeLog();
  private Evaluation evaluation;
  private Consumer<PointSnapshot> publish = snapshot -> {};
  private boolean ownTime;
  private boolean begun;
  private boolean failing;
  private long faults;
  private @Nullable Cause down;

  GuardedPoint(PointSettings settings, Evaluation.Factory factory, Instant start) {
    this.settings = settings;
    this.factory = factory;
    evaluation = factory.begin(settings, start);
  }

  /** Says where snapshots go, and whether the source brings its own time; before the first scan. */
  synchronized void connect(Consumer<PointSnapshot> publisher, boolean sourceBringsTime) {
    publish = publisher;
    ownTime = sourceBringsTime;
  }

  /** Begins anew at the time at which the plant starts to run; before the first scan. */
  synchronized void begin(Instant start) {
    evaluation = factory.begin(settings, start);
    publish(evaluation.snapshot());
  }

  /** Returns the tag of the point. */
  String tag() {
    return settings.tag();
  }

  /** Returns how many scans have thrown since the start. */
  synchronized long faults() {
    return faults;
  }

  /** Returns the latest snapshot. */
  synchronized PointSnapshot snapshot() {
    return evaluation.snapshot();
  }

  /** Takes a sample that arrived at {@code now} of the plant's clock. */
  synchronized void accept(Sample sample, Instant now) {
    if (down != null) {
      LOG.info("{} source up", tag());
      down = null;
    }
    boolean fine = scan(() -> acceptInItsTime(sample, now), now);
    if (fine && failing) {
      LOG.info("{} is evaluated again; {} scans have failed since the start", tag(), faults);
      failing = false;
    }
  }

  private PointSnapshot acceptInItsTime(Sample sample, Instant now) {
    if (ownTime && !begun) {
      begun = true;
      evaluation = factory.begin(settings, sample.time());
    }
    return evaluation.accept(sample, ownTime ? sample.time() : now);
  }

  /** Lets the plant's time pass; does nothing to a point whose source brings its own time. */
  synchronized void tick(Instant now) {
    if (!ownTime) {
      scan(() -> evaluation.tick(now), now);
    }
  }

  /** Lets the time of a source that brings its own pass. */
  synchronized void elapse(Instant time) {
    if (ownTime && begun) {
      scan(() -> evaluation.tick(time), time);
    }
  }

  /** Takes the news that the source has nothing, and why. */
  synchronized void fail(Cause cause, String detail, Instant now) {
    if (down != cause) {
      LOG.warn("{} source down: {} ({})", tag(), cause.text(), detail);
      down = cause;
    }
    scan(() -> evaluation.fail(cause, pointTime(now)), now);
  }

  /** Acknowledges an alarm and tells what became of it. */
  synchronized Outcome acknowledge(AlarmKind kind, Instant now) {
    return operate(kind, () -> evaluation.acknowledge(kind, pointTime(now)), now);
  }

  /** Resets a latched alarm and tells what became of it. */
  synchronized Outcome reset(AlarmKind kind, Instant now) {
    return operate(kind, () -> evaluation.reset(kind, pointTime(now)), now);
  }

  private Outcome operate(AlarmKind kind, Supplier<PointSnapshot> step, Instant now) {
    Optional<AlarmState> before = state(kind);
    if (before.isEmpty()) {
      return Outcome.UNKNOWN;
    }
    boolean fine = scan(step, now);
    return fine && !state(kind).equals(before) ? Outcome.DONE : Outcome.NOTHING_TO_DO;
  }

  private Optional<AlarmState> state(AlarmKind kind) {
    return evaluation.snapshot().alarms().stream()
        .filter(alarm -> alarm.kind() == kind)
        .map(AlarmSnapshot::state)
        .findFirst();
  }

  private Instant pointTime(Instant now) {
    return ownTime && begun ? evaluation.snapshot().evaluated() : now;
  }

  private boolean scan(Supplier<PointSnapshot> step, Instant now) {
    try {
      publish(step.get());
      return true;
    } catch (Throwable fault) {
      contain(fault, pointTime(now));
      return false;
    }
  }

  private void contain(Throwable fault, Instant now) {
    faults++;
    if (!failing) {
      LOG.error("{} evaluation failed; the point is BAD until a scan succeeds", tag(), fault);
      failing = true;
    }
    PointSnapshot bad;
    try {
      bad = evaluation.fail(Cause.PROCESSING_ERROR, now);
    } catch (Throwable again) {
      // Not even able to say that it is BAD: begin anew.
      evaluation = factory.begin(settings, now);
      bad = evaluation.fail(Cause.PROCESSING_ERROR, now);
    }
    publish(bad);
  }

  private void publish(PointSnapshot snapshot) {
    publish.accept(snapshot);
    changes.report(snapshot);
  }
}
