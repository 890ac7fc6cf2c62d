package io.strapline.bridge.publish.opcua.alarms;

import io.strapline.bridge.config.PointConfig;
import io.strapline.level.alarm.AlarmHandling;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.alarm.AlarmSettings;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a condition is about, fixed by the configuration. Immutable.
 *
 * @param tag of the point
 * @param area of the point
 * @param subject what it watches
 * @param alarms priority and latching of its alarms, never empty, in the order of {@link AlarmKind}
 * @param setPointsMetres of its limits; empty for the signal
 */
public record ConditionSpec(
    String tag,
    String area,
    Subject subject,
    Map<AlarmKind, AlarmHandling> alarms,
    Map<AlarmKind, Double> setPointsMetres) {

  /** What a condition watches. */
  public enum Subject {
    /** The limits of the level: at most one limit state at a time. */
    LEVEL("LevelAlarm", "Level alarm"),
    /** Whether there is a signal that the limits can be judged by. */
    SIGNAL("SignalAlarm", "Bad-signal alarm");

    private final String node;
    private final String title;

    Subject(String node, String title) {
      this.node = node;
      this.title = title;
    }

    /** Returns the name of the node below the point. */
    public String node() {
      return node;
    }

    /** Returns the name that operators read. */
    public String title() {
      return title;
    }
  }

  /** Copies the maps. */
  public ConditionSpec {
    alarms = Collections.unmodifiableMap(new EnumMap<>(alarms));
    setPointsMetres = Map.copyOf(setPointsMetres);
  }

  /** Returns the conditions of a point: the level when it has a limit, and the signal. */
  public static List<ConditionSpec> of(PointConfig point) {
    String tag = point.tag();
    AlarmSettings settings = point.point().alarms();
    List<ConditionSpec> specs = new ArrayList<>();
    if (!settings.limits().isEmpty()) {
      specs.add(level(tag, point.area(), settings.limits()));
    }
    Map<AlarmKind, AlarmHandling> signal =
        Map.of(AlarmKind.BAD_SIGNAL, settings.badSignalHandling());
    specs.add(new ConditionSpec(tag, point.area(), Subject.SIGNAL, signal, Map.of()));
    return List.copyOf(specs);
  }

  private static ConditionSpec level(String tag, String area, List<AlarmLimit> limits) {
    Map<AlarmKind, AlarmHandling> alarms = new EnumMap<>(AlarmKind.class);
    Map<AlarmKind, Double> setPoints = new EnumMap<>(AlarmKind.class);
    for (AlarmLimit limit : limits) {
      alarms.put(limit.kind(), limit.handling());
      setPoints.put(limit.kind(), limit.setPointMetres());
    }
    return new ConditionSpec(tag, area, Subject.LEVEL, alarms, setPoints);
  }

  /** Returns the identifier of the condition: the tag and a fixed name, the same at each start. */
  public String id() {
    return tag + "." + subject.node();
  }

  /** Returns a limit's set point above the datum; empty when it is not configured. */
  public OptionalDouble setPoint(AlarmKind kind) {
    Double metres = setPointsMetres.get(kind);
    return metres == null ? OptionalDouble.empty() : OptionalDouble.of(metres);
  }

  /** Returns whether one of its alarms latches. */
  public boolean latching() {
    return alarms.values().stream().anyMatch(AlarmHandling::latching);
  }

  /** Returns the severity of the least urgent of its alarms, shown before anything has happened. */
  int lowestSeverity() {
    return alarms.keySet().stream().mapToInt(this::severity).min().orElse(1);
  }

  /**
   * Returns the severity of an alarm, 1 to 1000, from its priority: 1 gives 900, 2 gives 700, 3
   * gives 500, 4 gives 300. Each is the middle of a fifth of the range of OPC 10000-5, 6.4.2; which
   * fifth is this project's choice.
   */
  int severity(AlarmKind kind) {
    return Optional.ofNullable(alarms.get(kind)).map(h -> 1100 - 200 * h.priority()).orElse(1);
  }
}
