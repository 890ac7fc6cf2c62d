package io.strapline.bridge.publish.opcua.conditions;

import io.strapline.bridge.publish.opcua.alarms.ConditionSpec;
import io.strapline.bridge.publish.opcua.alarms.ConditionState;
import io.strapline.bridge.publish.opcua.alarms.Conditions;
import io.strapline.bridge.publish.opcua.server.EventItems;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.eclipse.milo.opcua.sdk.server.items.EventItem;
import org.eclipse.milo.opcua.sdk.server.nodes.UaObjectNode;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;
import org.eclipse.milo.opcua.stack.core.types.builtin.DateTime;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.StatusCode;
import org.eclipse.milo.opcua.stack.core.types.builtin.Variant;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UShort;
import org.jspecify.annotations.Nullable;

/**
 * Shows conditions in the address space and tells their events to those who watch the server or the
 * area. Built by one thread; told by the engine's.
 */
public final class ConditionPublisher implements Conditions.Listener {

  /** Name of the method on a point. */
  public static final String ACKNOWLEDGE_ALL = "AcknowledgeAll";

  private static final StatusCode DISABLED = new StatusCode(StatusCodes.Bad_ConditionDisabled);
  private static final StatusCode NO_STATE = new StatusCode(StatusCodes.Bad_StateNotActive);

  private final ConditionHost host;
  private final Events events;
  private final Map<String, Shown> conditions = new LinkedHashMap<>();

  /** A condition with its nodes and the objects whose watchers are told. */
  private record Shown(Fields fields, UaObjectNode node, Set<NodeId> notifiers) {}

  /** Makes a publisher without conditions. */
  public ConditionPublisher(ConditionHost host) {
    this.host = host;
    events = new Events(host.context());
  }

  /**
   * Makes the nodes of a condition.
   *
   * @param point the object of its point
   * @param area the object whose watchers are told, beside those of the server
   * @param names namespace of its browse name
   */
  public void build(ConditionSpec spec, UaObjectNode point, UaObjectNode area, UShort names) {
    Fields fields = new Fields(spec, point.getNodeId().getNamespaceIndex(), host.statuses());
    UaObjectNode node = new ConditionNodes(host, fields).build(point, names);
    Set<NodeId> notifiers = Set.of(NodeIds.Server, area.getNodeId());
    conditions.put(spec.id(), new Shown(fields, node, notifiers));
  }

  /** Lets operators act on the conditions that have been built, and shows them. */
  public void serve(Conditions engine) {
    ConditionMethods methods = new ConditionMethods(host, engine);
    conditions.values().forEach(shown -> methods.addTo(shown.node(), shown.fields().spec()));
    new RefreshMethods(engine, this::refresh).install(host.context().getServer());
    engine.states().forEach(state -> changed(state, false));
  }

  /** Adds the method that acknowledges everything of a point. */
  public void serve(Conditions engine, UaObjectNode point, String tag, UShort names) {
    new ConditionMethods(host, engine).addToPoint(point, tag, names);
  }

  @Override
  public void changed(ConditionState state, boolean announced) {
    Shown shown = shown(state);
    show(shown, state);
    if (announced) {
      items().fire(events.of(shown.fields(), state), shown.notifiers());
    }
  }

  private Shown shown(ConditionState state) {
    return Objects.requireNonNull(conditions.get(state.spec().id()));
  }

  private EventItems items() {
    return host.rights().events();
  }

  private void show(Shown shown, ConditionState state) {
    Fields fields = shown.fields();
    Map<String, @Nullable Object> values = fields.values(state);
    DateTime time = new DateTime(state.notice().time());
    for (Field field : fields.all()) {
      Object value = values.get(field.path());
      StatusCode status = status(field, state, value);
      host.push()
          .accept(fields.nodeId(field), new DataValue(new Variant(value), status, time, null));
    }
  }

  private static StatusCode status(Field field, ConditionState state, @Nullable Object value) {
    if (!state.enabled() && !field.disabled()) {
      return DISABLED;
    }
    return value == null ? NO_STATE : StatusCode.GOOD;
  }

  @Override
  public void refreshRequired() {
    // Whatever they filter by: clients would not know that they have missed something.
    EventSnapshot event = events.refreshRequired();
    items().fireUnfiltered(event);
  }

  /** Tells one item what it would know had it watched from the start. */
  private void refresh(EventItem item, List<ConditionState> states) {
    EventItems items = items();
    NodeId watched = item.getReadValueId().getNodeId();
    items.tellUnfiltered(item, events.refreshStart());
    for (ConditionState state : states) {
      Shown shown = shown(state);
      if (state.retained() && shown.notifiers().contains(watched)) {
        items.tell(item, events.of(shown.fields(), state));
      }
    }
    items.tellUnfiltered(item, events.refreshEnd());
  }
}
