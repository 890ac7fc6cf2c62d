package io.strapline.bridge.app;

import io.strapline.bridge.model.RealClock;
import java.time.Duration;
import java.time.Instant;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Logs when the wall clock was set while the plant runs. One thread at a time. */
final class WallClockWatch implements Consumer<Instant> {

  private static final Logger LOG = LoggerFactory.getLogger(WallClockWatch.class);
  private static final Duration WORTH_A_LINE = Duration.ofSeconds(2);

  private final RealClock clock;
  private Duration reported = Duration.ZERO;

  WallClockWatch(RealClock clock) {
    this.clock = clock;
  }

  @Override
  public void accept(Instant now) {
    Duration ahead = clock.wallAhead();
    if (ahead.minus(reported).abs().compareTo(WORTH_A_LINE) > 0) {
      LOG.warn(
          "the machine's clock was set: it is now {} s ahead of the time base of this run, by which"
              + " source times go on; restart to take up the new time",
          ahead.toSeconds());
      reported = ahead;
    }
  }
}
