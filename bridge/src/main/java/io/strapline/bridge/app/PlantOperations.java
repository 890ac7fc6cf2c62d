package io.strapline.bridge.app;

import io.strapline.bridge.model.Operations;
import io.strapline.bridge.model.PlantClock;
import io.strapline.level.alarm.AlarmKind;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Brings an operator's request to the point it is for. Safe for any thread; never throws. */
final class PlantOperations implements Operations {

  private static final Logger LOG = LoggerFactory.getLogger(PlantOperations.class);

  private final Map<String, GuardedPoint> points;
  private final PlantClock clock;

  PlantOperations(Map<String, GuardedPoint> points, PlantClock clock) {
    this.points = points;
    this.clock = clock;
  }

  @Override
  public Outcome acknowledge(String tag, AlarmKind kind, Operator by) {
    GuardedPoint point = points.get(tag);
    Outcome outcome = point == null ? Outcome.UNKNOWN : point.acknowledge(kind, clock.instant());
    return logged("acknowledge", tag + " " + kind, by, outcome);
  }

  @Override
  public Outcome reset(String tag, AlarmKind kind, Operator by) {
    GuardedPoint point = points.get(tag);
    Outcome outcome = point == null ? Outcome.UNKNOWN : point.reset(kind, clock.instant());
    return logged("reset", tag + " " + kind, by, outcome);
  }

  private static Outcome logged(String what, String target, Operator by, Outcome outcome) {
    LOG.info(
        "{} {} by {} over {}: {}{}",
        what,
        target,
        by.name(),
        by.from(),
        outcome,
        by.comment().isEmpty() ? "" : " \"" + by.comment() + "\"");
    return outcome;
  }
}
