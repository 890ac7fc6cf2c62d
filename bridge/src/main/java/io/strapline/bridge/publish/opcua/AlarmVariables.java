package io.strapline.bridge.publish.opcua;

import io.strapline.bridge.publish.opcua.VariableSpec.Label;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.alarm.AlarmSettings;
import io.strapline.level.alarm.AlarmSnapshot;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.units.LengthUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;

/** The alarms of a point: their state, and the set points of its limits. Stateless. */
final class AlarmVariables {

  /** Folder of the alarms below a tag. */
  static final String FOLDER = "Alarms";

  private AlarmVariables() {}

  static List<VariableSpec> of(AlarmSettings settings) {
    List<VariableSpec> specs = new ArrayList<>();
    for (AlarmLimit limit : settings.limits()) {
      addState(specs, limit.kind());
      specs.add(setPoint(limit));
    }
    addState(specs, AlarmKind.BAD_SIGNAL);
    return specs;
  }

  private static void addState(List<VariableSpec> specs, AlarmKind kind) {
    String title = title(kind);
    specs.add(
        state(
            kind,
            "Active",
            ValueType.BOOLEAN,
            new Label(title + " active", "Whether the alarm stands or is held by latching"),
            alarm -> alarm.state().isActive()));
    specs.add(
        state(
            kind,
            "Acknowledged",
            ValueType.BOOLEAN,
            new Label(title + " acknowledged", "Whether the last occurrence is acknowledged"),
            alarm -> alarm.state().isAcknowledged()));
    specs.add(
        state(
            kind,
            "State",
            ValueType.STRING,
            new Label(title + " state", "NORM, UNACK, ACKED, RTNUN, LATUN or LATACK"),
            alarm -> alarm.state().shortName()));
    specs.add(
        state(
            kind,
            "HeldBack",
            ValueType.BOOLEAN,
            new Label(title + " held back", "Whether the alarm is not judged now"),
            AlarmSnapshot::heldBack));
  }

  private static VariableSpec state(
      AlarmKind kind,
      String name,
      ValueType type,
      Label label,
      Function<AlarmSnapshot, Object> value) {
    return VariableSpec.plain(
        path(kind) + "." + name, type, label, snapshot -> stateOf(snapshot, kind, value));
  }

  /**
   * Returns a part of an alarm's state. While the alarm is held back its state only stands, so the
   * value is uncertain: "not active" must not look like a verdict.
   */
  private static DataValue stateOf(
      PointSnapshot snapshot, AlarmKind kind, Function<AlarmSnapshot, Object> part) {
    Optional<AlarmSnapshot> found =
        snapshot.alarms().stream().filter(alarm -> alarm.kind() == kind).findFirst();
    if (found.isEmpty()) {
      return Values.of(Optional.empty(), snapshot.evaluated());
    }
    AlarmSnapshot alarm = found.get();
    Object value = part.apply(alarm);
    return alarm.heldBack()
        ? Values.held(value, snapshot.evaluated())
        : Values.good(value, snapshot.evaluated());
  }

  private static VariableSpec setPoint(AlarmLimit limit) {
    return VariableSpec.analog(
        path(limit.kind()) + ".SetPoint",
        Scale.of(LengthUnit.METRE),
        new Label(title(limit.kind()) + " set point", "Level above the datum"),
        snapshot -> Values.good(limit.setPointMetres(), snapshot.evaluated()));
  }

  private static String path(AlarmKind kind) {
    return FOLDER + "." + name(kind);
  }

  private static String name(AlarmKind kind) {
    return switch (kind) {
      case HIGH_HIGH -> "HighHigh";
      case HIGH -> "High";
      case LOW -> "Low";
      case LOW_LOW -> "LowLow";
      case BAD_SIGNAL -> "BadSignal";
    };
  }

  private static String title(AlarmKind kind) {
    return switch (kind) {
      case HIGH_HIGH -> "High-high alarm";
      case HIGH -> "High alarm";
      case LOW -> "Low alarm";
      case LOW_LOW -> "Low-low alarm";
      case BAD_SIGNAL -> "Bad-signal alarm";
    };
  }
}
