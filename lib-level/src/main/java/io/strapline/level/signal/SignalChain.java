package io.strapline.level.signal;

import io.strapline.level.internal.Check;
import io.strapline.level.internal.Elapsed;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.signal.StageTrace.Effect;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Runs the stages of {@link Stage} over the distances of one measuring point, in that order: gates,
 * no-return policy, obstruction gate, median, rate limits, average, lag. Stateful, one thread at a
 * time.
 *
 * <p>What happens to a sample:
 *
 * <ul>
 *   <li>It passes the {@linkplain Gates gates} and is believed by the {@linkplain ObstructionGate
 *       obstruction gate}: it goes through the filters and keeps its quality.
 *   <li>It only repeats an old value ({@link Cause#isHeld()}, such as a failure current being
 *       confirmed): the filters stand still and their last values go out with its quality. Before
 *       the first measurement it goes out as it came.
 *   <li>The obstruction gate does not believe it: the filters stand still and their last values go
 *       out as {@link Cause#OBSTRUCTION_HELD}; what was BAD or a substitute stays so.
 *   <li>It is no measurement: the {@linkplain NoReturnPolicy no-return policy} applies, provided
 *       that the cause is one of a missing surface: no return, not a number, invalid code, dead
 *       zone, far limit, weak return. Every other cause is BAD at once: the loop monitor has
 *       already confirmed a loop fault, and a device that reports its own failure leaves nothing to
 *       wait for.
 * </ul>
 *
 * <p>A hold starts only from a measurement. Once the output was BAD or a substitute, nothing is
 * held any more, and the filters start anew with the next measurement; the obstruction gate alone
 * remembers the surface, because a speck of dust after a lost return is no surface either. Where
 * nothing can be held, the output is BAD with the cause of the gate.
 *
 * <p>The substitute never stands in for a distance inside the dead zone: there the vessel may be
 * over-full, and a made-up distance could hide that. After the hold it is BAD instead. A beam that
 * is lost while the surface is about to enter the dead zone is BAD at once with {@link
 * Cause#OVERFULL_SUSPECTED}, whatever the policy, if {@link SurfaceChecks#lostBeam} is set.
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
  private static final Quality DOUBTED = Quality.uncertain(Cause.OBSTRUCTION_HELD);
  private static final Quality OVERFULL = Quality.bad(Cause.OVERFULL_SUSPECTED);

  private final Gates gates;
  private final NoReturnPolicy policy;
  private final Duration hold;
  private final @Nullable ObstructionGate obstruction;
  private final @Nullable LostBeam lostBeam;
  private final Filters filters;
  private final Tracer tracer = new Tracer();

  private double earlyValue;
  private double smoothValue;
  private boolean seeded;
  private boolean holdRuns;
  private Cause suspicion = Cause.NONE;
  private @Nullable Instant missingSince;
  private @Nullable Conditioned last;

  private SignalChain(SignalSettings settings, SpeedLimits speeds) {
    gates = Gates.of(settings.gates());
    policy = settings.noReturn();
    hold = Elapsed.delay(policy.holdSeconds());
    obstruction = settings.surface().obstruction().map(ObstructionGate::of).orElse(null);
    lostBeam =
        settings.surface().lostBeam().map(it -> new LostBeam(settings.gates(), it)).orElse(null);
    filters = new Filters(settings, speeds);
  }

  /**
   * Returns a chain that has seen nothing yet. Limits given as speeds are taken along the beam, as
   * of a beam that points straight down.
   *
   * @throws IllegalArgumentException if the rate limits are given as a flow: use {@link
   *     #of(SignalSettings, SpeedLimits)}
   */
  public static SignalChain of(SignalSettings settings) {
    return new SignalChain(settings, Filters.upright(settings));
  }

  /**
   * Returns a chain that has seen nothing yet.
   *
   * @param settings the conditioning
   * @param speeds how fast the distance can change, in place of the numbers in {@link
   *     RateSettings}; used only if rate limits are set
   */
  public static SignalChain of(SignalSettings settings, SpeedLimits speeds) {
    return new SignalChain(settings, Check.present("SignalChain.speeds", speeds, "give limits"));
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
    tracer.gate(gate, distance);
    Conditioned output = gate.isBad() ? missing(gate, distance.time()) : passed(distance);
    last = output;
    return output;
  }

  /** As {@link #accept}, and tells what each stage that is in use did to this sample. */
  public Traced explain(Reading distance, OptionalDouble strength) {
    tracer.start();
    Conditioned output = accept(distance, strength);
    return new Traced(output, tracer.take());
  }

  /**
   * Returns the output at a time without a sample: holds run out, nothing else changes. What
   * follows on a hold carries the time at which it ran out.
   */
  public Conditioned tick(Instant time) {
    if (last == null) {
      return both(new Reading(0, WAITING, time), WAITING, Set.of());
    }
    Reading believed = obstruction == null ? null : obstruction.tick(time);
    if (believed != null) {
      last = filtered(believed, true);
    } else if (holdRuns && missingSince != null && Elapsed.reached(missingSince, time, hold)) {
      last = afterHold(last.gate(), missingSince.plus(hold));
    }
    return last;
  }

  private Conditioned passed(Reading distance) {
    holdRuns = false;
    if (distance.quality().cause().isHeld()) {
      return repeated(distance);
    }
    if (obstruction == null) {
      return filtered(distance, false);
    }
    Reading believed = obstruction.apply(distance);
    tracer.obstruction(believed, believed == null && !seeded, earlyValue);
    return believed == null ? doubted(distance) : filtered(believed, obstruction.jumped());
  }

  private Conditioned filtered(Reading distance, boolean jumped) {
    missingSince = null;
    suspicion = Cause.NONE;
    if (lostBeam != null) {
      lostBeam.believe(distance, jumped);
    }
    Reading early = filters.early(distance, tracer);
    Reading smooth = filters.smooth(early, tracer);
    earlyValue = early.value();
    smoothValue = smooth.value();
    seeded = true;
    return new Conditioned(early, smooth, Quality.GOOD, findings(distance, filters.isLimited()));
  }

  private static Set<Cause> findings(Reading distance, boolean limited) {
    boolean unconfirmed = distance.quality().cause() == Cause.JUMP_UNCONFIRMED;
    if (!limited) {
      return unconfirmed ? Set.of(Cause.JUMP_UNCONFIRMED) : Set.of();
    }
    return unconfirmed
        ? Set.of(Cause.JUMP_UNCONFIRMED, Cause.RATE_LIMITED)
        : Set.of(Cause.RATE_LIMITED);
  }

  private Conditioned repeated(Reading distance) {
    return seeded
        ? lastValues(distance.quality(), distance.time(), Quality.GOOD)
        : both(distance, Quality.GOOD, suspected());
  }

  private Conditioned doubted(Reading distance) {
    Set<Cause> findings = Set.of(Cause.OBSTRUCTION_HELD);
    if (seeded || last == null) {
      Reading marked = distance.derived(distance.value(), DOUBTED);
      Conditioned held = lastValues(marked.quality(), distance.time(), Quality.GOOD);
      return new Conditioned(held.early(), held.smooth(), held.gate(), findings);
    }
    // What is not believed ends no BAD and no substitute either.
    Set<Cause> all = Tracer.union(findings, suspected());
    Instant time = distance.time();
    return new Conditioned(
        again(last.early(), time), again(last.smooth(), time), Quality.GOOD, all);
  }

  private static Reading again(Reading reading, Instant time) {
    return new Reading(reading.value(), reading.quality(), time);
  }

  private Conditioned missing(Quality gate, Instant time) {
    if (missingSince == null || time.isBefore(missingSince)) {
      missingSince = time;
    }
    holdRuns = false;
    if (obstruction != null) {
      obstruction.lost();
    }
    boolean noSurface = NO_SURFACE.contains(gate.cause());
    if (noSurface && lostBeam != null) {
      suspicion = lostBeam.suspicion();
    }
    if (noSurface && suspicion == Cause.OVERFULL_SUSPECTED) {
      return failed(OVERFULL, time, gate);
    }
    if (policy.action() == NoReturnPolicy.Action.FAIL || !noSurface) {
      return failed(gate, time, gate);
    }
    if (Elapsed.reached(missingSince, time, hold)) {
      return afterHold(gate, time);
    }
    Conditioned output = seeded ? held(time, gate) : failed(gate, time, gate);
    holdRuns = true;
    return output;
  }

  private Conditioned held(Instant time, Quality gate) {
    tracer.noReturn(Effect.HELD, Cause.NO_RETURN_HELD, earlyValue);
    return lastValues(HELD, time, gate);
  }

  private Conditioned afterHold(Quality gate, Instant time) {
    boolean substitutes =
        policy.action() == NoReturnPolicy.Action.SUBSTITUTE && gate.cause() != Cause.DEAD_ZONE;
    if (!substitutes) {
      return failed(gate, time, gate);
    }
    startAnew();
    tracer.noReturn(Effect.HELD, Cause.SUBSTITUTED, policy.substituteMetres());
    return both(new Reading(policy.substituteMetres(), SUBSTITUTED, time), gate, suspected());
  }

  private Conditioned failed(Quality quality, Instant time, Quality gate) {
    startAnew();
    tracer.noReturn(Effect.REJECTED, quality.cause(), earlyValue);
    return lastValues(quality, time, gate);
  }

  private void startAnew() {
    seeded = false;
    holdRuns = false;
    filters.reset();
  }

  private Conditioned lastValues(Quality quality, Instant time, Quality gate) {
    return new Conditioned(
        new Reading(earlyValue, quality, time),
        new Reading(smoothValue, quality, time),
        gate,
        suspected());
  }

  private Set<Cause> suspected() {
    return suspicion == Cause.NONE ? Set.of() : Set.of(suspicion);
  }

  private static Conditioned both(Reading reading, Quality gate, Set<Cause> findings) {
    return new Conditioned(reading, reading, gate, findings);
  }

  /**
   * Returns the delay of the smooth branch on a slow ramp, in seconds: the sum of its stages.
   *
   * @param sampleIntervalSeconds time between samples, greater than zero
   */
  public double delaySeconds(double sampleIntervalSeconds) {
    return filters.delaySeconds(sampleIntervalSeconds);
  }

  /**
   * Returns the delay of the early branch on a slow ramp, in seconds: that of the median.
   *
   * @param sampleIntervalSeconds time between samples, greater than zero
   */
  public double earlyDelaySeconds(double sampleIntervalSeconds) {
    return filters.earlyDelaySeconds(sampleIntervalSeconds);
  }

  /**
   * Returns the delay of the branch that feeds the alarms on a slow ramp, in seconds.
   *
   * @param sampleIntervalSeconds time between samples, greater than zero
   */
  public double alarmDelaySeconds(double sampleIntervalSeconds) {
    return switch (filters.alarmBranch()) {
      case EARLY -> earlyDelaySeconds(sampleIntervalSeconds);
      case SMOOTH -> delaySeconds(sampleIntervalSeconds);
    };
  }

  /**
   * Returns the longest delay of the branch that feeds the alarms on a surface that does not outrun
   * the rate limits, in seconds: {@link #alarmDelaySeconds} and, with an obstruction gate, its
   * accepting time, for which a true change may be doubted.
   *
   * @param sampleIntervalSeconds time between samples, greater than zero
   */
  public double longestAlarmDelaySeconds(double sampleIntervalSeconds) {
    double doubt = obstruction == null ? 0 : obstruction.acceptAfterSeconds();
    return doubt + alarmDelaySeconds(sampleIntervalSeconds);
  }

  /**
   * Returns what each stage in use adds to the delay, in their order, for a slow ramp and for a
   * step from one distance to another. The sum is when the smooth branch has reached the step.
   *
   * @param sampleIntervalSeconds time between samples, greater than zero
   * @param fromMetres distance before the step, finite
   * @param toMetres distance after the step, finite
   */
  public List<StageDelay> delays(double sampleIntervalSeconds, double fromMetres, double toMetres) {
    List<StageDelay> delays = new ArrayList<>();
    if (obstruction != null) {
      delays.add(
          new StageDelay(
              Stage.OBSTRUCTION,
              obstruction.delaySeconds(sampleIntervalSeconds),
              obstruction.stepSeconds(sampleIntervalSeconds, fromMetres, toMetres)));
    }
    filters.addDelays(delays, sampleIntervalSeconds, fromMetres, toMetres);
    return List.copyOf(delays);
  }

  /** Forgets everything. */
  public void reset() {
    startAnew();
    if (obstruction != null) {
      obstruction.reset();
    }
    if (lostBeam != null) {
      lostBeam.reset();
    }
    suspicion = Cause.NONE;
    earlyValue = 0;
    smoothValue = 0;
    missingSince = null;
    last = null;
  }

  /**
   * Output of the chain. Immutable.
   *
   * @param early distance after gates, no-return policy, obstruction gate and median
   * @param smooth distance after all stages, for display and control
   * @param gate what the gates said of this sample; GOOD when it passed, else BAD with the cause,
   *     also while the last value is held
   * @param findings what the later stages found, whether or not the quality can show it beside
   *     another cause: {@link Cause#OBSTRUCTION_HELD}, {@link Cause#JUMP_UNCONFIRMED}, {@link
   *     Cause#RATE_LIMITED}, {@link Cause#OVERFULL_SUSPECTED}, {@link Cause#EMPTY_SUSPECTED}
   */
  public record Conditioned(Reading early, Reading smooth, Quality gate, Set<Cause> findings) {}

  /**
   * Output of the chain with what each stage did. Immutable.
   *
   * @param output as {@link #accept} gives it
   * @param stages the stages in use that saw the sample, in their order
   */
  public record Traced(Conditioned output, List<StageTrace> stages) {}
}
