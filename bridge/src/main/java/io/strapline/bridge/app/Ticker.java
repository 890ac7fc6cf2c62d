package io.strapline.bridge.app;

import io.strapline.bridge.model.PlantClock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Lets time pass for all points every quarter second of plant time, so that ages, holds and delays
 * run by the clock and not by samples. Nothing that a point throws ends it. Safe for any thread.
 */
final class Ticker implements AutoCloseable {

  static final Duration PERIOD = Duration.ofMillis(250);

  private static final Logger LOG = LoggerFactory.getLogger(Ticker.class);

  private final PlantClock clock;
  private final List<Consumer<Instant>> ticked;
  private final Thread thread = new Thread(this::run, "plant ticker");
  private boolean failing;

  Ticker(PlantClock clock, List<Consumer<Instant>> ticked) {
    this.clock = clock;
    this.ticked = List.copyOf(ticked);
    thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  private void run() {
    Instant due = clock.instant();
    try {
      while (!Thread.currentThread().isInterrupted()) {
        // From the time of now: rounds that the machine had no time for are left out.
        due = due.plus(PERIOD);
        clock.awaitUntil(due);
        Instant now = clock.instant();
        ticked.forEach(point -> tick(point, now));
        due = due.isBefore(now.minus(PERIOD)) ? now : due;
      }
    } catch (InterruptedException closed) {
      Thread.currentThread().interrupt();
    }
  }

  private void tick(Consumer<Instant> point, Instant now) {
    try {
      point.accept(now);
    } catch (Throwable fault) {
      if (!failing) {
        LOG.error("a tick failed; the others go on, further failures are not logged", fault);
        failing = true;
      }
    }
  }

  @Override
  public void close() {
    thread.interrupt();
    try {
      thread.join(TimeUnit.SECONDS.toMillis(2));
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
