package io.strapline.bridge.testing;

import io.strapline.bridge.model.PlantClock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * A clock that stands still until a test moves it. Threads that wait are woken when their time has
 * come. Safe for any thread.
 */
public final class ManualClock implements PlantClock {

  private static final long LONGEST_REAL_WAIT_MILLIS = 30_000;

  private Instant now;
  private final List<Instant> awaited = new ArrayList<>();

  /** Takes the first time. */
  public ManualClock(Instant start) {
    now = start;
  }

  @Override
  public synchronized Instant instant() {
    return now;
  }

  /** Sets the time, back too. */
  public synchronized void set(Instant time) {
    now = time;
    notifyAll();
  }

  /** Moves the time on. */
  public synchronized void advance(Duration by) {
    set(now.plus(by));
  }

  /** Moves the time on by so many seconds, step by step, letting {@code threads} wait at each. */
  public void advanceInSteps(Duration step, int steps, int threads) throws InterruptedException {
    for (int i = 0; i < steps; i++) {
      awaitWaiting(threads);
      advance(step);
    }
    awaitWaiting(threads);
  }

  /** Waits until so many threads wait for a time that has not come; fails after 30 s. */
  public synchronized void awaitWaiting(int threads) throws InterruptedException {
    long deadline = System.nanoTime() + LONGEST_REAL_WAIT_MILLIS * 1_000_000;
    while (waiting() < threads) {
      long left = (deadline - System.nanoTime()) / 1_000_000;
      if (left <= 0) {
        throw new AssertionError(waiting() + " threads wait on the clock, not " + threads);
      }
      wait(left);
    }
  }

  private long waiting() {
    return awaited.stream().filter(now::isBefore).count();
  }

  @Override
  public synchronized void awaitUntil(Instant time) throws InterruptedException {
    if (!now.isBefore(time)) {
      return;
    }
    awaited.add(time);
    notifyAll();
    try {
      while (now.isBefore(time)) {
        wait();
      }
    } finally {
      awaited.remove(time);
    }
  }
}
