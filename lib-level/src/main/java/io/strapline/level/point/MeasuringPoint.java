package io.strapline.level.point;

import io.strapline.level.alarm.AlarmGroup;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmSnapshot;
import io.strapline.level.diagnosis.Baseline;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Diagnostic;
import io.strapline.level.reading.DiagnosticStatus;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.signal.SignalChain;
import io.strapline.level.signal.SignalChain.Conditioned;
import io.strapline.level.signal.StageTrace;
import java.time.Instant;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * One measuring point: a sample in, a snapshot out. Stateful, one thread at a time; the snapshots
 * are immutable.
 *
 * <p>Two clocks meet here. Samples carry the source's time; {@code now} is the caller's time, by
 * which ages and alarm delays run. {@code now} may stand still but is never taken to go back. A
 * sample older than the one before it is marked {@link Cause#TIME_WENT_BACK} and otherwise ignored;
 * if the source stays in the past until its data are too old, its clock was set back, and the next
 * sample starts the point anew.
 */
public final class MeasuringPoint {

  private final PointSettings settings;
  private final InputStage input;
  private final SignalChain chain;
  private final Derivation derivation;
  private final AlarmGroup alarms;
  private final DiagnosticLog diagnostics;
  private final SelfCheck selfCheck;

  private Instant now;
  private Silence silence;
  private Conditioned conditioned;
  private InputStage.@Nullable Input lastInput;
  private OptionalDouble strength = OptionalDouble.empty();
  private Quality remark = Quality.GOOD;
  private boolean maintenanceRequired;
  private boolean everUsable;
  private boolean tracing;
  private List<StageTrace> stages = List.of();
  private EnumMap<Quantity, Reading> lastGood = new EnumMap<>(Quantity.class);
  private PointSnapshot snapshot;
  private long sequence;

  private MeasuringPoint(PointSettings settings, Instant start) {
    this.settings = settings;
    input = new InputStage(settings);
    chain = settings.newChain();
    diagnostics = new DiagnosticLog(settings.precedence());
    derivation = new Derivation(settings);
    selfCheck = new SelfCheck(settings);
    alarms = AlarmGroup.of(settings.alarms());
    now = start;
    silence = new Silence(settings.ages(), start, start, Cause.SOURCE_SILENT);
    Quality waiting = Quality.bad(Cause.WAITING_FOR_FIRST_SAMPLE);
    Reading nothing = new Reading(0, waiting, start);
    conditioned = new Conditioned(nothing, nothing, waiting, Set.of());
    snapshot = evaluate();
  }

  /** Returns a point that waits for its first sample since {@code start}. */
  public static MeasuringPoint of(PointSettings settings, Instant start) {
    return new MeasuringPoint(settings, start);
  }

  /** Returns the settings. */
  public PointSettings settings() {
    return settings;
  }

  /** Takes a sample; {@code arrival} is when it arrived, on the caller's clock. */
  public PointSnapshot accept(Sample sample, Instant arrival) {
    advance(arrival);
    boolean tooOld = silence.quality(now).isBad();
    if (lastInput != null && !tooOld && sample.time().isBefore(silence.sourceTime())) {
      remark = Quality.uncertain(Cause.TIME_WENT_BACK);
      return next();
    }
    if (tooOld) {
      restart();
    }
    take(sample);
    return next();
  }

  /** Takes a sample that arrived when it was measured. */
  public PointSnapshot accept(Sample sample) {
    return accept(sample, sample.time());
  }

  /** Lets time pass without a sample: holds, delays and ages run on. */
  public PointSnapshot tick(Instant time) {
    advance(time);
    if (lastInput != null) {
      conditioned = chain.tick(silence.onSourceClock(now));
    }
    return next();
  }

  /**
   * Tells why there is no sample, until the next one comes. {@link Cause#NO_COMMUNICATION} leaves
   * the last value usable up to the age limits; every other cause makes the point BAD at once.
   */
  public PointSnapshot fail(Cause cause, Instant time) {
    advance(time);
    if (cause == Cause.NO_COMMUNICATION && lastInput != null) {
      silence = silence.because(cause);
    } else {
      remark = Quality.bad(cause);
    }
    return next();
  }

  /** Acknowledges an alarm; nothing happens when there is nothing to acknowledge. */
  public PointSnapshot acknowledge(AlarmKind kind, Instant time) {
    advance(time);
    alarms.acknowledge(kind, now);
    return next();
  }

  /** Resets a latched alarm; nothing happens when there is nothing to reset. */
  public PointSnapshot reset(AlarmKind kind, Instant time) {
    advance(time);
    alarms.reset(kind, now);
    return next();
  }

  /**
   * Shelves an alarm for a time; nothing happens when there is no such alarm.
   *
   * @param seconds in (0, greatest time of the alarm settings]
   * @throws IllegalArgumentException if {@code seconds} is out of its range
   */
  public PointSnapshot shelve(AlarmKind kind, double seconds, Instant time) {
    advance(time);
    alarms.shelve(kind, seconds, now);
    return next();
  }

  /** Shelves an alarm until its condition goes, at most for the greatest time of the settings. */
  public PointSnapshot shelveOnce(AlarmKind kind, Instant time) {
    advance(time);
    alarms.shelveOnce(kind, now);
    return next();
  }

  /** Takes an alarm off the shelf; nothing happens when it is not there. */
  public PointSnapshot unshelve(AlarmKind kind, Instant time) {
    advance(time);
    alarms.unshelve(kind, now);
    return next();
  }

  /** Suppresses an alarm by the plant's own logic, or releases it. */
  public PointSnapshot suppressByDesign(AlarmKind kind, boolean on, Instant time) {
    advance(time);
    alarms.suppressByDesign(kind, on);
    return next();
  }

  /** Takes an alarm out of service, or puts it back. */
  public PointSnapshot outOfService(AlarmKind kind, boolean on, Instant time) {
    advance(time);
    alarms.outOfService(kind, on);
    return next();
  }

  /** Returns the latest snapshot. */
  public PointSnapshot snapshot() {
    return snapshot;
  }

  /**
   * Tells whether material should flow in or out, so that the level should move; false at the
   * start. Used by {@link io.strapline.level.diagnosis.StuckCheck}.
   */
  public void expectFlow(boolean expected) {
    selfCheck.expectFlow(expected);
  }

  /** Returns what has been learned of strength and noise, to be kept over a restart. */
  public Baseline baseline() {
    return selfCheck.baseline();
  }

  /** Sets whether the point writes down what each stage does to a sample; off at the start. */
  public void trace(boolean on) {
    tracing = on;
    stages = List.of();
  }

  /** Returns what each stage did to the last sample; empty while nobody asked for it. */
  public List<StageTrace> stages() {
    return stages;
  }

  private void advance(Instant time) {
    now = time.isAfter(now) ? time : now;
  }

  private void restart() {
    input.reset();
    chain.reset();
  }

  private void take(Sample sample) {
    InputStage.Input taken = input.accept(sample);
    condition(taken.distance(), sample.strength());
    selfCheck.accept(sample, taken, conditioned.gate());
    lastInput = taken;
    silence = new Silence(settings.ages(), sample.time(), now, Cause.SOURCE_SILENT);
    strength = sample.strength();
    remark = Quality.GOOD;
    maintenanceRequired = sample.deviceStatus() == DiagnosticStatus.MAINTENANCE_REQUIRED;
    everUsable |= !conditioned.smooth().quality().isBad();
  }

  private void condition(Reading distance, OptionalDouble returned) {
    if (tracing) {
      SignalChain.Traced traced = chain.explain(distance, returned);
      conditioned = traced.output();
      stages = traced.stages();
    } else {
      conditioned = chain.accept(distance, returned);
    }
  }

  private PointSnapshot next() {
    sequence++;
    snapshot = evaluate();
    return snapshot;
  }

  private PointSnapshot evaluate() {
    Quality overlay = Quality.worst(Quality.worst(remark, ageQuality()), selfCheck.quality());
    Reading distance = worsened(conditioned.smooth(), overlay);
    EnumMap<Quantity, Reading> readings =
        everUsable ? derivation.readings(distance) : derivation.nothing(distance);
    addMeasured(readings, overlay);
    rememberGood(readings);
    List<AlarmSnapshot> judged = alarms.judge(alarmLevel(overlay), now);
    List<Diagnostic> active = diagnostics.update(activeCauses(readings), now);
    return new PointSnapshot(
        settings.tag(),
        new PointSnapshot.Stamp(sequence, now, silence.sourceTime(), silence.ageSeconds(now)),
        readings,
        lastGood,
        new PointSnapshot.Verdict(lastInput == null ? null : lastInput.band(), active, judged));
  }

  private Quality ageQuality() {
    Quality age = silence.quality(now);
    // Before the first sample only the second limit speaks: there is nothing to hold.
    return lastInput == null && !age.isBad() ? Quality.GOOD : age;
  }

  private static Reading worsened(Reading reading, Quality overlay) {
    return overrules(overlay, reading.quality())
        ? new Reading(reading.value(), overlay, reading.time())
        : reading.derived(reading.value(), overlay);
  }

  /** Returns whether the overlay speaks although it is no worse than the reading's own quality. */
  private static boolean overrules(Quality overlay, Quality own) {
    // A value that is only held says so before any other doubt: alarms must not judge it as
    // measured.
    boolean held = overlay.cause().isHeld() && !own.isBad();
    // A known reason for having no sample tells more than waiting for one.
    boolean known = overlay.isBad() && own.cause() == Cause.WAITING_FOR_FIRST_SAMPLE;
    return held || known;
  }

  private void addMeasured(EnumMap<Quantity, Reading> readings, Quality overlay) {
    if (lastInput != null && lastInput.current() != null) {
      readings.put(Quantity.LOOP_CURRENT, worsened(lastInput.current(), overlay));
    }
    if (strength.isPresent() && Double.isFinite(strength.getAsDouble())) {
      Reading measured = Reading.good(strength.getAsDouble(), silence.sourceTime());
      readings.put(Quantity.STRENGTH, worsened(measured, overlay));
    }
  }

  private void rememberGood(EnumMap<Quantity, Reading> readings) {
    EnumMap<Quantity, Reading> good = new EnumMap<>(readings);
    good.values().removeIf(reading -> !reading.quality().isGood());
    if (good.size() < readings.size()) {
      lastGood.forEach(good::putIfAbsent);
    }
    lastGood = good;
  }

  /** Returns the level that alarms judge: the early branch, unless configured otherwise. */
  private Reading alarmLevel(Quality overlay) {
    Reading branch =
        switch (settings.signal().surface().alarmBranch()) {
          case EARLY -> conditioned.early();
          case SMOOTH -> conditioned.smooth();
        };
    return derivation.level(worsened(branch, overlay));
  }

  private Set<Cause> activeCauses(EnumMap<Quantity, Reading> readings) {
    EnumSet<Cause> active = EnumSet.noneOf(Cause.class);
    readings.values().forEach(reading -> active.add(reading.quality().cause()));
    active.add(conditioned.gate().cause());
    active.addAll(conditioned.findings());
    active.addAll(selfCheck.causes());
    active.add(remark.cause());
    active.add(ageQuality().cause());
    if (lastInput != null) {
      active.add(lastInput.distance().quality().cause());
    }
    if (maintenanceRequired) {
      active.add(Cause.DEVICE_MAINTENANCE_REQUIRED);
    }
    active.remove(Cause.NONE);
    return active;
  }
}
