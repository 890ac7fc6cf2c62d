package io.strapline.bridge.publish.opcua.server;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The threads of one server: a bounded number of them with a bounded queue. The library's own are
 * unbounded. When the queue is full, the network thread works itself, which slows the clients down
 * instead of filling the memory. Safe for any thread.
 */
public final class ServerThreads implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(ServerThreads.class);
  private static final int WORKERS = 8;
  private static final int QUEUE = 10_000;

  private final ThreadPoolExecutor workers;
  private final ScheduledThreadPoolExecutor timer;

  /** Starts no thread before there is work. */
  public ServerThreads() {
    workers =
        new ThreadPoolExecutor(
            WORKERS,
            WORKERS,
            30,
            TimeUnit.SECONDS,
            new LinkedBlockingQueue<>(QUEUE),
            named("opcua-worker-"),
            new ThreadPoolExecutor.CallerRunsPolicy());
    workers.allowCoreThreadTimeOut(true);
    timer = new ScheduledThreadPoolExecutor(1, named("opcua-timer-"));
    timer.setRemoveOnCancelPolicy(true);
  }

  private static ThreadFactory named(String prefix) {
    AtomicInteger count = new AtomicInteger();
    return work -> {
      Thread thread = new Thread(work, prefix + count.incrementAndGet());
      thread.setDaemon(true);
      return thread;
    };
  }

  /** Returns the threads that serve requests. */
  public ExecutorService workers() {
    return workers;
  }

  /** Returns the one thread that keeps time. */
  public ScheduledExecutorService timer() {
    return timer;
  }

  /** Runs work again and again; a throw is logged and does not end it. */
  public void every(long millis, Runnable work) {
    Runnable guarded =
        () -> {
          try {
            work.run();
          } catch (RuntimeException unexpected) {
            // A throw would end the schedule, and clients would see values stand still.
            LOG.error("OPC UA: a periodic task failed and will be tried again", unexpected);
          }
        };
    ScheduledFuture<?> unused =
        timer.scheduleAtFixedRate(guarded, 0, millis, TimeUnit.MILLISECONDS);
  }

  /** Ends all threads, waiting a second for what runs. */
  @Override
  public void close() {
    timer.shutdownNow();
    workers.shutdown();
    try {
      if (!workers.awaitTermination(1, TimeUnit.SECONDS)) {
        workers.shutdownNow();
      }
    } catch (InterruptedException interrupted) {
      workers.shutdownNow();
      Thread.currentThread().interrupt();
    }
  }
}
