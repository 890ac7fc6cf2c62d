package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import io.strapline.level.internal.Elapsed;
import io.strapline.level.reading.Reading;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * Finds fills and draws: start, end and amount, from the signed flow with hysteresis. Stateful, one
 * thread at a time; {@link #open} is to be saved, {@link #resume} continues from it.
 *
 * <p>A batch starts when the flow reaches the start rate and ends when it has been at or below the
 * stop rate for the quiet time, or when it turns round. The flow lags by up to its window, so start
 * and end are put back to the samples at which the content left its old rest and reached the new
 * one, within one resolution step. The amount is the difference of the contents at rest: the mean
 * over the window before the one in which the flow rose, and the mean over the second half of the
 * quiet time. Where there was no rest (turning round, or a start before the first sample) the
 * content at that sample stands in.
 *
 * <p>A gap longer than the window leaves a batch open; it ends by what is seen afterwards and is
 * then {@link Batch.Trust#PARTLY_SEEN}.
 */
public final class BatchDetector {

  private final FlowSettings flowSettings;
  private final BatchSettings settings;
  private final Content content;
  private final FlowEstimator estimator;
  private final LevelWindow history;
  private Flow flow;
  private @Nullable OpenBatch open;
  private @Nullable Instant quietSince;
  private @Nullable Rest lastRest;

  private record Rest(Instant time, double amount) {}

  private BatchDetector(FlowSettings flowSettings, BatchSettings settings, Content content) {
    this.flowSettings = Check.present("BatchDetector.flow", flowSettings, "give the flow settings");
    this.settings = Check.present("BatchDetector.settings", settings, "give the batch settings");
    this.content = Check.present("BatchDetector.content", content, "give the content");
    this.estimator = FlowEstimator.of(flowSettings, content);
    double window = flowSettings.windowSeconds();
    this.history = new LevelWindow(window + Math.max(window, settings.quietSeconds()));
    this.flow = estimator.at(Instant.EPOCH);
  }

  /** Returns a detector without samples. */
  public static BatchDetector of(
      FlowSettings flowSettings, BatchSettings settings, Content content) {
    return new BatchDetector(flowSettings, settings, content);
  }

  /** Takes the next level, in metres above the datum, and returns the batch that ended with it. */
  public Optional<Batch> add(Reading level) {
    boolean wasBad = flow.rate().quality().isBad();
    flow = estimator.add(level);
    if (flow.rate().quality().isBad() && !wasBad) {
      lose();
    }
    if (level.quality().isBad() || level.quality().cause().isHeld()) {
      return Optional.empty();
    }
    if (!remember(level) || flow.rate().quality().isBad()) {
      return Optional.empty();
    }
    return judge();
  }

  /** Returns the flow after the newest sample, for showing. */
  public Flow flow() {
    return flow;
  }

  /** Returns the batch under way, if any. */
  public Optional<OpenBatch> open() {
    return Optional.ofNullable(open);
  }

  /** Goes on with a saved batch; it is partly seen from now on. */
  public void resume(OpenBatch saved) {
    open = Check.present("BatchDetector.saved", saved, "give a saved batch").seen(PARTLY);
    quietSince = null;
  }

  private static final Batch.Trust PARTLY = Batch.Trust.PARTLY_SEEN;

  // The flow went BAD: a gap longer than the window, or the clock was set.
  private void lose() {
    history.clear();
    lastRest = null;
    quietSince = null;
    if (open != null) {
      open = open.seen(PARTLY);
    }
  }

  private boolean remember(Reading level) {
    if (history.isStale(level.time())) {
      return false;
    }
    history.add(
        new LevelWindow.Entry(
            level.time(), level.value(), content.at(level.value()), level.quality()));
    return true;
  }

  private Optional<Batch> judge() {
    double rate = flow.rate().value();
    if (open == null) {
      if (Math.abs(rate) >= settings.startRate()) {
        open = started(FlowDirection.of(rate));
      }
      return Optional.empty();
    }
    if (!flow.rate().quality().isGood()) {
      open = open.seen(Batch.Trust.UNCERTAIN_INPUT);
    }
    double onward = open.direction().sign() * rate;
    if (onward <= -settings.startRate()) {
      return turned(open);
    }
    return quiet(onward <= settings.stopRate()) ? rested(open) : Optional.empty();
  }

  private boolean quiet(boolean slow) {
    Instant now = history.newest().time();
    if (!slow) {
      quietSince = null;
    } else if (quietSince == null) {
      quietSince = now;
    }
    return quietSince != null
        && Elapsed.reached(quietSince, now, Elapsed.delay(settings.quietSeconds()));
  }

  private OpenBatch started(FlowDirection direction) {
    Instant riseBegin = before(flowSettings.windowSeconds());
    Optional<Rest> rest = rest(riseBegin);
    LevelWindow.Entry first = firstSince(riseBegin);
    Batch.Trust trust =
        flow.rate().quality().isGood() ? Batch.Trust.FULL : Batch.Trust.UNCERTAIN_INPUT;
    if (rest.isEmpty()) {
      return new OpenBatch(direction, first.time(), first.amount(), PARTLY);
    }
    double edge = rest.get().amount() + direction.sign() * step();
    Instant start =
        lastThat(entry -> direction.sign() * (edge - entry.amount()) >= 0, rest.get().time());
    return new OpenBatch(direction, start, rest.get().amount(), trust);
  }

  // The mean content over the window before the rise, or where the last batch ended.
  private Optional<Rest> rest(Instant riseBegin) {
    Instant from = lastRest == null ? Instant.MIN : lastRest.time();
    List<LevelWindow.Entry> still =
        history.entries().stream()
            .filter(entry -> !entry.time().isBefore(from) && !entry.time().isAfter(riseBegin))
            .toList();
    // A single sample at the window's edge is the start of what is known and no rest.
    if (still.size() > 1) {
      double mean = still.stream().mapToDouble(LevelWindow.Entry::amount).average().orElseThrow();
      return Optional.of(new Rest(still.get(still.size() - 1).time(), mean));
    }
    return Optional.ofNullable(lastRest);
  }

  private Optional<Batch> turned(OpenBatch batch) {
    FlowDirection back = FlowDirection.of(-batch.direction().sign());
    LevelWindow.Entry peak = history.newest();
    for (LevelWindow.Entry entry : historySince(batch.start())) {
      if (batch.direction().sign() * (entry.amount() - peak.amount()) > 0) {
        peak = entry;
      }
    }
    quietSince = null;
    open = new OpenBatch(back, peak.time(), peak.amount(), batch.trust());
    return kept(batch.ended(peak.time(), peak.amount()));
  }

  private Optional<Batch> rested(OpenBatch batch) {
    Instant now = history.newest().time();
    double amount =
        meanSince(before(settings.quietSeconds() / 2)).orElse(history.newest().amount());
    double edge = amount - batch.direction().sign() * step();
    Instant end =
        historySince(batch.start()).stream()
            .filter(entry -> batch.direction().sign() * (entry.amount() - edge) >= 0)
            .map(LevelWindow.Entry::time)
            .findFirst()
            .orElse(now);
    open = null;
    quietSince = null;
    lastRest = new Rest(now, amount);
    return kept(batch.ended(end, amount));
  }

  private Optional<Batch> kept(Batch batch) {
    return batch.amount() >= settings.minimumAmount() ? Optional.of(batch) : Optional.empty();
  }

  private Instant before(double seconds) {
    return history.newest().time().minus(Elapsed.delay(seconds));
  }

  private List<LevelWindow.Entry> historySince(Instant time) {
    return history.entries().stream().filter(entry -> !entry.time().isBefore(time)).toList();
  }

  private LevelWindow.Entry firstSince(Instant time) {
    return historySince(time).stream().findFirst().orElse(history.newest());
  }

  private Instant lastThat(Predicate<LevelWindow.Entry> wanted, Instant otherwise) {
    return history.entries().stream()
        .filter(wanted)
        .map(LevelWindow.Entry::time)
        .reduce(otherwise, (a, b) -> b.isAfter(a) ? b : a);
  }

  private OptionalDouble meanSince(Instant time) {
    return historySince(time).stream().mapToDouble(LevelWindow.Entry::amount).average();
  }

  // Amount of one resolution step at the present height.
  private double step() {
    return flow.resolutionLimit() * flowSettings.windowSeconds();
  }
}
