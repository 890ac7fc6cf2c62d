package io.strapline.bridge.source.replay;

import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings.Pace;
import io.strapline.bridge.config.SourceSettings.Replay;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.bridge.model.PlantClock;
import io.strapline.bridge.model.SampleSink;
import io.strapline.bridge.model.Source;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.Cause;
import java.io.IOException;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Replays a recorded series from a CSV file to one point.
 *
 * <p>{@link Pace#RECORDED} keeps the spacing of the file on the plant's clock, beginning now.
 * {@link Pace#FASTEST} delivers as fast as possible with the times of the file; the point then
 * lives in the file's time ({@link #tagsInOwnTime()}), and ages, holds and delays run in it too. A
 * gap in the file, an empty cell and a row that cannot be read are all the same: no sample. When
 * the series has ended the point grows old and turns BAD like that of any silent transmitter.
 * Thread-safe.
 */
public final class ReplaySource implements Source {

  private static final Logger LOG = LoggerFactory.getLogger(ReplaySource.class);

  private final PointConfig point;
  private final Replay settings;
  private final PlantClock clock;
  private @Nullable Thread thread;

  private ReplaySource(PointConfig point, Replay settings, PlantClock clock) {
    this.point = point;
    this.settings = settings;
    this.clock = clock;
  }

  /**
   * Opens the file once, to see that it can be replayed.
   *
   * @throws IOException naming the file and what is wrong with it: not there, not readable, no such
   *     column
   * @throws IllegalArgumentException if the time pattern or zone does not exist
   */
  public static ReplaySource open(PointConfig point, Replay settings, PlantClock clock)
      throws IOException {
    SeriesReader.open(settings).close();
    return new ReplaySource(point, settings, clock);
  }

  @Override
  public Set<String> tagsInOwnTime() {
    return settings.pace() == Pace.FASTEST ? Set.of(point.tag()) : Set.of();
  }

  @Override
  public synchronized void start(SampleSink sink) {
    Thread replay = new Thread(() -> replay(sink), "replay " + point.tag());
    replay.setDaemon(true);
    thread = replay;
    replay.start();
  }

  private void replay(SampleSink sink) {
    try (SeriesReader series = SeriesReader.open(settings)) {
      play(series, player(sink));
    } catch (InterruptedException closed) {
      Thread.currentThread().interrupt();
    } catch (IOException | RuntimeException fault) {
      LOG.warn("{} replay of {} broke off", point.tag(), settings.file(), fault);
      sink.fail(point.tag(), Cause.NO_COMMUNICATION, "replay broke off: " + fault.getMessage());
    }
  }

  private void play(SeriesReader series, Player player) throws IOException, InterruptedException {
    LOG.info("{} replay of {} begins", point.tag(), settings.file());
    long samples = 0;
    Optional<SeriesReader.Entry> entry = series.next();
    while (entry.isPresent()) {
      player.play(entry.get());
      samples++;
      entry = series.next();
    }
    player.end();
    LOG.info(
        "{} replay has ended: {} samples, {} rows empty, {} rows left out",
        point.tag(),
        samples,
        series.emptyRows(),
        series.unreadableRows());
  }

  private Player player(SampleSink sink) {
    String tag = point.tag();
    return switch (settings.pace()) {
      case RECORDED ->
          new PlantTimePlayer(clock, (time, value) -> sink.accept(tag, sample(time, value)));
      case FASTEST ->
          new FileTimePlayer(
              point.point(),
              (time, value) -> sink.accept(tag, sample(time, value)),
              time -> sink.elapse(tag, time));
    };
  }

  private Sample sample(Instant time, double value) {
    Signal signal = settings.signal();
    return switch (signal) {
      case DISTANCE -> Sample.distance(time, value);
      case LEVEL -> Sample.level(time, value);
      case CURRENT -> Sample.current(time, value);
      case RAW_COUNT -> Sample.rawCount(time, value);
    };
  }

  @Override
  public synchronized void close() {
    Thread replay = thread;
    if (replay == null) {
      return;
    }
    replay.interrupt();
    try {
      replay.join(TimeUnit.SECONDS.toMillis(2));
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
