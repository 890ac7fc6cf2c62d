package io.strapline.bridge.app;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class StoppingTest {

  @Test
  void tellsWhetherAPartStopped() {
    assertTrue(Stopping.within(Duration.ofSeconds(10), "good", () -> {}));
    assertFalse(
        Stopping.within(
            Duration.ofSeconds(10),
            "broken",
            () -> {
              throw new AssertionError("broken on purpose");
            }));
  }

  @Test
  @Timeout(30)
  void leavesAPartBehindThatDoesNotStopInTime() {
    CountDownLatch never = new CountDownLatch(1);
    assertFalse(Stopping.within(Duration.ofMillis(50), "stuck", never::await));
  }
}
