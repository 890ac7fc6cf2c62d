package io.strapline.bridge.publish.opcua.server;

import java.util.Set;
import java.util.concurrent.CopyOnWriteArraySet;
import org.eclipse.milo.opcua.sdk.server.EventListener;
import org.eclipse.milo.opcua.sdk.server.EventNotifier;
import org.eclipse.milo.opcua.sdk.server.model.objects.BaseEventTypeNode;

/**
 * Tells every listener of an event once, however often it registered. The library's own notifier
 * keeps a list, and each change of an event subscription registers it anew, so its events double
 * (Milo pull request 1748). Safe for any thread.
 */
final class EventListeners implements EventNotifier {

  private final Set<EventListener> listeners = new CopyOnWriteArraySet<>();

  @Override
  public void fire(BaseEventTypeNode event) {
    listeners.forEach(listener -> listener.onEvent(event));
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
