package io.strapline.bridge.publish.opcua.server;

import org.eclipse.milo.opcua.stack.core.types.structured.ReadValueId;

/**
 * What an event item watches, together with the part of its filter that the library cannot
 * evaluate. The library passes this object along with the item, so the filter is there before the
 * first event and goes with the item. Safe for any thread.
 */
final class WatchedEvents extends ReadValueId {

  private volatile WhereClause where;

  WatchedEvents(ReadValueId watched, WhereClause where) {
    super(
        watched.getNodeId(),
        watched.getAttributeId(),
        watched.getIndexRange(),
        watched.getDataEncoding());
    this.where = where;
  }

  WhereClause where() {
    return where;
  }

  void filterBy(WhereClause changed) {
    where = changed;
  }
}
