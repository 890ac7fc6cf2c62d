package io.strapline.bridge.publish.modbus;

import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The one thread that publishes images: soon after an update, many updates in one, and at least
 * once a second for ages and heartbeat.
 */
final class ImageThread implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(ImageThread.class);
  private static final long LONGEST_MILLIS = 1000;
  private static final long GATHER_MILLIS = 20;
  private static final long STOP_MILLIS = 2000;

  private final Runnable publish;
  private final Semaphore updates = new Semaphore(0);
  private final Thread thread = new Thread(this::run, "modbus-image");
  private volatile boolean stopping;
  private boolean failing;

  /**
   * Makes the thread; it does not run yet.
   *
   * @param publish makes and publishes one image
   */
  ImageThread(Runnable publish) {
    this.publish = publish;
    thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  /** Says that there is something new; quick, never blocks. */
  void wake() {
    if (updates.availablePermits() == 0) {
      updates.release();
    }
  }

  private void run() {
    try {
      while (!stopping) {
        guarded();
        boolean updated = updates.tryAcquire(LONGEST_MILLIS, TimeUnit.MILLISECONDS);
        if (updated && !stopping) {
          TimeUnit.MILLISECONDS.sleep(GATHER_MILLIS);
        }
        updates.drainPermits();
      }
    } catch (InterruptedException closed) {
      Thread.currentThread().interrupt();
    }
  }

  private void guarded() {
    try {
      publish.run();
      failing = false;
    } catch (Throwable failure) {
      // The next round may do better; until then the registers turn BAD by themselves.
      if (!failing) {
        LOG.error("the Modbus registers cannot be renewed; trying on", failure);
      }
      failing = true;
    }
  }

  /** Stops the thread. */
  @Override
  public void close() {
    stopping = true;
    thread.interrupt();
    try {
      thread.join(STOP_MILLIS);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
