package io.strapline.level.signal;

import io.strapline.level.internal.Elapsed;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.signal.ObstructionSettings.Doubt;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Tells a change of the surface from something in front of it. Stateful, one thread at a time.
 *
 * <p>A reading is compared with the last believed one. It is believed
 *
 * <ul>
 *   <li>at once, when it is nearer or farther by no more than the stated distance;
 *   <li>else when it is the M-th of the last N readings that agree within the band; readings older
 *       than the accepting time are no evidence any more;
 *   <li>else when the run of doubted readings has lasted for the accepting time: then it is marked
 *       {@link Cause#JUMP_UNCONFIRMED}, since nothing agrees with it. So no jump is thrown away for
 *       ever, and no value is held for longer.
 * </ul>
 *
 * <p>Until then it is rejected. Any believed reading ends the run. The first reading of all is
 * believed. A reading whose time equals the one before it is no new evidence; one whose time lies
 * before it shows that the clock was set back, and the evidence is collected anew.
 */
public final class ObstructionGate {

  private static final Quality UNCONFIRMED = Quality.uncertain(Cause.JUMP_UNCONFIRMED);

  private final ObstructionSettings settings;
  private final Duration acceptAfter;
  private final double[] values;
  private final Instant[] times;
  private int count;
  private int newest = -1;
  private double believed;
  private boolean seeded;
  private boolean jumped;
  private @Nullable Instant doubtedSince;
  private @Nullable Reading doubted;

  private ObstructionGate(ObstructionSettings settings) {
    this.settings = settings;
    acceptAfter = Elapsed.delay(settings.acceptAfterSeconds());
    int most = Math.max(settings.near().of(), settings.far().of());
    values = new double[most];
    times = new Instant[most];
  }

  /** Returns a gate that has seen nothing yet. */
  public static ObstructionGate of(ObstructionSettings settings) {
    return new ObstructionGate(settings);
  }

  /**
   * Takes the next measurement, GOOD or UNCERTAIN, and returns it if it is believed, marked {@link
   * Cause#JUMP_UNCONFIRMED} if only its time has made it so; null if it is rejected.
   */
  @Nullable Reading apply(Reading reading) {
    remember(reading);
    jumped = false;
    if (!seeded) {
      return believe(reading);
    }
    Doubt doubt = reading.value() < believed ? settings.near() : settings.far();
    boolean sudden = Math.abs(reading.value() - believed) > doubt.beyondMetres();
    jumped = sudden;
    if (!sudden || agreeing(reading, doubt.of()) >= doubt.agreeing()) {
      return believe(reading);
    }
    if (doubtedSince == null || reading.time().isBefore(doubtedSince)) {
      doubtedSince = reading.time();
    }
    doubted = reading;
    return isOver(doubtedSince, reading.time()) ? takeOver(reading) : null;
  }

  /**
   * Returns the last rejected reading, marked, when its run has lasted for the accepting time by
   * the clock; its time is the one at which the run was over. Null otherwise.
   */
  @Nullable Reading tick(Instant time) {
    Reading last = doubted;
    Instant since = doubtedSince;
    if (last == null || since == null || !isOver(since, time)) {
      return null;
    }
    return takeOver(new Reading(last.value(), last.quality(), since.plus(acceptAfter)));
  }

  /** Returns whether the last reading was a sudden change, believed or not. */
  boolean jumped() {
    return jumped;
  }

  /** Tells that the beam was lost: the clock alone takes the rejected reading over no more. */
  void lost() {
    doubted = null;
  }

  private boolean isOver(Instant since, Instant time) {
    return Elapsed.reached(since, time, acceptAfter);
  }

  private Reading takeOver(Reading reading) {
    return believe(reading.derived(reading.value(), UNCONFIRMED));
  }

  private Reading believe(Reading reading) {
    believed = reading.value();
    seeded = true;
    doubtedSince = null;
    doubted = null;
    return reading;
  }

  private void remember(Reading reading) {
    if (count > 0) {
      int order = reading.time().compareTo(times[newest]);
      if (order == 0) {
        return;
      }
      count = order < 0 ? 0 : count;
    }
    newest = (newest + 1) % values.length;
    values[newest] = reading.value();
    times[newest] = reading.time();
    count = Math.min(count + 1, values.length);
  }

  private int agreeing(Reading reading, int of) {
    int agreeing = 0;
    for (int back = 0; back < Math.min(of, count); back++) {
      int at = Math.floorMod(newest - back, values.length);
      boolean fresh = Duration.between(times[at], reading.time()).compareTo(acceptAfter) <= 0;
      boolean agrees = Math.abs(values[at] - reading.value()) <= settings.bandMetres();
      agreeing += fresh && agrees ? 1 : 0;
    }
    return agreeing;
  }

  /**
   * Returns the delay that the gate adds to a slow ramp: none, as long as the surface moves between
   * two samples by no more than the doubted distance.
   *
   * @param sampleIntervalSeconds time between samples, greater than zero
   */
  public double delaySeconds(double sampleIntervalSeconds) {
    Delays.checkedInterval(sampleIntervalSeconds);
    return 0;
  }

  /**
   * Returns the time from the first sample of a step to the sample at which it is believed: {@code
   * min((M - 1) Ts, T)}, M of the direction, T the accepting time (derived here: the M-th agreeing
   * sample comes M - 1 intervals after the first); zero when the step is not doubted.
   *
   * @param sampleIntervalSeconds Ts, time between samples, greater than zero
   * @param fromMetres distance before the step
   * @param toMetres distance after the step
   */
  public double stepSeconds(double sampleIntervalSeconds, double fromMetres, double toMetres) {
    double interval = Delays.checkedInterval(sampleIntervalSeconds);
    Doubt doubt = toMetres < fromMetres ? settings.near() : settings.far();
    boolean sudden = Math.abs(toMetres - fromMetres) > doubt.beyondMetres();
    return sudden ? Math.min((doubt.agreeing() - 1) * interval, settings.acceptAfterSeconds()) : 0;
  }

  double acceptAfterSeconds() {
    return settings.acceptAfterSeconds();
  }

  /** Forgets everything. */
  public void reset() {
    count = 0;
    seeded = false;
    jumped = false;
    doubtedSince = null;
    doubted = null;
  }
}
