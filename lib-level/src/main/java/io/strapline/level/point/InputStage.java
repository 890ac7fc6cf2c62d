package io.strapline.level.point;

import io.strapline.level.loop.LoopBand;
import io.strapline.level.loop.LoopMonitor;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.loop.LoopSignal;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.DiagnosticStatus;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import org.jspecify.annotations.Nullable;

/**
 * Turns a sample into a distance along the beam, with what the loop and the device say of it. Holds
 * the loop's confirmation state; one thread at a time.
 */
final class InputStage {

  /** No beam is this long: what lies beyond is a broken number, and would overflow further on. */
  private static final double LONGEST_METRES = 1e6;

  private final PointSettings settings;
  private final LoopMonitor monitor;
  private double lastDistanceMetres;

  InputStage(PointSettings settings) {
    this.settings = settings;
    monitor = LoopMonitor.of(settings.loopLimits());
  }

  /**
   * A sample as a distance.
   *
   * @param distance along the beam; BAD when the sample is no measurement
   * @param current the loop current as measured, if the source gives one
   * @param band its band
   */
  record Input(Reading distance, @Nullable Reading current, @Nullable LoopBand band) {}

  Input accept(Sample sample) {
    if (settings.signal().gates().isInvalidCode(sample.value()) && carriesValue(sample)) {
      return plain(bad(Cause.INVALID_CODE, sample));
    }
    Input input =
        switch (sample.kind()) {
          case DISTANCE -> plain(distance(sample.value(), sample));
          case LEVEL -> plain(distance(settings.mounting().distanceMetres(sample.value()), sample));
          case CURRENT -> loop(sample.value(), sample);
          case RAW_COUNT -> counts(sample);
          case NO_RETURN -> plain(bad(Cause.NO_RETURN, sample));
        };
    Reading marked = mark(input.distance(), sample);
    lastDistanceMetres = marked.value();
    return new Input(marked, input.current(), input.band());
  }

  void reset() {
    monitor.reset();
  }

  private static boolean carriesValue(Sample sample) {
    return sample.kind() != Sample.Kind.NO_RETURN;
  }

  private static Input plain(Reading distance) {
    return new Input(distance, null, null);
  }

  private Input counts(Sample sample) {
    return settings
        .rawCounts()
        .map(counts -> loop(counts.currentMilliamps(sample.value()), sample))
        .orElseGet(() -> plain(bad(Cause.NOT_CONFIGURED, sample)));
  }

  private Input loop(double milliamps, Sample sample) {
    LoopSignal signal = monitor.accept(milliamps, sample.time());
    Reading distance =
        settings
            .range()
            .map(range -> ranged(range, signal, sample))
            .orElseGet(() -> bad(Cause.NOT_CONFIGURED, sample));
    double shown = Double.isFinite(milliamps) ? milliamps : signal.currentMilliamps();
    Reading current = new Reading(shown, signal.quality(), sample.time());
    return new Input(distance, current, signal.band());
  }

  private Reading ranged(LoopRange range, LoopSignal signal, Sample sample) {
    double value = range.valueMetres(signal.currentMilliamps());
    double metres =
        switch (range.measure()) {
          case DISTANCE -> value;
          case LEVEL -> settings.mounting().distanceMetres(value);
        };
    Reading distance = distance(metres, sample);
    return new Reading(
        distance.value(), Quality.worst(signal.quality(), distance.quality()), sample.time());
  }

  private Reading distance(double metres, Sample sample) {
    // The positive form: NaN fails it too.
    return Math.abs(metres) <= LONGEST_METRES
        ? Reading.good(metres, sample.time())
        : bad(Cause.NOT_A_NUMBER, sample);
  }

  private Reading bad(Cause cause, Sample sample) {
    return new Reading(lastDistanceMetres, Quality.bad(cause), sample.time());
  }

  private static Reading mark(Reading distance, Sample sample) {
    Reading reported = distance.derived(distance.value(), ofDevice(sample.deviceStatus()));
    return sample.simulated()
        ? reported.derived(reported.value(), Quality.uncertain(Cause.SIMULATED))
        : reported;
  }

  private static Quality ofDevice(DiagnosticStatus status) {
    return switch (status) {
      case NORMAL, MAINTENANCE_REQUIRED -> Quality.GOOD;
      case FAILURE -> Quality.bad(Cause.DEVICE_FAILURE);
      case FUNCTION_CHECK -> Quality.uncertain(Cause.DEVICE_FUNCTION_CHECK);
      case OUT_OF_SPECIFICATION -> Quality.uncertain(Cause.DEVICE_OUT_OF_SPECIFICATION);
    };
  }
}
