package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.bridge.config.Geometry.Band;
import io.strapline.bridge.config.SourceSettings.Modbus;
import io.strapline.bridge.config.SourceSettings.Simulated;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.point.PointSettings;
import io.strapline.level.signal.GateSettings;
import java.util.OptionalDouble;

/** Finds what is allowed at one point, but probably not meant. Not thread-safe. */
final class PointWarnings {

  /** Part of the vessel's height that the range may miss unnoticed: this project's choice. */
  private static final double BLIND_PART = 0.01;

  private final Section section;
  private final PointConfig config;
  private final Geometry geometry;

  /** Takes a point without problems. */
  PointWarnings(Section section, PointConfig config, Geometry geometry) {
    this.section = section;
    this.config = config;
    this.geometry = geometry;
  }

  /** Notes the warnings. */
  void note() {
    noteShortRange();
    config.point().alarms().limits().forEach(this::noteHidden);
    noteSlowSource();
  }

  private void noteShortRange() {
    if (geometry.rangeLevels().isEmpty() || geometry.vesselLevels().isEmpty()) {
      return;
    }
    Band range = geometry.rangeLevels().get();
    Band vessel = geometry.vesselLevels().get();
    double slack = BLIND_PART * vessel.topMetres();
    if (range.bottomMetres() > vessel.bottomMetres() + slack) {
      warnRange("levels below " + Figures.metres(range.bottomMetres()));
    }
    if (range.topMetres() < vessel.topMetres() - slack) {
      warnRange("levels above " + Figures.metres(range.topMetres()));
    }
  }

  private void warnRange(String blind) {
    section.warn(
        "range",
        Reason.OUT_OF_RANGE,
        "is shorter than the vessel: it cannot show " + blind,
        "set a longer range in the transmitter and here, or accept the blind part");
  }

  /** A surface in the dead zone or beyond the far limit gives a BAD signal, not this alarm. */
  private void noteHidden(AlarmLimit limit) {
    GateSettings gates = config.point().signal().gates();
    double highest = config.point().mounting().levelMetres(gates.deadZoneMetres());
    double lowest = config.point().mounting().levelMetres(gates.farLimitMetres());
    if (limit.setPointMetres() > highest) {
      warnHidden(limit, "the dead zone hides every level above " + Figures.metres(highest));
    } else if (limit.setPointMetres() < lowest) {
      warnHidden(limit, "the far limit hides every level below " + Figures.metres(lowest));
    }
  }

  private void warnHidden(AlarmLimit limit, String why) {
    section
        .section("alarms", Keys.ALARMS)
        .flatMap(alarms -> alarms.section(Labels.of(limit.kind()), Keys.ALARM_LIMIT))
        .ifPresent(
            keys ->
                keys.warn(
                    "at",
                    Reason.OUT_OF_RANGE,
                    "cannot come: " + why + "; the bad-signal alarm comes instead",
                    "move the set point or the transmitter"));
  }

  private void noteSlowSource() {
    PointSettings point = config.point();
    OptionalDouble interval = intervalSeconds();
    if (interval.isPresent() && interval.getAsDouble() >= point.ages().lastUsableSeconds()) {
      section.warn(
          section.has("silence") ? "silence" : "source",
          Reason.CONFLICT,
          "the source gives a sample every "
              + interval.getAsDouble()
              + " s, and its value counts as old after "
              + point.ages().lastUsableSeconds()
              + " s",
          "make silence.last-usable-after a few intervals long");
    }
  }

  private OptionalDouble intervalSeconds() {
    if (config.source() instanceof Simulated simulated) {
      return OptionalDouble.of(simulated.intervalSeconds());
    }
    return config.source() instanceof Modbus modbus
        ? OptionalDouble.of(modbus.device().pollSeconds())
        : OptionalDouble.empty();
  }
}
