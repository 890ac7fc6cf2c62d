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
 * content at that sample stands in. A flow that creeps up to the start rate is followed back by two
 * windows to where it was zero; what crept in before that counts as rest.
 *
 * <p>A gap longer than the window leaves a batch open; it ends by what is seen afterwards and is
 * then {@link Batch.Trust#PARTLY_SEEN}.
 */
public final class BatchDetector {

  // Windows by which a flow may creep up from nothing to the start rate and still be put back.
  private static final int LOOK_BACK = 2;
  private static final Batch.Trust PARTLY = Batch.Trust.PARTLY_SEEN;

  private final FlowSettings flowSettings;
  private final BatchSettings settings;
  private final Content content;
  private final FlowEstimator estimator;
  private final LevelWindow history;
  private Flow flow;
  private @Nullable OpenBatch open;
  private @Nullable Instant quietSince;
  private @Nullable Rest lastRest;
  private @Nullable Instant lastStill;

  private record Rest(Instant time, double amount) {}

  private BatchDetector(FlowSettings flowSettings, BatchSettings settings, Content content) {
    this.flowSettings = Check.present("BatchDetector.flow", flowSettings, "give the flow settings");
    this.settings = Check.present("BatchDetector.settings", settings, "give the batch settings");
    this.content = Check.present("BatchDetector.content", content, "give the content");
    this.estimator = FlowEstimator.of(flowSettings, content);
    double window = flowSettings.windowSeconds();
    this.history =
        new LevelWindow(Math.max((LOOK_BACK + 2) * window, window + settings.quietSeconds()));
    this.flow = estimator.at(Instant.EPOCH);
  }

  /** Returns a detector without samples. */
  public static BatchDetector of(
      FlowSettings flowSettings, BatchSettings settings, Content content) {
    return new BatchDetector(flowSettings, settings, content);
  }

  /** Takes the next level, in metres above the datum, and returns the batch that ended with it. */
  public Optional<Batch> add(Reading level) {
    flow = estimator.add(level);
    boolean usable = !level.quality().isBad() && !level.quality().cause().isHeld();
    boolean taken = usable && remember(level);
    return taken && !flow.rate().quality().isBad() ? judge() : Optional.empty();
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

  // The estimator starts anew in the same cases: a gap longer than its window, or a clock set back.
  private void lose() {
    history.clear();
    lastRest = null;
    lastStill = null;
    quietSince = null;
    if (open != null) {
      open = open.seen(PARTLY);
    }
  }

  private boolean remember(Reading level) {
    if (history.isFar(level.time(), Elapsed.delay(flowSettings.windowSeconds()))) {
      lose();
    }
    if (history.isStale(level.time())) {
      return false;
    }
    history.add(
        new LevelWindow.Entry(
            level.time(), level.value(), content.at(level.value()), level.quality()));
    return true;
  }

  private Optional<Batch> judge() {
    if (open == null) {
      await(flow.rate().value());
      return Optional.empty();
    }
    return follow(open, flow.rate().value());
  }

  private void await(double rate) {
    if (rate == 0) {
      lastStill = history.newest().time();
    } else if (Math.abs(rate) >= settings.startRate()) {
      open = started(FlowDirection.of(rate));
      lastStill = null;
    }
  }

  private Optional<Batch> follow(OpenBatch seen, double rate) {
    OpenBatch batch =
        flow.rate().quality().isGood() ? seen : seen.seen(Batch.Trust.UNCERTAIN_INPUT);
    open = batch;
    double onward = batch.direction().sign() * rate;
    if (onward <= -settings.startRate()) {
      return turned(batch);
    }
    return quiet(onward <= settings.stopRate()) ? rested(batch) : Optional.empty();
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
    Instant riseBegin = riseBegin();
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

  // The flow was last nothing over the window that ended then, so the rise began within it.
  private Instant riseBegin() {
    double window = flowSettings.windowSeconds();
    if (lastStill == null || lastStill.isBefore(before(LOOK_BACK * window))) {
      return before(window);
    }
    return lastStill.minus(Elapsed.delay(window));
  }

  // The mean content over the window before the rise, or where the last batch ended.
  private Optional<Rest> rest(Instant riseBegin) {
    Instant from = lastRest == null ? Instant.MIN : lastRest.time();
    Instant earliest = riseBegin.minus(Elapsed.delay(flowSettings.windowSeconds()));
    List<LevelWindow.Entry> still =
        historySince(from.isAfter(earliest) ? from : earliest).stream()
            .filter(entry -> !entry.time().isAfter(riseBegin))
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
