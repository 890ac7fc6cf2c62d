package io.strapline.bridge.publish.opcua.server;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Puts the results of passed requests back among those of refused ones, in the order of asking.
 * Used by one thread.
 *
 * @param <R> a result
 */
final class Merge<R> {

  private final List<@Nullable R> refused = new ArrayList<>();

  void pass() {
    refused.add(null);
  }

  void refuse(R result) {
    refused.add(result);
  }

  boolean nothingRefused() {
    return refused.stream().allMatch(result -> result == null);
  }

  /** Returns all results; {@code passed} holds one for each that was passed. */
  List<R> with(R @Nullable [] passed) {
    List<R> all = new ArrayList<>();
    int next = 0;
    for (R result : refused) {
      if (result != null) {
        all.add(result);
      } else if (passed != null && next < passed.length) {
        all.add(passed[next++]);
      }
    }
    return all;
  }
}
