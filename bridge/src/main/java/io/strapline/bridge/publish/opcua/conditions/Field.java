package io.strapline.bridge.publish.opcua.conditions;

import io.strapline.bridge.publish.opcua.alarms.ConditionState;
import java.util.function.Function;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.jspecify.annotations.Nullable;

/**
 * One field of a condition, in its events and in the address space alike. Immutable.
 *
 * @param path browse names from the condition on, with {@code /} between them
 * @param kind how it hangs in the address space
 * @param dataType its data type
 * @param disabled whether it has a value while the condition is disabled
 * @param value its value; null when there is none
 */
record Field(
    String path,
    FieldKind kind,
    NodeId dataType,
    boolean disabled,
    Function<ConditionState, @Nullable Object> value) {

  /** Returns the path of the field above; empty for the condition itself. */
  String parent() {
    int slash = path.lastIndexOf('/');
    return slash < 0 ? "" : path.substring(0, slash);
  }

  /** Returns the last browse name. */
  String name() {
    return path.substring(path.lastIndexOf('/') + 1);
  }
}
