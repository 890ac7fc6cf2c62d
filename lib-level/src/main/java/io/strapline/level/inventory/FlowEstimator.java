package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Flow into and out of a vessel, from its level over a window of time and never from sample to
 * sample. Stateful, one thread at a time; {@link #reset} forgets all samples.
 *
 * <p><b>Slope.</b> Each usable level becomes an amount by the {@link Content}; the flow is the
 * slope of the straight line that fits the polyline through the amounts best over the whole window,
 * by least squares over time and not over samples: {@code Q = 12 / W^3 x integral from -W/2 to W/2
 * of u y(u) du} (derived here). Weighting by time makes uneven sampling harmless: a burst of
 * samples counts no more than the time it takes. Of a ramp the slope is exact. The result stands
 * for the middle of the window, so a change of flow is seen W/2 late and is complete after W.
 *
 * <p><b>Why not end to end.</b> The difference of the two ends has the noise {@code sqrt(2) sigma /
 * W} however many samples there are; the fitted line has {@code sqrt(12 / n) sigma / W} for n
 * samples, which is less from seven samples on.
 *
 * <p><b>Resolution.</b> A level that moves between two neighbouring steps q gives a slope of at
 * most {@code 1.5 q / W}, since the integral of |u| over the window is W^2/4 (derived here). The
 * limit {@code q / W} and the dead zone are turned into flow with the amount of one step at the
 * present height, so both follow the cross-section.
 *
 * <p><b>Status.</b> BAD samples and held ones (see {@link Cause#isHeld}) are left out; while they
 * last the flow is held and UNCERTAIN. A usable UNCERTAIN sample makes the flow UNCERTAIN while it
 * is in the window. Until the samples cover the window, and after a gap longer than it, the flow is
 * BAD, {@link Cause#WAITING_FOR_FIRST_SAMPLE}. A sample that is not later than the newest is
 * ignored, unless it is older by more than the window: then the clock was set, and the window
 * starts anew.
 */
public final class FlowEstimator {

  // Keeps a slope that rounding lifts over the dead zone inside it.
  private static final double SLACK = 1 + 1e-9;

  private final FlowSettings settings;
  private final Content content;
  private final LevelWindow window;
  private @Nullable Flow last;

  private FlowEstimator(FlowSettings settings, Content content) {
    this.settings = Check.present("FlowEstimator.settings", settings, "give the settings");
    this.content = Check.present("FlowEstimator.content", content, "give the content");
    this.window = new LevelWindow(settings.windowSeconds());
  }

  /** Returns an estimator without samples; the flow has the content's unit per second. */
  public static FlowEstimator of(FlowSettings settings, Content content) {
    return new FlowEstimator(settings, content);
  }

  /** Takes the next level, in metres above the datum, and returns the flow. */
  public Flow add(Reading level) {
    Check.present("FlowEstimator.level", level, "give the level's reading");
    if (level.quality().isBad() || level.quality().cause().isHeld()) {
      return held(level.time());
    }
    if (window.isFar(level.time())) {
      reset();
    }
    if (!window.isStale(level.time())) {
      window.add(entry(level));
      last = window.isCovered() ? measured() : null;
    }
    return last == null ? waiting(level.time()) : last;
  }

  /**
   * Returns the flow at a time, for scans between samples: the last one, until the newest sample is
   * older than the window.
   */
  public Flow at(Instant now) {
    Check.present("FlowEstimator.now", now, "give the time");
    if (window.isFar(now)) {
      reset();
    }
    return last == null ? waiting(now) : last;
  }

  /** Forgets all samples. */
  public void reset() {
    window.clear();
    last = null;
  }

  private Flow held(Instant time) {
    Flow flow = at(time);
    Quality held = Quality.uncertain(Cause.SOURCE_SILENT_HELD);
    Reading rate = flow.rate().derived(flow.rate().value(), held);
    return new Flow(rate, flow.resolutionLimit(), flow.deadZone(), flow.unsuppressed());
  }

  private LevelWindow.Entry entry(Reading level) {
    return new LevelWindow.Entry(
        level.time(), level.value(), content.at(level.value()), level.quality());
  }

  private Flow measured() {
    LevelWindow.Entry newest = window.newest();
    double slope = window.slope();
    double step = step(newest.heightMetres());
    double limit = step / settings.windowSeconds();
    double deadZone = step * settings.deadZoneMetresPerSecond() / settings.resolutionMetres();
    double rate = Math.abs(slope) > deadZone * SLACK ? slope : 0;
    return new Flow(new Reading(rate, window.quality(), newest.time()), limit, deadZone, slope);
  }

  // The larger neighbour, since the present height may be either of the two steps it moves between.
  private double step(double height) {
    double here = content.at(height);
    double above = content.at(height + settings.resolutionMetres()) - here;
    double below = here - content.at(height - settings.resolutionMetres());
    return Math.max(above, below);
  }

  private static Flow waiting(Instant time) {
    Quality quality = Quality.bad(Cause.WAITING_FOR_FIRST_SAMPLE);
    return new Flow(new Reading(0, quality, time), 0, 0, 0);
  }
}
