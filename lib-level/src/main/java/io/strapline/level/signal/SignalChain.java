package io.strapline.level.signal;

import io.strapline.level.internal.Elapsed;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Runs gates, no-return policy, median, average and lag over the distances of one measuring point,
 * in this order. Stateful, one thread at a time.
 *
 * <p>What happens to a sample:
 *
 * <ul>
 *   <li>It passes the {@linkplain Gates gates}: it goes through the filters and keeps its quality.
 *   <li>It only repeats an old value ({@link Cause#isHeld()}, such as a failure current being
 *       confirmed): the filters stand still and their last values go out with its quality. Before
 *       the first measurement it goes out as it came.
 *   <li>It is no measurement: the {@linkplain NoReturnPolicy no-return policy} applies, provided
 *       that the cause is one of a missing surface: no return, not a number, invalid code, dead
 *       zone, far limit, weak return. Every other cause is BAD at once: the loop monitor has
 *       already confirmed a loop fault, and a device that reports its own failure leaves nothing to
 *       wait for.
 * </ul>
 *
 * <p>A hold starts only from a measurement. Once the output was BAD or a substitute, nothing is
 * held any more, and the filters start anew with the next measurement. Where nothing can be held,
 * the output is BAD with the cause of the gate.
 *
 * <p>The substitute never stands in for a distance inside the dead zone: there the vessel may be
 * over-full, and a made-up distance could hide that. After the hold it is BAD instead.
 *
 * <p>At BAD the readings carry the last measured values, zero before the first one.
 */
public final class SignalChain {

  private static final Set<Cause> NO_SURFACE =
      EnumSet.of(
          Cause.NO_RETURN,
          Cause.NOT_A_NUMBER,
          Cause.INVALID_CODE,
          Cause.DEAD_ZONE,
          Cause.FAR_LIMIT,
          Cause.WEAK_RETURN);

  private static final Quality HELD = Quality.uncertain(Cause.NO_RETURN_HELD);
  private static final Quality SUBSTITUTED = Quality.uncertain(Cause.SUBSTITUTED);
  private static final Quality WAITING = Quality.bad(Cause.WAITING_FOR_FIRST_SAMPLE);

  private final Gates gates;
  private final NoReturnPolicy policy;
  private final Duration hold;
  private final SignalFilter median;
  private final SignalFilter average;
  private final SignalFilter lag;

  private double earlyValue;
  private double smoothValue;
  private boolean seeded;
  private boolean holdRuns;
  private @Nullable Instant missingSince;
  private @Nullable Conditioned last;

  private SignalChain(SignalSettings settings) {
    gates = Gates.of(settings.gates());
    policy = settings.noReturn();
    hold = Elapsed.delay(policy.holdSeconds());
    median = Median.of(settings.medianSamples());
    average = MovingAverage.of(settings.averageSamples());
    lag = FirstOrderLag.of(settings.lagSeconds());
  }

  /** Returns a chain that has seen nothing yet. */
  public static SignalChain of(SignalSettings settings) {
    return new SignalChain(settings);
  }

  /**
   * Takes the next distance. A reading that is BAD stands for a sample without a measurement (no
   * return, loop fault). The output carries the time of the sample.
   *
   * @param distance along the beam, in metres
   * @param strength of the return in the device's unit, if known
   */
  public Conditioned accept(Reading distance, OptionalDouble strength) {
    Quality gate = gates.judge(distance, strength);
    Conditioned output = gate.isBad() ? missing(gate, distance.time()) : passed(distance);
    last = output;
    return output;
  }

  /**
   * Returns the output at a time without a sample: holds run out, nothing else changes. What
   * follows on a hold carries the time at which it ran out.
   */
  public Conditioned tick(Instant time) {
    if (last == null) {
      return both(new Reading(0, WAITING, time), WAITING);
    }
    if (holdRuns && missingSince != null && Elapsed.reached(missingSince, time, hold)) {
      last = afterHold(last.gate(), missingSince.plus(hold));
    }
    return last;
  }

  private Conditioned passed(Reading distance) {
    holdRuns = false;
    if (distance.quality().cause().isHeld()) {
      return repeated(distance);
    }
    missingSince = null;
    Reading early = median.apply(distance);
    Reading smooth = lag.apply(average.apply(early));
    earlyValue = early.value();
    smoothValue = smooth.value();
    seeded = true;
    return new Conditioned(early, smooth, Quality.GOOD);
  }

  private Conditioned repeated(Reading distance) {
    return seeded
        ? lastValues(distance.quality(), distance.time(), Quality.GOOD)
        : both(distance, Quality.GOOD);
  }

  private Conditioned missing(Quality gate, Instant time) {
    if (missingSince == null || time.isBefore(missingSince)) {
      missingSince = time;
    }
    holdRuns = false;
    if (policy.action() == NoReturnPolicy.Action.FAIL || !NO_SURFACE.contains(gate.cause())) {
      return failed(gate, time);
    }
    if (Elapsed.reached(missingSince, time, hold)) {
      return afterHold(gate, time);
    }
    Conditioned output = seeded ? lastValues(HELD, time, gate) : failed(gate, time);
    holdRuns = true;
    return output;
  }

  private Conditioned afterHold(Quality gate, Instant time) {
    boolean substitutes =
        policy.action() == NoReturnPolicy.Action.SUBSTITUTE && gate.cause() != Cause.DEAD_ZONE;
    if (!substitutes) {
      return failed(gate, time);
    }
    startAnew();
    return both(new Reading(policy.substituteMetres(), SUBSTITUTED, time), gate);
  }

  private Conditioned failed(Quality gate, Instant time) {
    startAnew();
    return lastValues(gate, time, gate);
  }

  private void startAnew() {
    seeded = false;
    holdRuns = false;
    median.reset();
    average.reset();
    lag.reset();
  }

  private Conditioned lastValues(Quality quality, Instant time, Quality gate) {
    return new Conditioned(
        new Reading(earlyValue, quality, time), new Reading(smoothValue, quality, time), gate);
  }

  private static Conditioned both(Reading reading, Quality gate) {
    return new Conditioned(reading, reading, gate);
  }

  /**
   * Returns the delay of the smooth branch on a slow ramp, in seconds: the sum of its stages.
   *
   * @param sampleIntervalSeconds time between samples, greater than zero
   */
  public double delaySeconds(double sampleIntervalSeconds) {
    return earlyDelaySeconds(sampleIntervalSeconds)
        + average.delaySeconds(sampleIntervalSeconds)
        + lag.delaySeconds(sampleIntervalSeconds);
  }

  /**
   * Returns the delay of the early branch on a slow ramp, in seconds: that of the median.
   *
   * @param sampleIntervalSeconds time between samples, greater than zero
   */
  public double earlyDelaySeconds(double sampleIntervalSeconds) {
    return median.delaySeconds(sampleIntervalSeconds);
  }

  /** Forgets everything. */
  public void reset() {
    startAnew();
    earlyValue = 0;
    smoothValue = 0;
    missingSince = null;
    last = null;
  }

  /**
   * Output of the chain. Immutable.
   *
   * @param early distance after gates, no-return policy and median, for alarms
   * @param smooth distance after all stages, for display and control
   * @param gate what the gates said of this sample; GOOD when it passed, else BAD with the cause,
   *     also while the last value is held
   */
  public record Conditioned(Reading early, Reading smooth, Quality gate) {}
}
