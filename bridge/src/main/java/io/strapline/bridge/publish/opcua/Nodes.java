package io.strapline.bridge.publish.opcua;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;

import org.eclipse.milo.opcua.sdk.core.Reference;
import org.eclipse.milo.opcua.sdk.core.ValueRanks;
import org.eclipse.milo.opcua.sdk.server.nodes.UaNode;
import org.eclipse.milo.opcua.sdk.server.nodes.UaNodeContext;
import org.eclipse.milo.opcua.sdk.server.nodes.UaObjectNode;
import org.eclipse.milo.opcua.sdk.server.nodes.UaObjectNode.UaObjectNodeBuilder;
import org.eclipse.milo.opcua.sdk.server.nodes.UaVariableNode;
import org.eclipse.milo.opcua.sdk.server.nodes.UaVariableNode.UaVariableNodeBuilder;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.types.UaStructuredType;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;
import org.eclipse.milo.opcua.stack.core.types.builtin.LocalizedText;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.QualifiedName;
import org.eclipse.milo.opcua.stack.core.types.builtin.Variant;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UInteger;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UShort;
import org.eclipse.milo.opcua.stack.core.types.structured.Range;

/** Makes nodes of one namespace out of their definition. Used by one thread, at the start. */
final class Nodes {

  private final UaNodeContext context;
  private final UShort namespace;
  private final UShort names;

  /**
   * Makes nodes in {@code namespace}.
   *
   * @param names namespace of their browse names
   */
  Nodes(UaNodeContext context, UShort namespace, UShort names) {
    this.context = context;
    this.namespace = namespace;
    this.names = names;
  }

  NodeId id(String identifier) {
    return new NodeId(namespace, identifier);
  }

  /** Makes an object with its type. */
  UaObjectNode object(String identifier, String name, NodeId type) {
    return new UaObjectNodeBuilder(context)
        .setNodeId(id(identifier))
        .setBrowseName(new QualifiedName(names, name))
        .setDisplayName(LocalizedText.english(name))
        .setTypeDefinition(type)
        .buildAndAdd();
  }

  /** Makes a variable with its unit and ranges, without a value. */
  UaVariableNode variable(String identifier, VariableSpec spec) {
    UaVariableNode node =
        new UaVariableNodeBuilder(context)
            .setNodeId(id(identifier))
            .setBrowseName(new QualifiedName(names, spec.name()))
            .setDisplayName(LocalizedText.english(spec.label().title()))
            .setDescription(LocalizedText.english(spec.label().description()))
            .setDataType(spec.type().nodeId())
            .setValueRank(spec.type().isArray() ? ValueRanks.OneDimension : ValueRanks.Scalar)
            .setTypeDefinition(variableType(spec))
            .setMinimumSamplingInterval(0.0)
            .buildAndAdd();
    if (spec.type().isArray()) {
      node.setArrayDimensions(new UInteger[] {uint(0)});
    }
    spec.scale().ifPresent(scale -> addScale(node, identifier, scale));
    return node;
  }

  private static NodeId variableType(VariableSpec spec) {
    if (spec.scale().isEmpty()) {
      return NodeIds.BaseDataVariableType;
    }
    return spec.scale().get().range().isPresent() ? NodeIds.AnalogItemType : NodeIds.AnalogUnitType;
  }

  private void addScale(UaVariableNode node, String identifier, Scale scale) {
    addProperty(
        node,
        identifier,
        "EngineeringUnits",
        NodeIds.EUInformation,
        EngineeringUnits.of(scale.unit()));
    scale.range().ifPresent(range -> addRange(node, identifier, "EURange", range));
    scale
        .instrumentRange()
        .ifPresent(range -> addRange(node, identifier, "InstrumentRange", range));
  }

  private void addRange(UaVariableNode node, String identifier, String name, Span span) {
    addProperty(node, identifier, name, NodeIds.Range, new Range(span.low(), span.high()));
  }

  /** Makes a property; a structure stays unencoded, since the library reads ranges that way. */
  private void addProperty(
      UaVariableNode owner, String identifier, String name, NodeId type, UaStructuredType value) {
    UaVariableNode property =
        new UaVariableNodeBuilder(context)
            .setNodeId(id(identifier + "." + name))
            .setBrowseName(new QualifiedName(0, name))
            .setDisplayName(LocalizedText.english(name))
            .setDataType(type)
            .setTypeDefinition(NodeIds.PropertyType)
            .setValue(new DataValue(new Variant(value)))
            .buildAndAdd();
    link(owner, NodeIds.HasProperty, property);
  }

  /** Adds a reference and its inverse. */
  static void link(UaNode from, NodeId type, UaNode to) {
    from.addReference(new Reference(from.getNodeId(), type, to.getNodeId().expanded(), true));
  }
}
