package io.strapline.bridge.publish.opcua.conditions;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.ushort;

import io.strapline.bridge.publish.opcua.alarms.ConditionSpec;
import io.strapline.bridge.publish.opcua.alarms.ConditionSpec.Subject;
import io.strapline.bridge.publish.opcua.alarms.ConditionState;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.reading.Quality;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.types.builtin.ByteString;
import org.eclipse.milo.opcua.stack.core.types.builtin.DateTime;
import org.eclipse.milo.opcua.stack.core.types.builtin.LocalizedText;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.StatusCode;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UShort;
import org.jspecify.annotations.Nullable;

/**
 * The table of a condition's fields: the mandatory ones of OPC 10000-9 and the optional ones that
 * have something to tell. Its events and its nodes are both made from it. Immutable.
 */
final class Fields {

  private final ConditionSpec spec;
  private final UShort namespace;
  private final Function<Quality, StatusCode> statuses;
  private final List<Field> fields = new ArrayList<>();

  /**
   * Makes the table of a condition.
   *
   * @param namespace of the points
   * @param statuses gives the status code of a quality
   */
  Fields(ConditionSpec spec, UShort namespace, Function<Quality, StatusCode> statuses) {
    this.spec = spec;
    this.namespace = namespace;
    this.statuses = statuses;
    addEvent();
    addCondition();
    addAcknowledgement();
    addAlarm();
    if (spec.subject() == Subject.LEVEL) {
      addLimits();
    } else {
      add("NormalState", FieldKind.PROPERTY, NodeIds.NodeId, state -> NodeId.NULL_VALUE);
    }
  }

  ConditionSpec spec() {
    return spec;
  }

  List<Field> all() {
    return fields;
  }

  NodeId conditionId() {
    return new NodeId(namespace, spec.id());
  }

  NodeId nodeId(Field field) {
    return new NodeId(namespace, spec.id() + "." + field.path().replace('/', '.'));
  }

  /** Returns the type of the condition. */
  NodeId type() {
    return spec.subject() == Subject.LEVEL
        ? NodeIds.ExclusiveLevelAlarmType
        : NodeIds.InstrumentDiagnosticAlarmType;
  }

  /** Returns the values by path, as events carry them; a disabled condition has few. */
  Map<String, @Nullable Object> values(ConditionState state) {
    Map<String, @Nullable Object> values = new LinkedHashMap<>();
    for (Field field : fields) {
      boolean there = state.enabled() || field.disabled();
      values.put(field.path(), there ? field.value().apply(state) : null);
    }
    return values;
  }

  private void addEvent() {
    always(
        "EventId",
        NodeIds.ByteString,
        state -> ByteString.of(HexFormat.of().parseHex(state.notice().eventId())));
    always("EventType", NodeIds.NodeId, state -> type());
    always("SourceNode", NodeIds.NodeId, state -> new NodeId(namespace, spec.tag()));
    always("SourceName", NodeIds.String, state -> spec.tag());
    always("Time", NodeIds.UtcTime, state -> new DateTime(state.notice().time()));
    always("ReceiveTime", NodeIds.UtcTime, state -> new DateTime(state.notice().received()));
    always("Message", NodeIds.LocalizedText, state -> english(state.notice().message()));
    always("Severity", NodeIds.UInt16, state -> ushort(state.severity()));
  }

  private void addCondition() {
    always("ConditionClassId", NodeIds.NodeId, state -> conditionClass());
    always("ConditionClassName", NodeIds.LocalizedText, state -> conditionClassName());
    always("ConditionName", NodeIds.String, state -> spec.subject().title());
    always("BranchId", NodeIds.NodeId, state -> NodeId.NULL_VALUE);
    always("Retain", NodeIds.Boolean, ConditionState::retained);
    always("SupportsFilteredRetain", NodeIds.Boolean, state -> false);
    addEnabled();
    addTimed(
        "Quality",
        NodeIds.StatusCode,
        state -> statuses.apply(state.signal().quality()),
        state -> state.signal().time());
    addTimed(
        "LastSeverity",
        NodeIds.UInt16,
        state -> ushort(state.parts().lastSeverity()),
        state -> state.parts().since().severity());
    addTimed(
        "Comment",
        NodeIds.LocalizedText,
        state -> english(state.remark().text()),
        state -> state.remark().time());
    add("ClientUserId", FieldKind.PROPERTY, NodeIds.String, state -> state.remark().by());
  }

  private NodeId conditionClass() {
    return spec.subject() == Subject.LEVEL
        ? NodeIds.ProcessConditionClassType
        : NodeIds.SystemConditionClassType;
  }

  private LocalizedText conditionClassName() {
    return english(
        spec.subject() == Subject.LEVEL ? "ProcessConditionClassType" : "SystemConditionClassType");
  }

  private void addEnabled() {
    Function<ConditionState, String> name = state -> state.enabled() ? "Enabled" : "Disabled";
    fields.add(
        new Field(
            "EnabledState",
            FieldKind.TWO_STATE,
            NodeIds.LocalizedText,
            true,
            state -> english(name.apply(state))));
    always("EnabledState/Id", NodeIds.Boolean, ConditionState::enabled);
    always(
        "EnabledState/TransitionTime",
        NodeIds.UtcTime,
        state -> new DateTime(state.parts().since().enabled()));
    always(
        "EnabledState/EffectiveDisplayName",
        NodeIds.LocalizedText,
        state -> english(state.enabled() ? effective(state) : "Disabled"));
  }

  private static String effective(ConditionState state) {
    String active = state.active() ? activeName(state) : "Inactive";
    return active + (state.acknowledged() ? "" : " | Unacknowledged");
  }

  private static String activeName(ConditionState state) {
    return state.leading().flatMap(LimitStates::name).orElse("Active");
  }

  private void addTimed(
      String name,
      NodeId dataType,
      Function<ConditionState, @Nullable Object> value,
      Function<ConditionState, Instant> time) {
    add(name, FieldKind.TIMED, dataType, value);
    add(
        name + "/SourceTimestamp",
        FieldKind.PROPERTY,
        NodeIds.UtcTime,
        state -> new DateTime(time.apply(state)));
  }

  private void addAcknowledgement() {
    addTwoState(
        "AckedState",
        state -> state.acknowledged() ? "Acknowledged" : "Unacknowledged",
        ConditionState::acknowledged);
    add(
        "AckedState/TransitionTime",
        FieldKind.PROPERTY,
        NodeIds.UtcTime,
        state -> new DateTime(state.parts().since().acknowledged()));
  }

  private void addAlarm() {
    addTwoState(
        "ActiveState", state -> state.active() ? "Active" : "Inactive", ConditionState::active);
    add(
        "ActiveState/EffectiveDisplayName",
        FieldKind.PROPERTY,
        NodeIds.LocalizedText,
        state -> english(state.active() ? activeName(state) : "Inactive"));
    add(
        "ActiveState/TransitionTime",
        FieldKind.PROPERTY,
        NodeIds.UtcTime,
        state -> new DateTime(state.parts().since().active()));
    add(
        "InputNode",
        FieldKind.PROPERTY,
        NodeIds.NodeId,
        state -> new NodeId(namespace, spec.tag() + ".Level"));
    add("SuppressedOrShelved", FieldKind.PROPERTY, NodeIds.Boolean, ConditionState::suppressed);
    if (spec.latching()) {
      addTwoState(
          "LatchedState",
          state -> state.latched() ? "Latched" : "Unlatched",
          ConditionState::latched);
    }
  }

  private void addLimits() {
    add("LimitState", FieldKind.MACHINE, NodeIds.BaseDataType, state -> null);
    add(
        "LimitState/CurrentState",
        FieldKind.CURRENT_STATE,
        NodeIds.LocalizedText,
        state -> state.leading().flatMap(LimitStates::name).map(Fields::english).orElse(null));
    add(
        "LimitState/CurrentState/Id",
        FieldKind.PROPERTY,
        NodeIds.NodeId,
        state -> state.leading().flatMap(LimitStates::id).orElse(null));
    for (AlarmKind kind : spec.alarms().keySet()) {
      double metres = spec.setPoint(kind).orElseThrow();
      String name = LimitStates.name(kind).orElseThrow() + "Limit";
      add(name, FieldKind.PROPERTY, NodeIds.Double, state -> metres);
    }
  }

  private void addTwoState(
      String name, Function<ConditionState, String> text, Function<ConditionState, Boolean> id) {
    add(name, FieldKind.TWO_STATE, NodeIds.LocalizedText, state -> english(text.apply(state)));
    add(name + "/Id", FieldKind.PROPERTY, NodeIds.Boolean, id::apply);
  }

  private void always(
      String path, NodeId dataType, Function<ConditionState, @Nullable Object> value) {
    fields.add(new Field(path, FieldKind.PROPERTY, dataType, true, value));
  }

  private void add(
      String path,
      FieldKind kind,
      NodeId dataType,
      Function<ConditionState, @Nullable Object> value) {
    fields.add(new Field(path, kind, dataType, false, value));
  }

  private static LocalizedText english(String text) {
    return LocalizedText.english(text);
  }
}
