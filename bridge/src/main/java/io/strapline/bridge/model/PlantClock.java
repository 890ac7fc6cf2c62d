package io.strapline.bridge.model;

import java.time.Instant;
import java.time.InstantSource;

/** The one clock of a plant: real time, or simulated time that runs faster. Safe for any thread. */
public interface PlantClock extends InstantSource {

  /** Waits until the plant's time has reached {@code time}; returns at once when it has. */
  void awaitUntil(Instant time) throws InterruptedException;
}
