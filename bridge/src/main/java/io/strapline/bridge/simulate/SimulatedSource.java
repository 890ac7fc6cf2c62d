package io.strapline.bridge.simulate;

import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings.ShowsAs;
import io.strapline.bridge.config.SourceSettings.Simulated;
import io.strapline.bridge.model.PlantClock;
import io.strapline.bridge.model.SampleSink;
import io.strapline.bridge.model.Source;
import io.strapline.level.reading.Cause;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.PriorityQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * All simulated transmitters of a plant, paced by one thread on the plant's clock. Sample times lie
 * on a grid of the point's interval; when the machine cannot keep up, times that have passed by
 * more than {@link #LATEST_SECONDS} are left out. Thread-safe.
 */
public final class SimulatedSource implements Source {

  /** Plant seconds (or one interval, if longer) by which a sample may be late. */
  private static final double LATEST_SECONDS = 5;

  private static final Logger LOG = LoggerFactory.getLogger(SimulatedSource.class);

  private final List<PointConfig> points;
  private final PlantClock clock;
  private final PriorityQueue<Turn> turns =
      new PriorityQueue<>(Comparator.comparing((Turn turn) -> turn.due));
  private final List<String> live;
  private @Nullable Thread pacing;

  /**
   * Makes the transmitters.
   *
   * @param points those whose source is {@link Simulated}; others are left out
   * @throws IllegalArgumentException naming the point whose simulation contradicts itself
   */
  public SimulatedSource(List<PointConfig> points, PlantClock clock) {
    this.points = List.copyOf(points);
    this.clock = clock;
    live = points.stream().filter(SimulatedSource::isLive).map(PointConfig::tag).toList();
    // Made here to see that they can be made; they are made anew when their time starts to count.
    fillTurns();
  }

  private void fillTurns() {
    Instant start = clock.instant();
    turns.clear();
    for (PointConfig point : points) {
      if (point.source() instanceof Simulated simulated) {
        turns.add(new Turn(point, simulated, start));
      }
    }
  }

  private static boolean isLive(PointConfig point) {
    return point.source() instanceof Simulated simulated && simulated.showsAs() == ShowsAs.LIVE;
  }

  private static final class Turn {
    private final SimulatedTransmitter transmitter;
    private final Duration interval;
    private final Duration latest;
    private Instant due;

    private Turn(PointConfig point, Simulated settings, Instant start) {
      transmitter = new SimulatedTransmitter(point, settings, start);
      interval = seconds(settings.intervalSeconds());
      latest = seconds(Math.max(LATEST_SECONDS, settings.intervalSeconds()));
      due = start;
    }

    private static Duration seconds(double seconds) {
      if (!(Double.isFinite(seconds) && seconds >= 1e-6)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "Simulated.interval = %s s: must be at least 0.000001; enter the time between"
                    + " samples",
                seconds));
      }
      return Duration.ofNanos((long) (seconds * 1e9));
    }

    private Turn after(Instant now) {
      due = due.plus(interval);
      long missed = Duration.between(due, now).minus(latest).dividedBy(interval);
      if (missed > 0) {
        due = due.plus(interval.multipliedBy(missed));
      }
      return this;
    }
  }

  @Override
  public synchronized void start(SampleSink sink) {
    if (!live.isEmpty()) {
      LOG.warn(
          "simulated points show as live, for demonstrations and tests only: {}",
          String.join(", ", live));
    }
    fillTurns();
    Thread thread = new Thread(() -> pace(sink), "simulated transmitters");
    thread.setDaemon(true);
    pacing = thread;
    thread.start();
  }

  private void pace(SampleSink sink) {
    try {
      while (!turns.isEmpty() && !Thread.currentThread().isInterrupted()) {
        Turn turn = turns.remove();
        clock.awaitUntil(turn.due);
        deliver(turn, sink);
        turns.add(turn.after(clock.instant()));
      }
    } catch (InterruptedException closed) {
      Thread.currentThread().interrupt();
    }
  }

  private void deliver(Turn turn, SampleSink sink) {
    String tag = turn.transmitter.tag();
    try {
      turn.transmitter.next(turn.due).ifPresent(sample -> sink.accept(tag, sample));
    } catch (RuntimeException fault) {
      sink.fail(tag, Cause.PROCESSING_ERROR, "simulation failed: " + fault);
    }
  }

  @Override
  public synchronized void close() {
    Thread thread = pacing;
    if (thread == null) {
      return;
    }
    thread.interrupt();
    try {
      thread.join(TimeUnit.SECONDS.toMillis(2));
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
