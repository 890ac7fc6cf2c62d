package io.strapline.bridge.publish.modbus;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The log of who wrote what and what came of it. Every command that was executed has its line; of
 * refused ones at most one a second, so that nobody can flood the log. Safe for any thread.
 */
final class WriteLog {

  private static final Logger LOG = LoggerFactory.getLogger(WriteLog.class);
  private static final long PAUSE_NANOS = TimeUnit.SECONDS.toNanos(1);

  private long lastRefused = System.nanoTime() - PAUSE_NANOS;
  private long unlogged;

  void executed(Write write, Peer peer, List<String> results) {
    LOG.info(
        "Modbus write by {}, {}: {}",
        peer.name(),
        write,
        results.isEmpty() ? "nothing ordered" : String.join("; ", results));
  }

  synchronized void refused(Write write, Peer peer, ExceptionCode code) {
    long now = System.nanoTime();
    if (now - lastRefused < PAUSE_NANOS) {
      unlogged++;
      return;
    }
    lastRefused = now;
    LOG.warn(
        "Modbus write by {}, {}: refused, {}; nothing was executed{}",
        peer.name(),
        write,
        code,
        unlogged == 0 ? "" : " (" + unlogged + " more refused since the last such line)");
    unlogged = 0;
  }
}
