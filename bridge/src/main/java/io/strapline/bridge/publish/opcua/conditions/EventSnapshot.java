package io.strapline.bridge.publish.opcua.conditions;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.ubyte;
import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;

import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.eclipse.milo.opcua.sdk.core.Reference;
import org.eclipse.milo.opcua.sdk.core.ValueRanks;
import org.eclipse.milo.opcua.sdk.core.nodes.ObjectTypeNode;
import org.eclipse.milo.opcua.sdk.server.model.objects.BaseEventTypeNode;
import org.eclipse.milo.opcua.sdk.server.nodes.UaNode;
import org.eclipse.milo.opcua.sdk.server.nodes.UaNodeContext;
import org.eclipse.milo.opcua.sdk.server.nodes.UaVariableNode;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;
import org.eclipse.milo.opcua.stack.core.types.builtin.LocalizedText;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.QualifiedName;
import org.eclipse.milo.opcua.stack.core.types.builtin.Variant;
import org.jspecify.annotations.Nullable;

/**
 * An event with its fields, in no address space. The library finds a field by walking the
 * references of registered nodes, about a millisecond for an event of 76 fields; here it is a
 * look-up, and the fields cannot change while the event is being told. Immutable.
 */
final class EventSnapshot extends BaseEventTypeNode {

  private static final LocalizedText NO_TEXT = LocalizedText.NULL_VALUE;

  private final ObjectTypeNode type;
  private final Map<String, @Nullable Object> values;

  /**
   * Makes an event.
   *
   * @param id the condition's id; for an event of no condition any id
   * @param values by path, such as {@code AckedState/Id}
   */
  EventSnapshot(
      UaNodeContext context, NodeId id, ObjectTypeNode type, Map<String, @Nullable Object> values) {
    super(
        context,
        id,
        new QualifiedName(id.getNamespaceIndex(), String.valueOf(id.getIdentifier())),
        NO_TEXT,
        NO_TEXT,
        uint(0),
        uint(0),
        null,
        null,
        null);
    this.type = type;
    this.values = values;
  }

  @Override
  public ObjectTypeNode getTypeDefinitionNode() {
    return type;
  }

  @Override
  public Optional<UaNode> findNode(
      QualifiedName name, Predicate<UaNode> nodes, Predicate<Reference> references) {
    return field("", name);
  }

  private Optional<UaNode> field(String parent, QualifiedName name) {
    String path = parent + name.name();
    return name.namespaceIndex().intValue() == 0 && values.containsKey(path)
        ? Optional.of(new FieldNode(path))
        : Optional.empty();
  }

  /** One field with the ones below it. */
  private final class FieldNode extends UaVariableNode {

    private final String path;

    FieldNode(String path) {
      super(
          EventSnapshot.this.getNodeContext(),
          new NodeId(
              EventSnapshot.this.getNodeId().getNamespaceIndex(),
              EventSnapshot.this.getNodeId().getIdentifier() + "." + path.replace('/', '.')),
          new QualifiedName(0, path.substring(path.lastIndexOf('/') + 1)),
          NO_TEXT,
          NO_TEXT,
          uint(0),
          uint(0),
          DataValue.valueOnly(new Variant(values.get(path))),
          NodeIds.BaseDataType,
          ValueRanks.Scalar,
          null,
          ubyte(1),
          ubyte(1),
          0.0,
          false);
      this.path = path;
    }

    @Override
    public Optional<UaNode> findNode(
        QualifiedName name, Predicate<UaNode> nodes, Predicate<Reference> references) {
      return field(path + "/", name);
    }
  }
}
