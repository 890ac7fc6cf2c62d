package io.strapline.bridge.app;

import io.strapline.level.point.PointSnapshot;
import io.strapline.level.reading.Cause;
import java.lang.management.ManagementFactory;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Logs once how long after the start of the program the first sample was published. */
final class FirstValue implements Consumer<PointSnapshot> {

  private static final Logger LOG = LoggerFactory.getLogger(FirstValue.class);

  private final AtomicBoolean logged = new AtomicBoolean();

  @Override
  public void accept(PointSnapshot snapshot) {
    boolean waiting = snapshot.level().quality().cause() == Cause.WAITING_FOR_FIRST_SAMPLE;
    if (!waiting && snapshot.sequence() > 0 && logged.compareAndSet(false, true)) {
      long started = ManagementFactory.getRuntimeMXBean().getStartTime();
      LOG.info("first values published after {} ms", System.currentTimeMillis() - started);
    }
  }
}
