package io.strapline.bridge.app;

import java.time.Duration;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Closes parts within bounded time, whatever they do. Stateless. */
final class Stopping {

  private static final Logger LOG = LoggerFactory.getLogger(Stopping.class);

  private Stopping() {}

  /**
   * Closes a part on a thread of its own and waits so long; one that is not closed by then is left
   * behind on its daemon thread.
   *
   * @return whether the part closed in time and without a fault
   */
  static boolean within(Duration time, String name, AutoCloseable part) {
    boolean[] fine = new boolean[1];
    Thread closing = new Thread(() -> fine[0] = close(name, part), "stopping " + name);
    closing.setDaemon(true);
    closing.start();
    try {
      closing.join(time.toMillis());
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
    if (closing.isAlive()) {
      LOG.warn("{} did not stop within {} s and is left behind", name, time.toSeconds());
      return false;
    }
    return fine[0];
  }

  private static boolean close(String name, AutoCloseable part) {
    try {
      part.close();
      return true;
    } catch (Throwable fault) {
      LOG.warn("{} failed while stopping", name, fault);
      return false;
    }
  }
}
