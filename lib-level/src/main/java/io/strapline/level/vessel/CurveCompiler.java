package io.strapline.level.vessel;

import io.strapline.level.internal.Check;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * Fits the cells of a {@link CompiledCurve}. Holds the growing lists; for one build and one thread.
 *
 * <p>Each cell gets one cubic. Where that strays too far, as at a step or joint of the vessel, the
 * cell is halved again and again; its parts go to a list of their own.
 */
final class CurveCompiler {

  /** Part of the capacity by which a fit may differ at a check point: a quarter of the bound. */
  private static final double ALLOWED = CompiledCurve.BOUND / 4;

  private static final int DEEPEST = 40;

  /** A part of a cell: where it begins within the cell, and its cubic. */
  private record Part(double start, CubicFit fit) {}

  private final CapacityCurve exact;
  private final double allowed;
  private final double[] table = new double[8 * Octaves.CELLS];
  private final List<Part> parts = new ArrayList<>();
  private int wholeCells;
  private double worst;

  CurveCompiler(CapacityCurve exact) {
    this.exact = exact;
    allowed = ALLOWED * exact.capacityCubicMetres();
    for (int cell = 0; cell < Octaves.CELLS; cell++) {
      fit(cell, false);
      fit(cell, true);
    }
  }

  private void fit(int cell, boolean lower) {
    double start = Octaves.distance(cell);
    double width = Octaves.start(cell + 1) - Octaves.start(cell);
    DoubleUnaryOperator curve = x -> volume(start + x, lower);
    CubicFit fit = width > 0 ? CubicFit.of(curve, width) : point(curve);
    int at = 4 * (cell + (lower ? Octaves.CELLS : 0));
    if (fit.deviation() <= allowed) {
      wholeCells++;
      store(fit, at);
      return;
    }
    table[at] = Double.NaN;
    table[at + 1] = parts.size();
    split(curve, 0, width, 0);
    table[at + 2] = parts.size();
  }

  /** The last cell, which begins in the middle, may have no width. */
  private static CubicFit point(DoubleUnaryOperator curve) {
    return new CubicFit(curve.applyAsDouble(0), 0, 0, 0, 0);
  }

  private double volume(double distance, boolean lower) {
    double part = lower ? distance : 1 - distance;
    return exact.volumeCubicMetres(part * exact.maxHeightMetres());
  }

  private void store(CubicFit fit, int at) {
    table[at] = fit.v();
    table[at + 1] = fit.c1();
    table[at + 2] = fit.c2();
    table[at + 3] = fit.c3();
    worst = Math.max(worst, fit.deviation());
  }

  private void split(DoubleUnaryOperator curve, double low, double high, int depth) {
    CubicFit fit = CubicFit.of(x -> curve.applyAsDouble(low + x), high - low);
    if (fit.deviation() <= allowed) {
      worst = Math.max(worst, fit.deviation());
      parts.add(new Part(low, fit));
      return;
    }
    if (depth == DEEPEST) {
      throw Check.error(
          "CompiledCurve.curve",
          fit.deviation(),
          "m3",
          "must not jump: the volume changes by this at one height",
          "mend the curve");
    }
    double middle = (low + high) / 2;
    split(curve, low, middle, depth + 1);
    split(curve, middle, high, depth + 1);
  }

  double[] table() {
    return table;
  }

  double[] partStarts() {
    return parts.stream().mapToDouble(Part::start).toArray();
  }

  double[] partTable() {
    double[] coefficients = new double[4 * parts.size()];
    for (int i = 0; i < parts.size(); i++) {
      CubicFit fit = parts.get(i).fit();
      coefficients[4 * i] = fit.v();
      coefficients[4 * i + 1] = fit.c1();
      coefficients[4 * i + 2] = fit.c2();
      coefficients[4 * i + 3] = fit.c3();
    }
    return coefficients;
  }

  int cells() {
    return wholeCells + parts.size();
  }

  double worst() {
    return worst;
  }
}
