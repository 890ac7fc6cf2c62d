package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.level.table.CorrectedCurve;
import io.strapline.level.table.Deadwood;
import io.strapline.level.units.Dimension;
import io.strapline.level.vessel.CapacityCurve;
import java.util.List;
import java.util.Optional;

/** Reads what a vessel's shape does not hold, such as an agitator or a manhole. Stateless. */
final class DeadwoodReader {

  private static final List<String> SIGNS = List.of("displaces", "adds");

  private DeadwoodReader() {}

  /** Returns the vessel with its deadwood counted in; empty after a problem. */
  static Optional<CapacityCurve> corrected(Section vessel, Optional<CapacityCurve> shape) {
    if (!vessel.has("deadwood")) {
      return shape;
    }
    List<Deadwood> pieces =
        vessel.sections("deadwood", Keys.DEADWOOD).stream()
            .flatMap(keys -> piece(keys, shape).stream())
            .toList();
    return vessel.build(() -> CorrectedCurve.of(shape.orElseThrow(), pieces));
  }

  private static Optional<Deadwood> piece(Section keys, Optional<CapacityCurve> shape) {
    String name = keys.text("name", "what it is, such as agitator");
    double bottom = keys.quantity("bottom", Dimension.LENGTH);
    double top = keys.quantity("top", Dimension.LENGTH);
    Optional<String> sign = keys.one(SIGNS);
    if (sign.isEmpty()) {
      return Optional.empty();
    }
    double volume = keys.quantity(sign.get(), Dimension.VOLUME);
    if (volume <= 0) {
      keys.error(
          sign.get(),
          Reason.OUT_OF_RANGE,
          "must be greater than zero",
          "write the volume without a sign: displaces takes room away, adds gives it");
    }
    shape.ifPresent(curve -> refuseOutside(keys, bottom, top, curve));
    double signed = sign.get().equals("displaces") ? -volume : volume;
    return keys.build(() -> Deadwood.evenly(name, bottom, top, signed));
  }

  private static void refuseOutside(Section keys, double bottom, double top, CapacityCurve curve) {
    double lowest = curve.heightMetres(0);
    if (bottom < lowest) {
      outside(keys, "bottom", "lies below the lowest height of the vessel", lowest);
    }
    if (top > curve.maxHeightMetres()) {
      outside(keys, "top", "lies above the vessel", curve.maxHeightMetres());
    }
  }

  private static void outside(Section keys, String key, String rule, double limit) {
    keys.error(
        key,
        Reason.OUT_OF_RANGE,
        rule + ", " + Figures.metres(limit),
        "count only the part inside");
  }
}
