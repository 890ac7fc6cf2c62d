package io.strapline.level.table;

import io.strapline.level.internal.Check;
import io.strapline.level.vessel.CapacityCurve;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.NavigableSet;
import java.util.TreeSet;

/** The heights at which a corrected curve is exact, and its volumes there. */
final class CorrectionSteps {

  private static final int EVEN_STEPS = 4_096;

  /** A fall by this part of the capacity is rounding. */
  private static final double ROUNDING = 1e-12;

  private final CapacityCurve vessel;
  private final List<Deadwood> deadwood;
  private final double[] heights;

  CorrectionSteps(CapacityCurve vessel, List<Deadwood> deadwood) {
    this.vessel = vessel;
    this.deadwood = deadwood;
    heights = findHeights();
  }

  double[] heights() {
    return heights;
  }

  private double[] findHeights() {
    double low = vessel.heightMetres(0);
    double high = vessel.maxHeightMetres();
    NavigableSet<Double> knots = new TreeSet<>(List.of(low, high));
    for (int i = 1; i < EVEN_STEPS; i++) {
      knots.add(low + (high - low) * i / EVEN_STEPS);
    }
    for (Deadwood piece : deadwood) {
      knots.add(Math.max(piece.bottomMetres(), low));
      knots.add(Math.min(piece.topMetres(), high));
    }
    if (vessel instanceof CapacityTable table) {
      table.rows().forEach(row -> knots.add(row.heightMetres()));
    }
    return knots.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** The volume by plain sums. */
  private double plain(double height) {
    double volume = vessel.volumeCubicMetres(height);
    // The top row counts all, even where rounding put a piece's top a hair above it.
    boolean full = height >= vessel.maxHeightMetres();
    for (Deadwood piece : deadwood) {
      volume += full ? piece.cubicMetres() : piece.belowCubicMetres(height);
    }
    return volume;
  }

  /** Returns the corrected volumes at the heights; refused where they would fall. */
  double[] risingVolumes() {
    double[] volumes = Arrays.stream(heights).map(this::plain).toArray();
    double slack = ROUNDING * vessel.capacityCubicMetres();
    for (int i = 0; i < volumes.length; i++) {
      double before = i == 0 ? 0 : volumes[i - 1];
      if (volumes[i] < before - slack) {
        throw falls(volumes, i);
      }
      volumes[i] = Math.max(volumes[i], before) + 0.0;
    }
    if (!(volumes[volumes.length - 1] > 0)) {
      throw Check.error(
          "CorrectedCurve.capacity",
          volumes[volumes.length - 1],
          "m3",
          "must be greater than zero",
          "check the volumes and signs of the deadwood");
    }
    return volumes;
  }

  /** Names the whole range in which the volume falls, and the pieces that lie there. */
  private IllegalArgumentException falls(double[] volumes, int first) {
    int last = first;
    while (last + 1 < volumes.length && volumes[last + 1] < volumes[last]) {
      last++;
    }
    double from = heights[Math.max(first - 1, 0)];
    double to = heights[last];
    String pieces =
        deadwood.stream()
            .filter(piece -> piece.cubicMetres() < 0)
            .filter(piece -> piece.bottomMetres() < to && piece.topMetres() > from)
            .map(Deadwood::name)
            .reduce((a, b) -> a + ", " + b)
            .orElse("the sum");
    return Check.error(
        "CorrectedCurve.volume",
        text("%.6g", volumes[last]),
        "m3",
        text(
            "%s from %.4f to %.4f m, where %s displaces more than the vessel holds",
            volumes[last] < 0 ? "falls below zero" : "falls", from, to, pieces),
        "check its volume, bottom and top");
  }

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
