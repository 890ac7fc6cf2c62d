package io.strapline.bridge.publish.opcua.conditions;

import io.strapline.bridge.publish.opcua.server.EventItems;
import io.strapline.level.reading.Quality;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import org.eclipse.milo.opcua.sdk.server.Session;
import org.eclipse.milo.opcua.sdk.server.nodes.UaNodeContext;
import org.eclipse.milo.opcua.sdk.server.nodes.UaVariableNode;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.StatusCode;

/**
 * What conditions need of the namespace in which they lie. Immutable.
 *
 * @param context where nodes are made
 * @param added told of each variable that is made
 * @param push sets the value of a variable
 * @param statuses gives the status code of a quality
 * @param rights of clients, and where their event items are
 */
public record ConditionHost(
    UaNodeContext context,
    Consumer<UaVariableNode> added,
    BiConsumer<NodeId, DataValue> push,
    Function<Quality, StatusCode> statuses,
    Rights rights) {

  /**
   * Who may operate, and who listens. Immutable.
   *
   * @param operator gives the operator's name of a session; empty when it may only read
   * @param events the event items of all clients
   */
  public record Rights(Function<Session, Optional<String>> operator, EventItems events) {}
}
