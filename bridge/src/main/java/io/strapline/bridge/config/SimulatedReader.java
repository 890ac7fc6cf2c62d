package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.bridge.config.Geometry.Band;
import io.strapline.bridge.config.SourceSettings.Event;
import io.strapline.bridge.config.SourceSettings.Event.Fault;
import io.strapline.bridge.config.SourceSettings.LevelProcess;
import io.strapline.bridge.config.SourceSettings.ShowsAs;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.bridge.config.SourceSettings.Simulated;
import io.strapline.level.units.Dimension;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads a simulated transmitter. Not thread-safe. */
final class SimulatedReader {

  private static final List<Signal> SIGNALS = List.of(Signal.DISTANCE, Signal.CURRENT);

  private final Section section;
  private final Optional<Geometry> geometry;

  /** Takes the section and, unless it has problems of its own, the geometry of the point. */
  SimulatedReader(Section section, Optional<Geometry> geometry) {
    this.section = section;
    this.geometry = geometry;
  }

  /** Returns the transmitter; empty when it has a problem. */
  Optional<SourceSettings> read() {
    Signal signal = section.choice("signal", SIGNALS);
    ShowsAs showsAs = section.choiceOr("shows-as", Labels.all(ShowsAs.class), ShowsAs.SIMULATED);
    int seed = section.optionalInteger("seed", 0, 999_999_999).orElse(1);
    double interval = SourceReader.positiveTime(section, "interval", 1);
    double noise = notNegative(section, "noise", Dimension.LENGTH);
    Optional<LevelProcess> process =
        section
            .requiredSection("process", Keys.PROCESS, "how the level moves")
            .flatMap(this::process);
    List<Event> events = new ArrayList<>();
    section.sections("faults", Keys.FAULT).forEach(f -> event(f, signal).ifPresent(events::add));
    events.sort(Comparator.comparingDouble(Event::atSeconds));
    return section.build(
        () -> new Simulated(signal, showsAs, seed, interval, noise, process.orElseThrow(), events));
  }

  private Optional<LevelProcess> process(Section keys) {
    Dimension flow =
        geometry.flatMap(Geometry::vessel).isPresent() ? Dimension.VOLUME_FLOW : Dimension.SPEED;
    double drawTo = keys.quantity("draw-to", Dimension.LENGTH);
    double fillTo = keys.quantity("fill-to", Dimension.LENGTH);
    double start = keys.quantityOr("start", Dimension.LENGTH, drawTo);
    // Which unit the rates have depends on the vessel: unknown while the geometry has a problem.
    double fill = geometry.isPresent() ? rate(keys, "fill-rate", flow) : 1;
    double draw = geometry.isPresent() ? rate(keys, "draw-rate", flow) : 1;
    if (fillTo <= drawTo) {
      keys.error("fill-to", Reason.CONFLICT, "is not above draw-to", "write a level above draw-to");
    }
    for (String key : List.of("draw-to", "fill-to", "start")) {
      refuseOutside(keys, key);
    }
    return keys.build(() -> new LevelProcess(start, drawTo, fillTo, fill, draw));
  }

  private void refuseOutside(Section keys, String key) {
    Optional<Band> levels = geometry.flatMap(Geometry::vesselLevels);
    if (!keys.has(key) || levels.isEmpty()) {
      return;
    }
    double level = keys.quantity(key, Dimension.LENGTH);
    if (Double.isFinite(level) && !levels.get().covers(level)) {
      keys.error(
          key,
          Reason.OUT_OF_RANGE,
          "lies outside the vessel (0 to " + Figures.metres(levels.get().topMetres()) + ")",
          "write a level inside the vessel");
    }
  }

  private static double rate(Section keys, String key, Dimension flow) {
    double rate = keys.quantity(key, flow);
    if (rate <= 0) {
      keys.error(key, Reason.OUT_OF_RANGE, "must be greater than zero", "write a positive rate");
    }
    return rate;
  }

  private static Optional<Event> event(Section keys, Signal signal) {
    Fault fault = keys.choice("fault", Labels.all(Fault.class));
    double at = keys.quantity("at", Dimension.TIME);
    double lasts = keys.quantity("lasts", Dimension.TIME);
    OptionalDouble every = keys.optionalQuantity("every", Dimension.TIME);
    checkTimes(keys, at, lasts, every);
    boolean needsCurrent = fault == Fault.FAULT_CURRENT_LOW || fault == Fault.FAULT_CURRENT_HIGH;
    if (needsCurrent && signal != Signal.CURRENT) {
      keys.error(
          "fault",
          Reason.CONFLICT,
          "needs a loop, and the signal is " + Labels.of(signal),
          "set signal: current, or choose no-return or silent");
    }
    return keys.build(() -> new Event(fault, at, lasts, every));
  }

  private static void checkTimes(Section keys, double at, double lasts, OptionalDouble every) {
    if (at < 0) {
      keys.error("at", Reason.OUT_OF_RANGE, "must be zero or greater", "write a later time");
    }
    if (lasts <= 0) {
      keys.error("lasts", Reason.OUT_OF_RANGE, "must be greater than zero", "write a longer time");
    }
    if (every.isPresent() && every.getAsDouble() <= lasts) {
      keys.error("every", Reason.CONFLICT, "must be longer than lasts", "write a longer period");
    }
  }

  private static double notNegative(Section keys, String key, Dimension dimension) {
    double value = keys.quantityOr(key, dimension, 0);
    if (value < 0) {
      keys.error(key, Reason.OUT_OF_RANGE, "must be zero or greater", "write zero or more");
    }
    return value;
  }
}
