package io.strapline.bridge.app;

import io.strapline.bridge.model.PlantClock;
import io.strapline.bridge.model.SampleSink;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.Cause;
import java.time.Instant;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Brings what sources deliver to the point it is for. Safe for any thread; never throws. */
final class SampleRouter implements SampleSink {

  private static final Logger LOG = LoggerFactory.getLogger(SampleRouter.class);

  private final Map<String, GuardedPoint> points;
  private final PlantClock clock;
  private final Set<String> unknown = ConcurrentHashMap.newKeySet();

  SampleRouter(Map<String, GuardedPoint> points, PlantClock clock) {
    this.points = Map.copyOf(points);
    this.clock = clock;
  }

  @Override
  public void accept(String tag, Sample sample) {
    GuardedPoint point = find(tag);
    if (point != null) {
      point.accept(sample, clock.instant());
    }
  }

  @Override
  public void fail(String tag, Cause cause, String detail) {
    GuardedPoint point = find(tag);
    if (point != null) {
      point.fail(cause, detail, clock.instant());
    }
  }

  @Override
  public void elapse(String tag, Instant time) {
    GuardedPoint point = find(tag);
    if (point != null) {
      point.elapse(time);
    }
  }

  private @Nullable GuardedPoint find(String tag) {
    GuardedPoint point = points.get(tag);
    if (point == null && unknown.add(tag)) {
      LOG.error("a source delivers for {}, which is no point of this plant; ignored", tag);
    }
    return point;
  }
}
