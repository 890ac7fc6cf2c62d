package io.strapline.bridge.publish.opcua.conditions;

import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;

/** How a field of a condition hangs in the address space: OPC 10000-9. */
enum FieldKind {
  /** A property. */
  PROPERTY,
  /** A state with two values, 5.2. */
  TWO_STATE,
  /** A value with the time at which it changed, 5.3. */
  TIMED,
  /** The state machine of the limits, 5.8.12; an object. */
  MACHINE,
  /** The state of a state machine. */
  CURRENT_STATE;

  NodeId reference() {
    return this == PROPERTY ? NodeIds.HasProperty : NodeIds.HasComponent;
  }

  NodeId type() {
    return switch (this) {
      case PROPERTY -> NodeIds.PropertyType;
      case TWO_STATE -> NodeIds.TwoStateVariableType;
      case TIMED -> NodeIds.ConditionVariableType;
      case MACHINE -> NodeIds.ExclusiveLimitStateMachineType;
      case CURRENT_STATE -> NodeIds.FiniteStateVariableType;
    };
  }
}
