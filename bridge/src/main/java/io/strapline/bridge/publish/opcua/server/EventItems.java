package io.strapline.bridge.publish.opcua.server;

import java.util.Collection;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArraySet;
import org.eclipse.milo.opcua.sdk.server.EventListener;
import org.eclipse.milo.opcua.sdk.server.EventNotifier;
import org.eclipse.milo.opcua.sdk.server.items.EventItem;
import org.eclipse.milo.opcua.sdk.server.model.objects.BaseEventTypeNode;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The event items of all clients, each told of an event once, however often it registered. The
 * library's own notifier keeps a list, and each change of an event subscription registers it anew,
 * so its events double (Milo pull request 1748); it also tells every item of everything, whatever
 * object the item watches. Safe for any thread.
 */
public final class EventItems implements EventNotifier {

  private static final Logger LOG = LoggerFactory.getLogger(EventItems.class);

  private final Set<EventListener> listeners = new CopyOnWriteArraySet<>();
  private final Set<String> toldFailures = ConcurrentHashMap.newKeySet();

  /** Tells everybody. */
  @Override
  public void fire(BaseEventTypeNode event) {
    listeners.forEach(listener -> tell(listener, event));
  }

  /** Tells the items that watch one of the objects and whose filter lets the event through. */
  public void fire(BaseEventTypeNode event, Collection<NodeId> notifiers) {
    for (EventListener listener : listeners) {
      if (listener instanceof EventItem item
          && notifiers.contains(item.getReadValueId().getNodeId())) {
        tell(item, event);
      }
    }
  }

  /** Tells all items whatever their filters say; for events about the conditions as a whole. */
  public void fireUnfiltered(BaseEventTypeNode event) {
    listeners.forEach(listener -> tellUnfiltered(listener, event));
  }

  /** Tells one listener, if its filter lets the event through. */
  public void tell(EventListener listener, BaseEventTypeNode event) {
    if (listener instanceof EventItem item && !lets(item, event)) {
      return;
    }
    tellUnfiltered(listener, event);
  }

  /** Tells one listener whatever its filter says, as events about the subscription itself are. */
  public void tellUnfiltered(EventListener listener, BaseEventTypeNode event) {
    if (listener instanceof EventItem item && !item.isSamplingEnabled()) {
      return;
    }
    try {
      listener.onEvent(event);
    } catch (RuntimeException failure) {
      told(failure);
    }
  }

  private boolean lets(EventItem item, BaseEventTypeNode event) {
    try {
      return !(item.getReadValueId() instanceof WatchedEvents watched)
          || watched.where().matches(event, item.getSession());
    } catch (UaException | RuntimeException failure) {
      told(failure);
      return false;
    }
  }

  private void told(Exception failure) {
    if (toldFailures.add(failure.getClass().getName())) {
      LOG.error(
          "OPC UA: an event could not be told; later failures of this sort stay silent", failure);
    }
  }

  @Override
  public void register(EventListener listener) {
    listeners.add(listener);
  }

  @Override
  public void unregister(EventListener listener) {
    listeners.remove(listener);
  }
}
