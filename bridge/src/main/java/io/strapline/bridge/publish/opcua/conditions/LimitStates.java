package io.strapline.bridge.publish.opcua.conditions;

import io.strapline.level.alarm.AlarmKind;
import java.util.Optional;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;

/** The states of ExclusiveLimitStateMachineType, OPC 10000-9, 5.8.12. Stateless. */
final class LimitStates {

  private LimitStates() {}

  /** Returns the name of the state, which begins the name of its limit; empty for the signal. */
  static Optional<String> name(AlarmKind kind) {
    return switch (kind) {
      case HIGH_HIGH -> Optional.of("HighHigh");
      case HIGH -> Optional.of("High");
      case LOW -> Optional.of("Low");
      case LOW_LOW -> Optional.of("LowLow");
      case BAD_SIGNAL -> Optional.empty();
    };
  }

  /** Returns the node of the state; empty for the signal. */
  static Optional<NodeId> id(AlarmKind kind) {
    return switch (kind) {
      case HIGH_HIGH -> Optional.of(NodeIds.ExclusiveLimitStateMachineType_HighHigh);
      case HIGH -> Optional.of(NodeIds.ExclusiveLimitStateMachineType_High);
      case LOW -> Optional.of(NodeIds.ExclusiveLimitStateMachineType_Low);
      case LOW_LOW -> Optional.of(NodeIds.ExclusiveLimitStateMachineType_LowLow);
      case BAD_SIGNAL -> Optional.empty();
    };
  }
}
