package io.strapline.bridge.publish.opcua.server;

import org.eclipse.milo.opcua.sdk.core.NumericRange;
import org.eclipse.milo.opcua.sdk.server.items.DataItem;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;
import org.eclipse.milo.opcua.stack.core.types.builtin.Variant;
import org.jspecify.annotations.Nullable;

/**
 * One monitored item that is told of new values, at most once per sampling interval; the last value
 * of an interval is never lost. Safe for any thread.
 */
final class PushedItem {

  private final DataItem item;
  private @Nullable DataValue waiting;
  private long lastNanos;

  PushedItem(DataItem item) {
    this.item = item;
  }

  DataItem item() {
    return item;
  }

  /** Passes a value on whatever the interval. */
  synchronized void force(DataValue value, long nowNanos) {
    waiting = null;
    lastNanos = nowNanos;
    if (item.isSamplingEnabled()) {
      item.setValue(asked(value));
    }
  }

  /** Returns the part of an array that the client asked for, or the value as it is. */
  private DataValue asked(DataValue value) {
    String range = item.getReadValueId().getIndexRange();
    if (range == null || range.isEmpty() || value.value().value() == null) {
      return value;
    }
    try {
      Object part = NumericRange.readFromValueAtRange(value.value(), NumericRange.parse(range));
      return value.copy(copy -> copy.setValue(new Variant(part)));
    } catch (UaException outside) {
      return new DataValue(outside.getStatusCode());
    }
  }

  /** Passes a value on if the interval is over, else keeps it; tells whether it is kept. */
  synchronized boolean offer(DataValue value, long nowNanos) {
    if (isDue(nowNanos)) {
      force(value, nowNanos);
      return false;
    }
    waiting = value;
    return true;
  }

  /** Passes the kept value on if the interval is over; tells whether it is still kept. */
  synchronized boolean flush(long nowNanos) {
    if (waiting == null) {
      return false;
    }
    return offer(waiting, nowNanos);
  }

  private boolean isDue(long nowNanos) {
    return nowNanos - lastNanos >= item.getSamplingInterval() * 1e6;
  }
}
