package io.strapline.bridge.publish.opcua;

import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;

/** Data types of the published variables. */
enum ValueType {
  BOOLEAN("Boolean", NodeIds.Boolean),
  INT32("Int32", NodeIds.Int32),
  UINT32("UInt32", NodeIds.UInt32),
  DOUBLE("Double", NodeIds.Double),
  STRING("String", NodeIds.String),
  STRINGS("String[]", NodeIds.String),
  DATE_TIME("DateTime", NodeIds.DateTime);

  private final String label;

  @SuppressWarnings("ImmutableEnumChecker") // The library's node ids are immutable.
  private final NodeId nodeId;

  ValueType(String label, NodeId nodeId) {
    this.label = label;
    this.nodeId = nodeId;
  }

  /** Returns the name of the type as OPC UA has it. */
  String label() {
    return label;
  }

  NodeId nodeId() {
    return nodeId;
  }

  boolean isArray() {
    return this == STRINGS;
  }
}
