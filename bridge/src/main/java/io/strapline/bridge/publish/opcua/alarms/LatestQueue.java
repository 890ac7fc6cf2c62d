package io.strapline.bridge.publish.opcua.alarms;

import java.util.ArrayDeque;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A queue of work that never makes the measuring threads wait and never grows without end. Work of
 * a point that finds it full is kept only in its latest form, until the queue has run empty; then
 * the loss is told. Safe for any thread.
 */
final class LatestQueue {

  private final int capacity;
  private final Runnable loss;
  private final ArrayDeque<Runnable> waiting = new ArrayDeque<>();
  private final Map<String, Runnable> latest = new LinkedHashMap<>();

  /** Makes an empty queue. */
  LatestQueue(int capacity, Runnable loss) {
    this.capacity = capacity;
    this.loss = loss;
  }

  /** Adds work; returns false when the queue is full. */
  synchronized boolean offer(Runnable work) {
    if (waiting.size() >= capacity) {
      return false;
    }
    waiting.add(work);
    notifyAll();
    return true;
  }

  /** Adds work that replaces earlier work of the same point when the queue is full. */
  synchronized void offerLatest(String point, Runnable work) {
    // While anything is kept, newer work must not overtake it.
    if (!latest.isEmpty() || !offer(work)) {
      latest.remove(point);
      latest.put(point, work);
      notifyAll();
    }
  }

  /** Waits for work and takes it out. */
  synchronized Runnable take() throws InterruptedException {
    while (waiting.isEmpty() && latest.isEmpty()) {
      wait();
    }
    if (waiting.isEmpty()) {
      waiting.addAll(latest.values());
      waiting.add(loss);
      latest.clear();
    }
    return waiting.remove();
  }
}
