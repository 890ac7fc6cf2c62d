package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.level.alarm.AlarmHandling;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.alarm.AlarmSettings;
import io.strapline.level.units.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads the alarms of one point; their set points become levels. Not thread-safe. */
final class AlarmReader {

  private static final int LOWEST_PRIORITY = 4;

  /** From the lowest set point to the highest. */
  private static final List<AlarmKind> UPWARDS =
      List.of(AlarmKind.LOW_LOW, AlarmKind.LOW, AlarmKind.HIGH, AlarmKind.HIGH_HIGH);

  private final Section section;
  private final Optional<Geometry> geometry;

  /** Takes the section and, unless it has problems of its own, the geometry of the point. */
  AlarmReader(Section section, Optional<Geometry> geometry) {
    this.section = section;
    this.geometry = geometry;
  }

  /** Returns the alarms; empty when they have a problem. */
  Optional<AlarmSettings> read() {
    List<AlarmLimit> limits = new ArrayList<>();
    for (AlarmKind kind : UPWARDS) {
      section
          .section(Labels.of(kind), Keys.ALARM_LIMIT)
          .flatMap(k -> limit(kind, k))
          .ifPresent(limits::add);
    }
    refuseWrongOrder(limits);
    Optional<Section> badSignal = section.section("bad-signal", Keys.BAD_SIGNAL);
    double onDelay =
        badSignal.map(keys -> keys.quantityOr("on-delay", Dimension.TIME, 0)).orElse(0.0);
    AlarmHandling handling = badSignal.map(AlarmReader::handling).orElse(AlarmHandling.DEFAULT);
    return section.build(() -> new AlarmSettings(limits, onDelay, handling));
  }

  private Optional<AlarmLimit> limit(AlarmKind kind, Section keys) {
    double at = new SetPoint(keys, geometry).levelMetres();
    double deadband = keys.quantity("deadband", Dimension.LENGTH);
    double onDelay = keys.quantityOr("on-delay", Dimension.TIME, 0);
    double offDelay = keys.quantityOr("off-delay", Dimension.TIME, 0);
    AlarmHandling handling = handling(keys);
    Optional<AlarmLimit> limit =
        geometry.isEmpty()
            ? Optional.empty()
            : keys.build(() -> new AlarmLimit(kind, at, deadband, onDelay, offDelay, handling));
    limit.ifPresent(made -> refuseNeverClearing(keys, made));
    return limit;
  }

  private static AlarmHandling handling(Section keys) {
    AlarmHandling usual = AlarmHandling.DEFAULT;
    int priority = keys.optionalInteger("priority", 1, LOWEST_PRIORITY).orElse(usual.priority());
    return new AlarmHandling(priority, keys.flagOr("latching", usual.latching()));
  }

  /** A limit that clears only outside the vessel would stand for ever. */
  private void refuseNeverClearing(Section keys, AlarmLimit limit) {
    double towards = limit.kind().isHigh() ? -limit.deadbandMetres() : limit.deadbandMetres();
    double clear = limit.setPointMetres() + towards;
    boolean clears =
        geometry.flatMap(Geometry::vesselLevels).map(levels -> levels.covers(clear)).orElse(true);
    if (!clears) {
      keys.error(
          "deadband",
          Reason.CONFLICT,
          "the alarm would never clear: it clears at a level of "
              + Figures.metres(clear)
              + ", outside the vessel",
          "make the deadband smaller");
    }
  }

  private void refuseWrongOrder(List<AlarmLimit> upwards) {
    for (int i = 1; i < upwards.size(); i++) {
      AlarmLimit lower = upwards.get(i - 1);
      AlarmLimit upper = upwards.get(i);
      if (upper.setPointMetres() <= lower.setPointMetres()) {
        refuseOrder(upper, lower);
      }
    }
  }

  private void refuseOrder(AlarmLimit upper, AlarmLimit lower) {
    section
        .section(Labels.of(upper.kind()), Keys.ALARM_LIMIT)
        .ifPresent(
            keys ->
                keys.error(
                    "at",
                    Reason.CONFLICT,
                    "is a level of "
                        + Figures.metres(upper.setPointMetres())
                        + ", not above "
                        + Labels.of(lower.kind())
                        + " at "
                        + Figures.metres(lower.setPointMetres()),
                    "keep the order low-low, low, high, high-high from the bottom up"));
  }
}
