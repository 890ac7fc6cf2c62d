package io.strapline.level.signal;

import io.strapline.level.internal.Check;
import io.strapline.level.reading.Reading;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The filters of a chain: median, rate limits, average, lag. Stateful, one thread at a time. */
final class Filters {

  private static final double LAG_TO_99_PERCENT = Math.log(100);

  private final SignalSettings settings;
  private final SignalFilter median;
  private final @Nullable RateLimiter rates;
  private final SignalFilter average;
  private final SignalFilter lag;
  private boolean limited;

  Filters(SignalSettings settings, SpeedLimits speeds) {
    this.settings = settings;
    median = Median.of(settings.medianSamples());
    rates =
        settings
            .surface()
            .rates()
            .map(it -> RateLimiter.of(speeds, it.toleranceMetres()))
            .orElse(null);
    average = MovingAverage.of(settings.averageSamples());
    lag = FirstOrderLag.of(settings.lagSeconds());
  }

  /** Returns the limits of a beam that points straight down, no limit if there are none. */
  static SpeedLimits upright(SignalSettings settings) {
    return settings.surface().rates().map(Filters::speeds).orElse(SpeedLimits.NONE);
  }

  private static SpeedLimits speeds(RateSettings rates) {
    return switch (rates.measure()) {
      case SPEED -> SpeedLimits.constant(rates.rise(), rates.fall());
      case FLOW ->
          throw Check.error(
              "RateSettings.measure",
              "FLOW",
              "",
              "needs the area of the vessel to become a speed",
              "give the limits as speeds, or the chain the speed at each distance");
    };
  }

  Reading early(Reading distance, Tracer tracer) {
    Reading early = median.apply(distance);
    if (settings.medianSamples() > 1) {
      tracer.passed(Stage.MEDIAN, early);
    }
    return early;
  }

  Reading smooth(Reading early, Tracer tracer) {
    Reading averaged = average.apply(limit(early, tracer));
    if (settings.averageSamples() > 1) {
      tracer.passed(Stage.AVERAGE, averaged);
    }
    Reading lagged = lag.apply(averaged);
    if (settings.lagSeconds() > 0) {
      tracer.passed(Stage.LAG, lagged);
    }
    return lagged;
  }

  private Reading limit(Reading early, Tracer tracer) {
    if (rates == null) {
      return early;
    }
    Reading output = rates.apply(early);
    limited = !rates.isBack();
    if (limited) {
      tracer.limited(output);
    } else {
      tracer.passed(Stage.RATE_LIMITS, output);
    }
    return output;
  }

  /** Returns whether the last sample was limited in its rate. */
  boolean isLimited() {
    return limited;
  }

  AlarmBranch alarmBranch() {
    return settings.surface().alarmBranch();
  }

  double earlyDelaySeconds(double interval) {
    return median.delaySeconds(interval);
  }

  double delaySeconds(double interval) {
    return earlyDelaySeconds(interval)
        + average.delaySeconds(interval)
        + lag.delaySeconds(interval);
  }

  /**
   * Adds what each filter in use adds to the delay of a ramp and of a step between two distances.
   */
  void addDelays(List<StageDelay> delays, double interval, double fromMetres, double toMetres) {
    if (settings.medianSamples() > 1) {
      double half = median.delaySeconds(interval);
      delays.add(new StageDelay(Stage.MEDIAN, half, half));
    }
    if (rates != null) {
      delays.add(new StageDelay(Stage.RATE_LIMITS, 0, rates.stepSeconds(fromMetres, toMetres)));
    }
    if (settings.averageSamples() > 1) {
      double half = average.delaySeconds(interval);
      delays.add(new StageDelay(Stage.AVERAGE, half, 2 * half));
    }
    if (settings.lagSeconds() > 0) {
      double constant = settings.lagSeconds();
      delays.add(new StageDelay(Stage.LAG, constant, LAG_TO_99_PERCENT * constant));
    }
  }

  void reset() {
    limited = false;
    median.reset();
    if (rates != null) {
      rates.reset();
    }
    average.reset();
    lag.reset();
  }
}
