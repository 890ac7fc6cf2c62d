package io.strapline.bridge.publish.opcua.server;

import java.util.Arrays;
import java.util.List;
import org.eclipse.milo.opcua.sdk.server.OpcUaServer;
import org.eclipse.milo.opcua.sdk.server.Session;
import org.eclipse.milo.opcua.sdk.server.items.BaseMonitoredItem;
import org.eclipse.milo.opcua.sdk.server.items.DataItem;
import org.eclipse.milo.opcua.sdk.server.items.EventItem;
import org.eclipse.milo.opcua.sdk.server.subscriptions.Subscription;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UInteger;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Removes subscriptions whose client went away without saying so, and the oldest messages of
 * clients that never acknowledge. The library keeps the first for ever (Milo issue 1733) and up to
 * 1,024 of the second. Run it every few seconds; safe for any thread.
 */
public final class SubscriptionReaper implements Runnable {

  /** Messages that are kept for a client that does not acknowledge. */
  static final int MOST_UNACKNOWLEDGED = 64;

  private static final Logger LOG = LoggerFactory.getLogger(SubscriptionReaper.class);

  private final OpcUaServer server;

  /** Makes a reaper for one server. */
  public SubscriptionReaper(OpcUaServer server) {
    this.server = server;
  }

  @Override
  public void run() {
    List<Session> alive = server.getSessionManager().getAllSessions();
    server.getSubscriptions().values().forEach(subscription -> visit(subscription, alive));
  }

  private void visit(Subscription subscription, List<Session> alive) {
    boolean orphaned =
        !alive.contains(subscription.getSession()) && subscription.getLifetimeCounter() < 1;
    if (orphaned) {
      remove(subscription);
    } else {
      trim(subscription);
    }
  }

  private void remove(Subscription subscription) {
    if (server.getSubscriptions().remove(subscription.getId()) == null) {
      return;
    }
    List<BaseMonitoredItem<?>> items = subscription.deleteSubscription();
    server.getAddressSpaceManager().onDataItemsDeleted(only(items, DataItem.class));
    server.getAddressSpaceManager().onEventItemsDeleted(only(items, EventItem.class));
    server.getMonitoredItemCount().addAndGet(-items.size());
    LOG.info(
        "OPC UA subscription {} removed with {} items: its client is gone",
        subscription.getId(),
        items.size());
  }

  private static <T> List<T> only(List<BaseMonitoredItem<?>> items, Class<T> kind) {
    return items.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  private static void trim(Subscription subscription) {
    UInteger[] waiting = subscription.getAvailableSequenceNumbers();
    Arrays.stream(waiting)
        .limit(Math.max(0, waiting.length - MOST_UNACKNOWLEDGED))
        .forEach(subscription::acknowledge);
  }
}
