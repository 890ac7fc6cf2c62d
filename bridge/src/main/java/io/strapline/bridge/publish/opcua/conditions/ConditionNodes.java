package io.strapline.bridge.publish.opcua.conditions;

import java.util.HashMap;
import java.util.Map;
import org.eclipse.milo.opcua.sdk.core.Reference;
import org.eclipse.milo.opcua.sdk.server.nodes.UaNode;
import org.eclipse.milo.opcua.sdk.server.nodes.UaNodeContext;
import org.eclipse.milo.opcua.sdk.server.nodes.UaObjectNode;
import org.eclipse.milo.opcua.sdk.server.nodes.UaVariableNode;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.types.builtin.LocalizedText;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.QualifiedName;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UShort;

/**
 * Makes the nodes of one condition from its table of fields. The library's own factory makes 140
 * nodes, with second copies of the states under each other and without removing unused methods.
 * Used by one thread, at the start.
 */
final class ConditionNodes {

  private final UaNodeContext context;
  private final ConditionHost host;
  private final Fields fields;
  private final Map<String, UaNode> made = new HashMap<>();

  ConditionNodes(ConditionHost host, Fields fields) {
    this.context = host.context();
    this.host = host;
    this.fields = fields;
  }

  /** Makes the condition below its point; returns its object. */
  UaObjectNode build(UaObjectNode point, UShort names) {
    String name = fields.spec().subject().node();
    UaObjectNode condition =
        object(fields.conditionId(), new QualifiedName(names, name), fields.type());
    condition.setDescription(LocalizedText.english(fields.spec().subject().title()));
    link(point, NodeIds.HasComponent, condition);
    link(point, NodeIds.HasCondition, condition);
    made.put("", condition);
    fields.all().forEach(this::build);
    linkSubStates();
    return condition;
  }

  private UaObjectNode object(NodeId id, QualifiedName name, NodeId type) {
    return new UaObjectNode.UaObjectNodeBuilder(context)
        .setNodeId(id)
        .setBrowseName(name)
        .setDisplayName(LocalizedText.english(name.name()))
        .setTypeDefinition(type)
        .buildAndAdd();
  }

  private void build(Field field) {
    QualifiedName name = new QualifiedName(0, field.name());
    UaNode node =
        field.kind() == FieldKind.MACHINE
            ? object(fields.nodeId(field), name, field.kind().type())
            : variable(field, name);
    link(node(field.parent()), field.kind().reference(), node);
    made.put(field.path(), node);
  }

  private UaVariableNode variable(Field field, QualifiedName name) {
    UaVariableNode node =
        new UaVariableNode.UaVariableNodeBuilder(context)
            .setNodeId(fields.nodeId(field))
            .setBrowseName(name)
            .setDisplayName(LocalizedText.english(field.name()))
            .setDataType(field.dataType())
            .setTypeDefinition(field.kind().type())
            .setMinimumSamplingInterval(0.0)
            .buildAndAdd();
    host.added().accept(node);
    return node;
  }

  /** Acknowledged and active are states within enabled: OPC 10000-9, 5.5.2. */
  private void linkSubStates() {
    for (String state : new String[] {"AckedState", "ActiveState", "LatchedState"}) {
      UaNode node = made.get(state);
      if (node != null) {
        link(node("EnabledState"), NodeIds.HasTrueSubState, node);
      }
    }
    UaNode machine = made.get("LimitState");
    if (machine != null) {
      link(node("ActiveState"), NodeIds.HasTrueSubState, machine);
    }
  }

  private UaNode node(String path) {
    UaNode node = made.get(path);
    if (node == null) {
      throw new IllegalStateException("a condition has no field " + path);
    }
    return node;
  }

  static void link(UaNode from, NodeId type, UaNode to) {
    from.addReference(new Reference(from.getNodeId(), type, to.getNodeId().expanded(), true));
  }
}
