package io.strapline.bridge.publish.opcua.conditions;

import io.strapline.bridge.publish.opcua.alarms.ConditionState;
import io.strapline.bridge.publish.opcua.alarms.Conditions;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.milo.opcua.sdk.server.OpcUaServer;
import org.eclipse.milo.opcua.sdk.server.Session;
import org.eclipse.milo.opcua.sdk.server.items.EventItem;
import org.eclipse.milo.opcua.sdk.server.methods.AbstractMethodInvocationHandler;
import org.eclipse.milo.opcua.sdk.server.nodes.UaMethodNode;
import org.eclipse.milo.opcua.sdk.server.subscriptions.Subscription;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.Variant;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UInteger;
import org.eclipse.milo.opcua.stack.core.types.structured.Argument;

/**
 * ConditionRefresh and ConditionRefresh2, OPC 10000-9, 5.5.7 and 5.5.8: tell all retained
 * conditions to the one who asks. The library's own tells the beginning and the end to everybody
 * and nothing between, and has no second one. Safe for any thread.
 */
final class RefreshMethods {

  private final Conditions conditions;
  private final RefreshTeller teller;
  private final Set<UInteger> running = ConcurrentHashMap.newKeySet();

  /** Tells one item all conditions that it watches. */
  interface RefreshTeller {
    void tell(EventItem item, List<ConditionState> states);
  }

  RefreshMethods(Conditions conditions, RefreshTeller teller) {
    this.conditions = conditions;
    this.teller = teller;
  }

  void install(OpcUaServer server) {
    Argument subscription =
        OperatorMethod.argument(
            "SubscriptionId", NodeIds.IntegerId, "Subscription whose event items are refreshed");
    Argument item =
        OperatorMethod.argument(
            "MonitoredItemId", NodeIds.IntegerId, "Event item that is refreshed");
    install(server, NodeIds.ConditionType_ConditionRefresh, List.of(subscription));
    install(server, NodeIds.ConditionType_ConditionRefresh2, List.of(subscription, item));
  }

  private void install(OpcUaServer server, NodeId method, List<Argument> inputs) {
    server
        .getAddressSpaceManager()
        .getManagedNode(method)
        .filter(UaMethodNode.class::isInstance)
        .map(UaMethodNode.class::cast)
        .ifPresent(node -> node.setInvocationHandler(new Handler(node, inputs)));
  }

  private final class Handler extends AbstractMethodInvocationHandler {

    private final List<Argument> inputs;

    Handler(UaMethodNode node, List<Argument> inputs) {
      super(node);
      this.inputs = inputs;
    }

    @Override
    public Argument[] getInputArguments() {
      return inputs.toArray(Argument[]::new);
    }

    @Override
    public Argument[] getOutputArguments() {
      return new Argument[0];
    }

    @Override
    protected Variant[] invoke(InvocationContext context, Variant[] values) throws UaException {
      Session session =
          context.getSession().orElseThrow(() -> new UaException(StatusCodes.Bad_UserAccessDenied));
      Subscription subscription = subscription(session, values[0]);
      refresh(subscription, items(subscription, values));
      return new Variant[0];
    }
  }

  private static Subscription subscription(Session session, Variant id) throws UaException {
    Subscription found =
        id.value() instanceof UInteger number
            ? session.getSubscriptionManager().getSubscription(number)
            : null;
    if (found == null) {
      throw new UaException(StatusCodes.Bad_SubscriptionIdInvalid);
    }
    return found;
  }

  private static List<EventItem> items(Subscription subscription, Variant[] values)
      throws UaException {
    if (values.length < 2) {
      return subscription.getMonitoredItems().values().stream()
          .filter(EventItem.class::isInstance)
          .map(EventItem.class::cast)
          .toList();
    }
    Object item =
        values[1].value() instanceof UInteger id ? subscription.getMonitoredItems().get(id) : null;
    if (item instanceof EventItem events) {
      return List.of(events);
    }
    throw new UaException(StatusCodes.Bad_MonitoredItemIdInvalid);
  }

  private void refresh(Subscription subscription, List<EventItem> items) throws UaException {
    UInteger id = subscription.getId();
    if (!running.add(id)) {
      throw new UaException(StatusCodes.Bad_RefreshInProgress);
    }
    boolean taken = conditions.refresh(states -> tell(id, items, states));
    if (!taken) {
      running.remove(id);
      throw new UaException(StatusCodes.Bad_RefreshInProgress);
    }
  }

  private void tell(UInteger id, List<EventItem> items, List<ConditionState> states) {
    try {
      items.forEach(item -> teller.tell(item, states));
    } finally {
      running.remove(id);
    }
  }
}
