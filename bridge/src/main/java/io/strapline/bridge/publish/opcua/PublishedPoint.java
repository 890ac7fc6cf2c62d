package io.strapline.bridge.publish.opcua;

import io.strapline.bridge.config.PointConfig;
import io.strapline.level.point.PointSnapshot;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.jspecify.annotations.Nullable;

/**
 * The variables of one point and the snapshot they show. The lock of this object keeps two updates
 * from mixing. Safe for any thread.
 */
final class PublishedPoint {

  private final List<VariableSpec> specs;
  private final Map<VariableSpec, NodeId> nodes = new LinkedHashMap<>();
  private final BiConsumer<NodeId, DataValue> push;

  private @Nullable PointSnapshot shown;
  private @Nullable NodeId age;
  private long shownNanos;

  /** Pushes values to {@code push}. */
  PublishedPoint(PointConfig point, BiConsumer<NodeId, DataValue> push) {
    specs = PointVariables.of(point.point());
    this.push = push;
  }

  List<VariableSpec> specs() {
    return specs;
  }

  /** Tells under which node a variable is published. */
  void add(VariableSpec spec, NodeId nodeId) {
    nodes.put(spec, nodeId);
    if (spec.path().equals(StateVariables.AGE)) {
      age = nodeId;
    }
  }

  synchronized void update(PointSnapshot snapshot) {
    shown = snapshot;
    shownNanos = System.nanoTime();
    nodes.forEach((spec, nodeId) -> push.accept(nodeId, spec.value().apply(snapshot)));
  }

  /**
   * Publishes the age as it has grown since the snapshot was made, so that a point that is no
   * longer evaluated is seen to grow old.
   */
  synchronized void age() {
    if (shown == null || age == null) {
      return;
    }
    Duration since = Duration.ofNanos(System.nanoTime() - shownNanos);
    double seconds = shown.ageSeconds() + since.toNanos() / 1e9;
    push.accept(age, Values.good(seconds, shown.evaluated().plus(since)));
  }
}
