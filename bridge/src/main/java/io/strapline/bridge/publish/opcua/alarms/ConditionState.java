package io.strapline.bridge.publish.opcua.alarms;

import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.reading.Quality;
import java.time.Instant;
import java.util.Optional;

/**
 * A condition at one moment, as clients see it. Immutable, safe for any thread.
 *
 * @param spec what it is about
 * @param parts its states with the times at which they changed
 * @param signal quality of the level that it rests on
 * @param remark the last comment
 * @param notice the last notification
 */
public record ConditionState(
    ConditionSpec spec, Parts parts, Signal signal, Remark remark, Notice notice) {

  /**
   * The states of a condition. Immutable.
   *
   * @param enabled whether clients are told of it
   * @param standing how its alarms stand
   * @param lastSeverity severity before the last change of it
   * @param since when the states changed last
   */
  public record Parts(boolean enabled, Standing standing, int lastSeverity, Since since) {}

  /**
   * When states changed last. Immutable.
   *
   * @param enabled enabled or disabled
   * @param active active, or the leading limit
   * @param acknowledged acknowledged, or waiting for it
   * @param severity severity
   */
  public record Since(Instant enabled, Instant active, Instant acknowledged, Instant severity) {}

  /**
   * The quality of the level. Immutable.
   *
   * @param quality quality
   * @param time source time of the level
   */
  public record Signal(Quality quality, Instant time) {}

  /** Returns whether clients are told of the condition. */
  public boolean enabled() {
    return parts.enabled();
  }

  /** Returns whether an alarm of it stands or is held by latching. */
  public boolean active() {
    return parts.standing().active();
  }

  /** Returns the alarm that is shown as its limit state; empty when none is active. */
  public Optional<AlarmKind> leading() {
    return parts.standing().leading();
  }

  /** Returns whether nothing waits for being acknowledged. */
  public boolean acknowledged() {
    return parts.standing().acknowledged();
  }

  /** Returns whether an alarm of it is held by latching alone. */
  public boolean latched() {
    return parts.standing().latched();
  }

  /** Returns whether it is suppressed, shelved or out of service as a whole. */
  public boolean suppressed() {
    return parts.standing().suppressed();
  }

  /** Returns the severity, 1 to 1000. */
  public int severity() {
    return parts.standing().severity();
  }

  /** Returns whether it is of interest to a client that comes anew: OPC 10000-9, 5.5.2. */
  public boolean retained() {
    return enabled() && (active() || !acknowledged());
  }
}
