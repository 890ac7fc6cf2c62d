package io.strapline.bridge.publish.opcua.conditions;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.ushort;

import io.strapline.bridge.publish.opcua.alarms.ConditionState;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import org.eclipse.milo.opcua.sdk.core.nodes.ObjectTypeNode;
import org.eclipse.milo.opcua.sdk.server.nodes.UaNodeContext;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.types.builtin.DateTime;
import org.eclipse.milo.opcua.stack.core.types.builtin.LocalizedText;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.util.NonceUtil;
import org.jspecify.annotations.Nullable;

/** Makes events of conditions, and those about the conditions as a whole. Stateless. */
final class Events {

  private final UaNodeContext context;

  Events(UaNodeContext context) {
    this.context = context;
  }

  EventSnapshot of(Fields fields, ConditionState state) {
    return new EventSnapshot(
        context, fields.conditionId(), type(fields.type()), fields.values(state));
  }

  EventSnapshot refreshStart() {
    return ofServer(NodeIds.RefreshStartEventType, "Refresh of the conditions begins");
  }

  EventSnapshot refreshEnd() {
    return ofServer(NodeIds.RefreshEndEventType, "Refresh of the conditions is complete");
  }

  EventSnapshot refreshRequired() {
    return ofServer(
        NodeIds.RefreshRequiredEventType,
        "Alarms came faster than they could be told; refresh the conditions");
  }

  private EventSnapshot ofServer(NodeId type, String message) {
    DateTime now = new DateTime(Instant.now());
    Map<String, @Nullable Object> values = new LinkedHashMap<>();
    values.put("EventId", NonceUtil.generateNonce(16));
    values.put("EventType", type);
    values.put("SourceNode", NodeIds.Server);
    values.put("SourceName", "Server");
    values.put("Time", now);
    values.put("ReceiveTime", now);
    values.put("Message", LocalizedText.english(message));
    values.put("Severity", ushort(1));
    return new EventSnapshot(context, NodeId.NULL_VALUE, type(type), values);
  }

  private ObjectTypeNode type(NodeId type) {
    return context
        .getServer()
        .getAddressSpaceManager()
        .getManagedNode(type)
        .filter(ObjectTypeNode.class::isInstance)
        .map(ObjectTypeNode.class::cast)
        .orElseThrow(() -> new IllegalStateException("event type " + type + " is not known"));
  }
}
