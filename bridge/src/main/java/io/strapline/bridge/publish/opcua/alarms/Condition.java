package io.strapline.bridge.publish.opcua.alarms;

import io.strapline.bridge.publish.opcua.alarms.ConditionState.Parts;
import io.strapline.bridge.publish.opcua.alarms.ConditionState.Signal;
import io.strapline.bridge.publish.opcua.alarms.ConditionState.Since;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.point.PointSnapshot;
import java.time.Instant;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** One condition as it follows the snapshots of its point. Used by one thread. */
final class Condition {

  private final ConditionSpec spec;
  private final EventIds ids = new EventIds();
  private ConditionState state;

  /** Makes a condition that stands as its point does; nobody is told. */
  Condition(ConditionSpec spec, PointSnapshot first, Instant now) {
    this.spec = spec;
    Standing standing = Standing.of(spec, first.alarms(), Standing.quiet(spec).severity());
    Instant time = first.evaluated();
    Since since = new Since(time, time, time, time);
    Notice notice = notice(standing, Messages.of(spec, standing, first), time, now);
    state =
        new ConditionState(
            spec,
            new Parts(true, standing, standing.severity(), since),
            signal(first),
            Remark.none(time),
            notice);
  }

  private static Signal signal(PointSnapshot snapshot) {
    return new Signal(snapshot.level().quality(), snapshot.level().time());
  }

  private Notice notice(Standing standing, String message, Instant time, Instant now) {
    return new Notice(ids.next(standing.waiting()), message, time, now);
  }

  ConditionSpec spec() {
    return spec;
  }

  ConditionState state() {
    return state;
  }

  /**
   * Follows a snapshot; returns whether clients are to be told. A change of the quality alone is
   * told while the condition is of interest, and only from good to uncertain to bad.
   */
  boolean follow(PointSnapshot snapshot, Instant now) {
    Standing before = state.parts().standing();
    Standing standing = Standing.of(spec, snapshot.alarms(), before.severity());
    Signal signal = signal(snapshot);
    boolean judged = signal.quality().level() != state.signal().quality().level();
    boolean changed = !standing.equals(before);
    Notice notice = state.notice();
    boolean told = state.enabled() && (changed || (judged && state.retained()));
    if (told) {
      String message = Messages.of(spec, standing, snapshot);
      notice = notice(standing, message, snapshot.evaluated(), now);
    }
    Parts parts = changed ? parts(standing, snapshot.evaluated()) : state.parts();
    state = new ConditionState(spec, parts, signal, state.remark(), notice);
    return told;
  }

  private Parts parts(Standing standing, Instant time) {
    Parts old = state.parts();
    Standing before = old.standing();
    Since since = old.since();
    boolean severity = standing.severity() != before.severity();
    return new Parts(
        old.enabled(),
        standing,
        severity ? before.severity() : old.lastSeverity(),
        new Since(
            since.enabled(),
            standing.leading().equals(before.leading()) ? since.active() : time,
            standing.acknowledged() == before.acknowledged() ? since.acknowledged() : time,
            severity ? time : since.severity()));
  }

  /**
   * Returns which of the alarms that wait now were shown as waiting by an event; null when the
   * event is not known.
   */
  @Nullable Set<AlarmKind> seen(String eventId, Map<AlarmKind, Long> waitingNow) {
    Map<AlarmKind, Long> then = ids.waitingAt(eventId);
    if (then == null) {
      return null;
    }
    return waitingNow.entrySet().stream()
        .filter(entry -> entry.getValue().equals(then.get(entry.getKey())))
        .map(Map.Entry::getKey)
        .collect(Collectors.toUnmodifiableSet());
  }

  /** Takes a remark without telling; an empty text leaves the last one. */
  void remark(String text, String by, Instant now) {
    String kept = text.isEmpty() ? state.remark().text() : text;
    state =
        new ConditionState(
            spec, state.parts(), state.signal(), new Remark(kept, by, now), state.notice());
  }

  /** Makes a notification of what operators did to the condition itself. */
  void announce(String message, Instant now) {
    Notice notice = notice(state.parts().standing(), spec.tag() + ": " + message, now, now);
    state = new ConditionState(spec, state.parts(), state.signal(), state.remark(), notice);
  }

  void enable(boolean enabled, Instant now) {
    Parts old = state.parts();
    Since since = old.since();
    Parts parts =
        new Parts(
            enabled,
            old.standing(),
            old.lastSeverity(),
            new Since(now, since.active(), since.acknowledged(), since.severity()));
    state = new ConditionState(spec, parts, state.signal(), state.remark(), state.notice());
  }
}
