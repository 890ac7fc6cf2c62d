package io.strapline.bridge.model;

import io.strapline.level.point.PointSnapshot;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** A listener whose faults reach nobody else. Safe for any thread. */
final class GuardedListener implements Consumer<PointSnapshot> {

  private static final Logger LOG = LoggerFactory.getLogger(GuardedListener.class);

  private final Consumer<PointSnapshot> listener;
  private final AtomicBoolean failing = new AtomicBoolean();

  GuardedListener(Consumer<PointSnapshot> listener) {
    this.listener = listener;
  }

  @Override
  public void accept(PointSnapshot snapshot) {
    try {
      listener.accept(snapshot);
      if (failing.compareAndSet(true, false)) {
        LOG.info("listener {} takes updates again", name());
      }
    } catch (Throwable fault) {
      if (failing.compareAndSet(false, true)) {
        LOG.error(
            "listener {} failed on an update of {}: what it publishes may be out of date",
            name(),
            snapshot.tag(),
            fault);
      }
    }
  }

  private String name() {
    return listener.getClass().getName();
  }
}
