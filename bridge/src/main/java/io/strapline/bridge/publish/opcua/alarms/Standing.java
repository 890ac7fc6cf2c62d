package io.strapline.bridge.publish.opcua.alarms;

import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmSnapshot;
import io.strapline.level.alarm.AlarmState;
import io.strapline.level.alarm.Suppression;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How the alarms of a condition stand together. Immutable.
 *
 * @param leading the alarm that the condition shows as its limit state: the most extreme one whose
 *     condition stands, else the most extreme one that is held by latching; empty when none is
 *     active
 * @param waiting alarms that wait for being acknowledged, with the number of their occurrence
 * @param latched whether an alarm is held by latching alone
 * @param suppressed whether all alarms that are active or wait are suppressed, shelved or out of
 *     service; with none of those, whether all alarms are
 * @param severity 1 to 1000, the highest of the alarms that are active or wait; when there is none,
 *     the one that was shown before
 */
public record Standing(
    Optional<AlarmKind> leading,
    Map<AlarmKind, Long> waiting,
    boolean latched,
    boolean suppressed,
    int severity) {

  /** Copies the map. */
  public Standing {
    waiting = Map.copyOf(waiting);
  }

  /** Returns how things are before the first snapshot. */
  static Standing quiet(ConditionSpec spec) {
    return new Standing(Optional.empty(), Map.of(), false, false, spec.lowestSeverity());
  }

  /** Returns how the alarms of a snapshot stand. */
  static Standing of(ConditionSpec spec, List<AlarmSnapshot> all, int severityBefore) {
    List<AlarmSnapshot> own =
        all.stream().filter(alarm -> spec.alarms().containsKey(alarm.kind())).toList();
    Map<AlarmKind, Long> waiting = new EnumMap<>(AlarmKind.class);
    own.stream()
        .filter(alarm -> !alarm.state().isAcknowledged())
        .forEach(alarm -> waiting.put(alarm.kind(), alarm.occurrences()));
    int severity =
        own.stream()
            .filter(alarm -> alarm.state() != AlarmState.NORMAL)
            .mapToInt(alarm -> spec.severity(alarm.kind()))
            .max()
            .orElse(severityBefore);
    boolean latched = own.stream().anyMatch(alarm -> isLatched(alarm.state()));
    return new Standing(leading(own), waiting, latched, isSuppressed(own), severity);
  }

  private static boolean isSuppressed(List<AlarmSnapshot> own) {
    List<AlarmSnapshot> risen =
        own.stream().filter(alarm -> alarm.state() != AlarmState.NORMAL).toList();
    return (risen.isEmpty() ? own : risen)
        .stream().allMatch(alarm -> alarm.suppression() != Suppression.NONE);
  }

  private static Optional<AlarmKind> leading(List<AlarmSnapshot> own) {
    return own.stream()
        .filter(alarm -> alarm.state().isActive())
        .min(
            Comparator.comparing((AlarmSnapshot alarm) -> isLatched(alarm.state()))
                .thenComparing(alarm -> isExtreme(alarm.kind()) ? 0 : 1)
                .thenComparing(AlarmSnapshot::kind))
        .map(AlarmSnapshot::kind);
  }

  private static boolean isExtreme(AlarmKind kind) {
    return kind == AlarmKind.HIGH_HIGH || kind == AlarmKind.LOW_LOW;
  }

  private static boolean isLatched(AlarmState state) {
    return state == AlarmState.LATCHED_UNACKNOWLEDGED || state == AlarmState.LATCHED_ACKNOWLEDGED;
  }

  /** Returns whether an alarm stands or is held by latching. */
  public boolean active() {
    return leading.isPresent();
  }

  /** Returns whether nothing waits for being acknowledged. */
  public boolean acknowledged() {
    return waiting.isEmpty();
  }
}
