package io.strapline.bridge.testing;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/**
 * Independent programs that tests talk to. A missing one skips the test, or fails it when the
 * environment variable {@code STRAPLINE_REQUIRE_PEERS} is 1.
 */
public final class Peers {

  private Peers() {}

  /**
   * Skips or fails the calling test unless this command ends with exit code 0 within 30 seconds.
   */
  public static void require(String peer, String... probe) {
    boolean there = succeeds(probe);
    if ("1".equals(System.getenv("STRAPLINE_REQUIRE_PEERS"))) {
      Assertions.assertTrue(there, () -> peer + " is missing: " + String.join(" ", probe));
    }
    Assumptions.assumeTrue(
        there, () -> peer + " is not installed: skipped (see DEVELOPERS.md, Independent peers)");
  }

  private static boolean succeeds(String... command) {
    try {
      Process process =
          new ProcessBuilder(List.of(command))
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      if (!process.waitFor(30, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        return false;
      }
      return process.exitValue() == 0;
    } catch (IOException absent) {
      return false;
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
      return false;
    }
  }
}
