package io.strapline.bridge.publish.opcua.conditions;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;

import io.strapline.bridge.publish.opcua.alarms.ConditionSpec;
import io.strapline.bridge.publish.opcua.alarms.Conditions;
import io.strapline.bridge.publish.opcua.alarms.Conditions.By;
import io.strapline.bridge.publish.opcua.server.OperatorsOnly;
import java.util.HexFormat;
import java.util.List;
import org.eclipse.milo.opcua.sdk.server.nodes.UaMethodNode;
import org.eclipse.milo.opcua.sdk.server.nodes.UaObjectNode;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.builtin.ByteString;
import org.eclipse.milo.opcua.stack.core.types.builtin.LocalizedText;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.QualifiedName;
import org.eclipse.milo.opcua.stack.core.types.builtin.Variant;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UShort;
import org.eclipse.milo.opcua.stack.core.types.structured.Argument;

/** Makes the methods by which operators act on conditions and points. Used at the start. */
final class ConditionMethods {

  private static final Argument COMMENT =
      OperatorMethod.argument(
          "Comment", NodeIds.LocalizedText, "What the operator says to it; may be empty");
  private static final OperatorMethod.Signature ON_EVENT =
      new OperatorMethod.Signature(
          List.of(
              OperatorMethod.argument(
                  "EventId", NodeIds.ByteString, "EventId of the notification that it is about"),
              COMMENT),
          List.of());
  private static final OperatorMethod.Signature PLAIN =
      new OperatorMethod.Signature(List.of(), List.of());
  private static final OperatorMethod.Signature ON_POINT =
      new OperatorMethod.Signature(
          List.of(
              OperatorMethod.argument(
                  "Comment", NodeIds.String, "What the operator says to it; may be empty")),
          List.of(
              OperatorMethod.argument(
                  "Acknowledged", NodeIds.UInt32, "How many alarms waited for it")));

  private final ConditionHost host;
  private final Conditions conditions;

  ConditionMethods(ConditionHost host, Conditions conditions) {
    this.host = host;
    this.conditions = conditions;
  }

  void addTo(UaObjectNode condition, ConditionSpec spec) {
    String id = spec.id();
    add(
        condition,
        "Acknowledge",
        ON_EVENT,
        (operator, in) ->
            OperatorMethod.answer(conditions.acknowledge(id, eventId(in[0]), by(operator, in[1]))));
    add(
        condition,
        "AddComment",
        ON_EVENT,
        (operator, in) ->
            OperatorMethod.answer(conditions.comment(id, eventId(in[0]), by(operator, in[1]))));
    add(condition, "Enable", PLAIN, (operator, in) -> enable(id, true, operator));
    add(condition, "Disable", PLAIN, (operator, in) -> enable(id, false, operator));
    if (spec.latching()) {
      add(
          condition,
          "Reset",
          PLAIN,
          (operator, in) -> OperatorMethod.answer(conditions.reset(id, new By(operator, ""))));
    }
  }

  private Variant[] enable(String id, boolean enabled, String operator) throws UaException {
    return OperatorMethod.answer(conditions.enable(id, enabled, new By(operator, "")));
  }

  private static By by(String operator, Variant comment) {
    return new By(operator, OperatorMethod.text(comment));
  }

  private static String eventId(Variant argument) throws UaException {
    if (argument.value() instanceof ByteString id && id.bytes() != null) {
      return HexFormat.of().formatHex(id.bytes());
    }
    throw new UaException(StatusCodes.Bad_EventIdUnknown);
  }

  private void add(
      UaObjectNode condition,
      String name,
      OperatorMethod.Signature signature,
      OperatorMethod.Action action) {
    addMethod(condition, new QualifiedName(0, name), signature, action);
  }

  /** Adds the method that acknowledges everything of a point. */
  void addToPoint(UaObjectNode point, String tag, UShort names) {
    addMethod(
            point,
            new QualifiedName(names, ConditionPublisher.ACKNOWLEDGE_ALL),
            ON_POINT,
            (operator, in) -> acknowledgeAll(tag, by(operator, in[0])))
        .setDescription(
            LocalizedText.english(
                "Acknowledges all alarms of the point; operators only, signed and encrypted"));
  }

  private Variant[] acknowledgeAll(String tag, By by) throws UaException {
    int done = conditions.acknowledgeAll(tag, by);
    if (done < 0) {
      throw new UaException(StatusCodes.Bad_Timeout);
    }
    return new Variant[] {new Variant(uint(done))};
  }

  private UaMethodNode addMethod(
      UaObjectNode owner,
      QualifiedName name,
      OperatorMethod.Signature signature,
      OperatorMethod.Action action) {
    NodeId id =
        new NodeId(
            owner.getNodeId().getNamespaceIndex(),
            owner.getNodeId().getIdentifier() + "." + name.name());
    UaMethodNode node =
        UaMethodNode.builder(host.context())
            .setNodeId(id)
            .setBrowseName(name)
            .setDisplayName(LocalizedText.english(name.name()))
            .buildAndAdd();
    if (!signature.inputs().isEmpty()) {
      node.setInputArguments(signature.inputs().toArray(Argument[]::new));
    }
    if (!signature.outputs().isEmpty()) {
      node.setOutputArguments(signature.outputs().toArray(Argument[]::new));
    }
    node.setInvocationHandler(
        new OperatorMethod(node, signature, host.rights().operator(), action));
    OperatorsOnly.guard(node);
    ConditionNodes.link(owner, NodeIds.HasComponent, node);
    return node;
  }
}
