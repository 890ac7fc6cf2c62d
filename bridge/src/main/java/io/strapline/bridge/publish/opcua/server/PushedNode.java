package io.strapline.bridge.publish.opcua.server;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.eclipse.milo.opcua.sdk.server.items.DataItem;
import org.eclipse.milo.opcua.sdk.server.nodes.UaVariableNode;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;

/**
 * One variable with the monitored items that watch it. The lock of this object keeps an item that
 * is being added from missing a value or seeing an older one last. Safe for any thread.
 */
final class PushedNode {

  private final UaVariableNode node;
  private final List<PushedItem> items = new ArrayList<>();

  PushedNode(UaVariableNode node) {
    this.node = node;
  }

  /** Sets the value and tells the items; {@code kept} takes those that must be flushed later. */
  synchronized void set(DataValue value, Consumer<PushedItem> kept) {
    node.setValue(value);
    long now = System.nanoTime();
    for (PushedItem item : items) {
      if (item.offer(value, now)) {
        kept.accept(item);
      }
    }
  }

  synchronized void add(DataItem item) {
    PushedItem pushed = new PushedItem(item);
    items.add(pushed);
    pushed.force(node.getValue(), System.nanoTime());
  }

  /** Tells an item the present value again, such as after it was switched on. */
  synchronized void refresh(DataItem item) {
    items.stream()
        .filter(pushed -> pushed.item() == item)
        .forEach(pushed -> pushed.force(node.getValue(), System.nanoTime()));
  }

  synchronized void remove(DataItem item) {
    items.removeIf(pushed -> pushed.item() == item);
  }

  synchronized int size() {
    return items.size();
  }
}
