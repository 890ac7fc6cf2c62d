package io.strapline.bridge.publish.opcua.server;

import java.util.Arrays;
import java.util.Objects;
import org.eclipse.milo.opcua.sdk.server.OpcUaServer;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.QualifiedName;
import org.eclipse.milo.opcua.stack.core.types.enumerated.NodeClass;
import org.eclipse.milo.opcua.stack.core.types.structured.SimpleAttributeOperand;
import org.jspecify.annotations.Nullable;

/**
 * Turns the select clauses of a client into ones that the library takes. It searches a field only
 * among the direct children of the named type, and one field that the type inherits makes it send
 * nothing at all although the subscription was answered Good. By the base type it searches by the
 * path alone. Stateless.
 */
final class SelectClauses {

  private static final QualifiedName[] ITSELF = {};
  private static final QualifiedName[] NOTHING = {new QualifiedName(0, "")};

  private SelectClauses() {}

  static SimpleAttributeOperand[] untyped(OpcUaServer server, SimpleAttributeOperand[] clauses) {
    return Arrays.stream(clauses)
        .map(clause -> untyped(server, clause))
        .toArray(SimpleAttributeOperand[]::new);
  }

  /**
   * Returns an operand that selects by its path. Without a path it stands for the event itself, and
   * the type matters: so clients ask for the condition's id, which only conditions have.
   */
  static SimpleAttributeOperand untyped(OpcUaServer server, SimpleAttributeOperand operand) {
    QualifiedName[] path = operand.getBrowsePath();
    boolean itself = path == null || path.length == 0;
    NodeId type = operand.getTypeDefinitionId();
    if (itself) {
      return isObjectType(server, type)
          ? clause(type, ITSELF, operand)
          : clause(NodeIds.BaseEventType, NOTHING, operand);
    }
    boolean complete = Arrays.stream(path).allMatch(Objects::nonNull);
    return clause(NodeIds.BaseEventType, complete ? path : NOTHING, operand);
  }

  private static boolean isObjectType(OpcUaServer server, @Nullable NodeId type) {
    return type != null
        && server
            .getAddressSpaceManager()
            .getManagedNode(type)
            .filter(node -> node.getNodeClass() == NodeClass.ObjectType)
            .isPresent();
  }

  private static SimpleAttributeOperand clause(
      NodeId type, QualifiedName[] path, SimpleAttributeOperand operand) {
    return new SimpleAttributeOperand(
        type, path, operand.getAttributeId(), operand.getIndexRange());
  }
}
