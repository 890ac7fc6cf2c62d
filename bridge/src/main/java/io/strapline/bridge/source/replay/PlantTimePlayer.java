package io.strapline.bridge.source.replay;

import io.strapline.bridge.model.PlantClock;
import java.time.Duration;
import java.time.Instant;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;

/**
 * Plays with the spacing of the file on the plant's clock, shifted so that the first entry comes
 * now. An entry whose time lies before that of the one before it comes at once, with its shifted
 * time. Not thread-safe.
 */
final class PlantTimePlayer implements Player {

  private final PlantClock clock;
  private final BiConsumer<Instant, Double> deliver;
  private @Nullable Duration shift;

  PlantTimePlayer(PlantClock clock, BiConsumer<Instant, Double> deliver) {
    this.clock = clock;
    this.deliver = deliver;
  }

  @Override
  public void play(SeriesReader.Entry entry) throws InterruptedException {
    if (shift == null) {
      shift = Duration.between(entry.time(), clock.instant());
    }
    Instant due = entry.time().plus(shift);
    clock.awaitUntil(due);
    deliver.accept(due, entry.value());
  }

  @Override
  public void end() {
    // The plant's clock runs on and judges the silence.
  }
}
