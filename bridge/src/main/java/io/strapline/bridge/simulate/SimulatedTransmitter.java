package io.strapline.bridge.simulate;

import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings.Event.Fault;
import io.strapline.bridge.config.SourceSettings.ShowsAs;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.bridge.config.SourceSettings.Simulated;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.loop.RawCounts;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.DiagnosticStatus;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Random;

/**
 * What a transmitter would send, sample by sample: a level that is filled and drawn, seen with
 * noise and now and then with a fault. Same configuration, same seed and same times give the same
 * samples. Stateful (the noise), one thread at a time; no thread and no clock of its own.
 *
 * <p>A current saturates at 3.8 and 20.5 mA, as a transmitter's does after NAMUR NE 43 (open PLC
 * engineering course, module 14, section 3.1), and goes to 3.5 or 21.5 mA (or further, where the
 * point's limits ask for it) to tell a failure. A transmitter that has nothing but its loop current
 * tells a missing return by the high fault current; a digital one says that it saw no surface. A
 * surface inside the dead zone gives no return.
 */
final class SimulatedTransmitter {

  private static final double SATURATED_LOW = 3.8;
  private static final double SATURATED_HIGH = 20.5;
  private static final double FAULT_LOW = 3.5;
  private static final double FAULT_HIGH = 21.5;

  private final PointSettings point;
  private final Simulated settings;
  private final Instant start;
  private final FillAndDraw process;
  private final FaultTimeline faults;
  private final Random noise;

  /**
   * Takes the point, its simulated source and when the run starts.
   *
   * @throws IllegalArgumentException if a current is asked for without a range, or a raw count
   *     without its scale, or the process does not move
   */
  SimulatedTransmitter(PointConfig config, Simulated settings, Instant start) {
    point = config.point();
    this.settings = settings;
    this.start = start;
    process = new FillAndDraw(settings.process(), point.vessel());
    faults = new FaultTimeline(settings.events());
    // The tag is mixed in, so that points with one seed do not tremble in step.
    noise = new Random(settings.seed() * 31 + config.tag().hashCode());
    checkScales();
  }

  private void checkScales() {
    if (isLoop() && point.range().isEmpty()) {
      throw missing("range", "give what 4 and 20 mA mean");
    }
    if (settings.signal() == Signal.RAW_COUNT && point.rawCounts().isEmpty()) {
      throw missing("raw_counts", "give the counts at 4 and 20 mA");
    }
  }

  private IllegalArgumentException missing(String field, String fix) {
    return new IllegalArgumentException(
        point.tag()
            + "."
            + field
            + " is missing for a simulated "
            + settings.signal()
            + ": "
            + fix);
  }

  /** Returns the tag of the point. */
  String tag() {
    return point.tag();
  }

  /** Returns what the transmitter sends at this time; nothing while it is silent. */
  Optional<Sample> next(Instant time) {
    double elapsed = Duration.between(start, time).toNanos() / 1e9;
    // Drawn for every sample, a lost one too, so that a fault does not change the noise after it.
    double error = settings.noiseMetres() * noise.nextGaussian();
    double distance = point.mounting().distanceMetres(process.levelMetres(elapsed)) + error;
    Optional<Fault> fault = faults.faultAt(elapsed);
    if (fault.isPresent() && fault.get() == Fault.SILENT) {
      return Optional.empty();
    }
    return Optional.of(marked(sample(time, distance, fault)));
  }

  private Sample sample(Instant time, double distance, Optional<Fault> fault) {
    boolean seen = distance >= point.signal().gates().deadZoneMetres();
    if (isLoop()) {
      double current = fault.map(this::faultCurrent).orElse(seen ? current(distance) : faultHigh());
      return loopSample(time, current);
    }
    if (fault.isPresent() && fault.get() != Fault.NO_RETURN) {
      return plainSample(time, distance).withDeviceStatus(DiagnosticStatus.FAILURE);
    }
    return seen && fault.isEmpty() ? plainSample(time, distance) : Sample.noReturn(time);
  }

  private Sample plainSample(Instant time, double distance) {
    return settings.signal() == Signal.LEVEL
        ? Sample.level(time, point.mounting().levelMetres(distance))
        : Sample.distance(time, distance);
  }

  private Sample loopSample(Instant time, double current) {
    return settings.signal() == Signal.CURRENT
        ? Sample.current(time, current)
        : Sample.rawCount(time, count(point.rawCounts().orElseThrow(), current));
  }

  private boolean isLoop() {
    return settings.signal() == Signal.CURRENT || settings.signal() == Signal.RAW_COUNT;
  }

  private double current(double distance) {
    LoopRange range = point.range().orElseThrow();
    boolean ofLevel = range.measure() == LoopRange.Measure.LEVEL;
    double value = ofLevel ? point.mounting().levelMetres(distance) : distance;
    return Math.max(SATURATED_LOW, Math.min(SATURATED_HIGH, range.currentMilliamps(value)));
  }

  private double faultCurrent(Fault fault) {
    return fault == Fault.FAULT_CURRENT_LOW ? faultLow() : faultHigh();
  }

  private double faultLow() {
    return Math.min(FAULT_LOW, point.loopLimits().failureLow());
  }

  private double faultHigh() {
    return Math.max(FAULT_HIGH, point.loopLimits().failureHigh());
  }

  private static double count(RawCounts scale, double current) {
    double count = scale.countAt4() + (current - 4) / 16 * (scale.countAt20() - scale.countAt4());
    return scale.encoding() == RawCounts.Encoding.NUMBER ? count : Math.rint(count);
  }

  private Sample marked(Sample sample) {
    return settings.showsAs() == ShowsAs.LIVE ? sample : sample.asSimulated();
  }
}
