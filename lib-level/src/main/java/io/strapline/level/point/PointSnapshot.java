package io.strapline.level.point;

import io.strapline.level.alarm.AlarmSnapshot;
import io.strapline.level.loop.LoopBand;
import io.strapline.level.reading.Diagnostic;
import io.strapline.level.reading.DiagnosticStatus;
import io.strapline.level.reading.Reading;
import java.time.Instant;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * All that a measuring point knows after one sample or one tick. Immutable, safe for any thread.
 */
public final class PointSnapshot {

  private final String tag;
  private final long sequence;
  private final Instant evaluated;
  private final Instant sourceTime;
  private final double ageSeconds;
  private final Map<Quantity, Reading> readings;
  private final Map<Quantity, Reading> lastGood;
  private final @Nullable LoopBand band;
  private final List<Diagnostic> diagnostics;
  private final List<AlarmSnapshot> alarms;

  PointSnapshot(
      String tag,
      Stamp stamp,
      EnumMap<Quantity, Reading> readings,
      EnumMap<Quantity, Reading> lastGood,
      Verdict verdict) {
    this.tag = tag;
    sequence = stamp.sequence();
    evaluated = stamp.evaluated();
    sourceTime = stamp.sourceTime();
    ageSeconds = stamp.ageSeconds();
    this.readings = Collections.unmodifiableMap(readings);
    this.lastGood = Collections.unmodifiableMap(lastGood);
    band = verdict.band();
    diagnostics = verdict.diagnostics();
    alarms = verdict.alarms();
  }

  /** When a snapshot was made and of what. */
  record Stamp(long sequence, Instant evaluated, Instant sourceTime, double ageSeconds) {}

  /** What was judged beside the values. */
  record Verdict(
      @Nullable LoopBand band, List<Diagnostic> diagnostics, List<AlarmSnapshot> alarms) {}

  /** Returns the tag of the point. */
  public String tag() {
    return tag;
  }

  /** Returns the number of this snapshot: 0 at the start, one more at each sample or tick. */
  public long sequence() {
    return sequence;
  }

  /** Returns the time that was given to the call which made this snapshot. */
  public Instant evaluated() {
    return evaluated;
  }

  /** Returns the source time of the last accepted sample; the start time while none has come. */
  public Instant sourceTime() {
    return sourceTime;
  }

  /**
   * Returns the age of the data in seconds at the time of evaluation, zero or more: since the
   * source time or since the arrival, whichever is longer; since the start while none has come.
   */
  public double ageSeconds() {
    return ageSeconds;
  }

  /** Returns a reading; empty when the point is not configured to compute it. */
  public Optional<Reading> reading(Quantity quantity) {
    return Optional.ofNullable(readings.get(quantity));
  }

  /**
   * Returns the computed quantities with their readings, unmodifiable, in the order of {@link
   * Quantity}.
   */
  public Map<Quantity, Reading> readings() {
    return readings;
  }

  /** Returns the last reading of this quantity that was GOOD; empty while there was none. */
  public Optional<Reading> lastGood(Quantity quantity) {
    return Optional.ofNullable(lastGood.get(quantity));
  }

  /** Returns the level above the datum, always there. */
  public Reading level() {
    return Objects.requireNonNull(readings.get(Quantity.LEVEL));
  }

  /** Returns the band of the last loop current; empty when the source gives none. */
  public Optional<LoopBand> band() {
    return Optional.ofNullable(band);
  }

  /** Returns the prevailing NE 107 status, by the order that the point is set to. */
  public DiagnosticStatus status() {
    return diagnostics.isEmpty() ? DiagnosticStatus.NORMAL : diagnostics.get(0).status();
  }

  /** Returns the active diagnostics, the prevailing first. */
  public List<Diagnostic> diagnostics() {
    return diagnostics;
  }

  /** Returns the configured alarms in the order of {@link io.strapline.level.alarm.AlarmKind}. */
  public List<AlarmSnapshot> alarms() {
    return alarms;
  }
}
