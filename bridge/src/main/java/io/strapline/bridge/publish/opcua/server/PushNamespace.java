package io.strapline.bridge.publish.opcua.server;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiConsumer;
import org.eclipse.milo.opcua.sdk.server.ManagedNamespaceWithLifecycle;
import org.eclipse.milo.opcua.sdk.server.OpcUaServer;
import org.eclipse.milo.opcua.sdk.server.items.DataItem;
import org.eclipse.milo.opcua.sdk.server.items.EventItem;
import org.eclipse.milo.opcua.sdk.server.items.MonitoredItem;
import org.eclipse.milo.opcua.sdk.server.nodes.UaVariableNode;
import org.eclipse.milo.opcua.stack.core.AttributeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UInteger;
import org.eclipse.milo.opcua.stack.core.types.enumerated.TimestampsToReturn;
import org.eclipse.milo.opcua.stack.core.types.structured.ReadValueId;

/**
 * A namespace whose variables are pushed: a new value goes to the items that watch it, and nothing
 * is polled. Queues and sampling intervals are held within {@link ServerLimits}; the library
 * allocates whatever queue a client asks for. Safe for any thread.
 */
public abstract class PushNamespace extends ManagedNamespaceWithLifecycle {

  private final Map<NodeId, PushedNode> pushed = new ConcurrentHashMap<>();
  private final Set<PushedItem> kept = ConcurrentHashMap.newKeySet();

  /** Makes an empty namespace. */
  protected PushNamespace(OpcUaServer server, String namespaceUri) {
    super(server, namespaceUri);
  }

  /** Adds a variable whose value {@link #push} will set. */
  protected final void addPushed(UaVariableNode node) {
    pushed.put(node.getNodeId(), new PushedNode(node));
  }

  /** Sets the value of a variable and tells the clients that watch it. */
  protected final void push(NodeId nodeId, DataValue value) {
    PushedNode node = pushed.get(nodeId);
    if (node != null) {
      node.set(value, kept::add);
    }
  }

  /** Passes on what was held back for longer sampling intervals; call it every 100 ms. */
  public final void flush() {
    long now = System.nanoTime();
    for (PushedItem item : List.copyOf(kept)) {
      // Taken out first: what comes in meanwhile is put back by push or by this.
      kept.remove(item);
      if (item.flush(now)) {
        kept.add(item);
      }
    }
  }

  /** Returns how many monitored items watch the variables. */
  public final int watchers() {
    return pushed.values().stream().mapToInt(PushedNode::size).sum();
  }

  @Override
  public final RevisedDataItemParameters onCreateDataItem(
      ReadValueId item, Double samplingInterval, UInteger queueSize) {
    return revised(samplingInterval, queueSize);
  }

  @Override
  public final RevisedDataItemParameters onModifyDataItem(
      ReadValueId item, Double samplingInterval, UInteger queueSize) {
    return revised(samplingInterval, queueSize);
  }

  @Override
  public final RevisedEventItemParameters onCreateEventItem(ReadValueId item, UInteger queueSize) {
    return new RevisedEventItemParameters(revisedQueue(queueSize));
  }

  @Override
  public final RevisedEventItemParameters onModifyEventItem(ReadValueId item, UInteger queueSize) {
    return new RevisedEventItemParameters(revisedQueue(queueSize));
  }

  private static RevisedDataItemParameters revised(Double samplingInterval, UInteger queueSize) {
    boolean longEnough = samplingInterval >= ServerLimits.SHORTEST_SAMPLING_MILLIS;
    double interval = longEnough ? samplingInterval : ServerLimits.SHORTEST_SAMPLING_MILLIS;
    return new RevisedDataItemParameters(interval, revisedQueue(queueSize));
  }

  private static UInteger revisedQueue(UInteger wish) {
    return uint(Math.max(1, Math.min(wish.longValue(), ServerLimits.LONGEST_QUEUE)));
  }

  @Override
  public final void onDataItemsCreated(List<DataItem> items) {
    items.forEach(item -> onNode(item, PushedNode::add));
  }

  @Override
  public final void onDataItemsModified(List<DataItem> items) {
    items.forEach(item -> onNode(item, PushedNode::refresh));
  }

  /** Also called by the {@link SubscriptionReaper}, so possibly twice for an item. */
  @Override
  public final void onDataItemsDeleted(List<DataItem> items) {
    for (DataItem item : items) {
      PushedNode node = pushed.get(item.getReadValueId().getNodeId());
      if (node != null) {
        node.remove(item);
      }
    }
  }

  @Override
  public final void onMonitoringModeChanged(List<MonitoredItem> items) {
    for (MonitoredItem item : items) {
      if (item instanceof DataItem dataItem && item.isSamplingEnabled()) {
        onNode(dataItem, PushedNode::refresh);
      }
    }
  }

  @Override
  public final void onEventItemsCreated(List<EventItem> items) {
    items.forEach(getServer().getEventNotifier()::register);
  }

  @Override
  public final void onEventItemsModified(List<EventItem> items) {
    onEventItemsCreated(items);
  }

  @Override
  public final void onEventItemsDeleted(List<EventItem> items) {
    items.forEach(getServer().getEventNotifier()::unregister);
  }

  private void onNode(DataItem item, BiConsumer<PushedNode, DataItem> action) {
    ReadValueId watched = item.getReadValueId();
    PushedNode node = pushed.get(watched.getNodeId());
    if (node != null && isWholeValue(watched)) {
      action.accept(node, item);
    } else {
      item.setValue(readOnce(watched));
    }
  }

  /** Everything but a pushed value never changes while the server runs, so once is enough. */
  private DataValue readOnce(ReadValueId watched) {
    ReadContext context = new ReadContext(getServer(), null);
    return read(context, 0.0, TimestampsToReturn.Both, List.of(watched)).get(0);
  }

  private static boolean isWholeValue(ReadValueId watched) {
    return AttributeId.Value.uid().equals(watched.getAttributeId());
  }
}
