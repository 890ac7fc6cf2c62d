package io.strapline.bridge.cli;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * The wish to stop, told by an interrupt or termination signal. The program then has time to stop
 * in order and ends with code 0; when it takes too long, it ends with code 1. Safe for any thread.
 */
final class StopRequest implements AutoCloseable {

  private static final Duration LONGEST_STOP = Duration.ofSeconds(60);

  private final CountDownLatch asked = new CountDownLatch(1);
  private final CountDownLatch stopped = new CountDownLatch(1);
  private final Thread hook = new Thread(this::onSignal, "stop request");

  private StopRequest() {}

  /** Listens for signals until it is closed. */
  static StopRequest listen() {
    StopRequest request = new StopRequest();
    Runtime.getRuntime().addShutdownHook(request.hook);
    return request;
  }

  private void onSignal() {
    asked.countDown();
    boolean inTime = false;
    try {
      inTime = stopped.await(LONGEST_STOP.toSeconds(), TimeUnit.SECONDS);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
    // A signal would otherwise end the program with 128 and more, as if something had gone wrong.
    Runtime.getRuntime().halt(inTime ? ExitCodes.OK : ExitCodes.FAILED);
  }

  /** Waits at most so long; returns whether a signal has come. */
  boolean await(Duration time) throws InterruptedException {
    return asked.await(Math.max(0, time.toMillis()), TimeUnit.MILLISECONDS);
  }

  /** Says that all has stopped. */
  @Override
  public void close() {
    stopped.countDown();
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException stoppingAlready) {
      // The hook is running and ends the program.
      return;
    }
  }
}
