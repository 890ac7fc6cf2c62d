package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.config.ModbusSettings.BadValue;
import io.strapline.bridge.model.PlantClock;
import io.strapline.bridge.model.SnapshotStore;
import io.strapline.bridge.model.SnapshotStore.PlantView;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * Keeps the image that requests are answered from. One thread publishes; any thread reads. When the
 * publishing thread has not come by for 5 s, reading builds an image itself in which every point is
 * BAD and the ages run on, so that a stalled bridge can never look alive.
 */
final class ImageKeeper implements Supplier<RegisterImage> {

  /** After so long without a new image the server counts as stalled; common practice, no source. */
  static final long STALLED_NANOS = TimeUnit.SECONDS.toNanos(5);

  private static final long RENEW_STALLED_NANOS = TimeUnit.MILLISECONDS.toNanos(100);

  private final RegisterMap map;
  private final SnapshotStore store;
  private final PlantClock clock;
  private final BadValue badValue;
  private final LongSupplier nanos;
  private final Freshness freshness;
  private final AtomicInteger generation = new AtomicInteger();
  private final long startNanos;
  private volatile Dated current;
  private volatile Dated stalled;

  private record Dated(RegisterImage image, int heartbeat, long nanos) {}

  /**
   * Makes the first image.
   *
   * @param map what lies where
   * @param store the plant
   * @param clock the plant's time
   * @param badValue what value registers hold while the value is BAD
   * @param nanos a timer that never goes back
   */
  ImageKeeper(
      RegisterMap map,
      SnapshotStore store,
      PlantClock clock,
      BadValue badValue,
      LongSupplier nanos) {
    this.map = map;
    this.store = store;
    this.clock = clock;
    this.badValue = badValue;
    this.nanos = nanos;
    freshness = new Freshness(nanos);
    startNanos = nanos.getAsLong();
    current = build(false, 0);
    stalled = current;
  }

  /** Puts a new image of the plant in place; never an older one over a newer one. */
  synchronized void publish() {
    long seconds = TimeUnit.NANOSECONDS.toSeconds(nanos.getAsLong() - startNanos);
    current = build(false, (int) (seconds & 0xFFFF));
  }

  /** Returns the image of now; asked once for each request. */
  @Override
  public RegisterImage get() {
    Dated latest = current;
    return nanos.getAsLong() - latest.nanos() > STALLED_NANOS
        ? stalledImage(latest)
        : latest.image();
  }

  // The heartbeat stays where it was: that is what clients watch.
  private RegisterImage stalledImage(Dated latest) {
    Dated made = stalled;
    boolean old = nanos.getAsLong() - made.nanos() > RENEW_STALLED_NANOS;
    if (old || made.nanos() - latest.nanos() < STALLED_NANOS) {
      made = build(true, latest.heartbeat());
      stalled = made;
    }
    return made.image();
  }

  private Dated build(boolean isStalled, int heartbeat) {
    PlantView view = store.view();
    freshness.look(view);
    int number = generation.incrementAndGet() & 0xFFFF;
    Moment moment = new Moment(clock.instant(), number, heartbeat, isStalled, badValue);
    RegisterImage image = map.image(view, moment, freshness::unseenSeconds);
    return new Dated(image, heartbeat, nanos.getAsLong());
  }
}
