package io.strapline.bridge.testing;

import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Assertions;

/** Bounded waits on conditions. Stateless. */
public final class Eventually {

  private static final long LONGEST_NANOS = 60_000_000_000L;

  private Eventually() {}

  /** Waits until the condition holds; fails with the text after 60 seconds. */
  public static void holds(String what, BooleanSupplier condition) {
    long start = System.nanoTime();
    while (!condition.getAsBoolean()) {
      if (System.nanoTime() - start > LONGEST_NANOS) {
        Assertions.fail("not within 60 s: " + what);
      }
      LockSupport.parkNanos(2_000_000);
    }
  }
}
