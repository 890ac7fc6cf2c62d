package io.strapline.bridge.cli;

import io.strapline.level.table.CorrectedCurve;
import io.strapline.level.table.Deadwood;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.Vessel;
import java.util.stream.Collectors;

/** Describes vessels for people. Stateless. */
final class Shapes {

  private Shapes() {}

  /** Returns a vessel in a short phrase, with its deadwood. */
  static String describe(CapacityCurve curve) {
    if (curve instanceof CorrectedCurve corrected) {
      return corrected.deadwood().stream()
          .map(Shapes::describe)
          .collect(Collectors.joining(", ", describe(corrected.vessel()) + "; ", ""));
    }
    return curve instanceof Vessel known ? known.describe() : curve.toString();
  }

  private static String describe(Deadwood piece) {
    String sign = piece.cubicMetres() < 0 ? "less " : "and ";
    return sign + Figures.plain(Math.abs(piece.cubicMetres())) + " m3 of " + piece.name();
  }
}
