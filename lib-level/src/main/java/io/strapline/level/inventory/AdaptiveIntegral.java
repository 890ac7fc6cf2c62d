package io.strapline.level.inventory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.function.DoubleUnaryOperator;

/**
 * Integral of a piecewise smooth function, with an estimate of its error and a cap on the work.
 * Stateless.
 *
 * <p>Three-point Gauss-Legendre rule per cell (Abramowitz and Stegun, Handbook of Mathematical
 * Functions, 25.4.29 and table 25.4), which never evaluates the ends of a cell, so that jumps may
 * stand there. A cell's value is the sum of the rule on its halves, its error the difference from
 * the rule on the whole. The cell with the largest error is halved until the sum of errors is small
 * enough or the cap is hit.
 */
final class AdaptiveIntegral {

  static final int MOST_CELLS = 2000;

  private static final double NODE = Math.sqrt(0.6);
  private static final int FIRST_CELLS = 4;

  private AdaptiveIntegral() {}

  /** The integral, an estimate of its error, and whether the error asked for was reached. */
  record Result(double value, double error, boolean converged) {}

  private record Cell(double from, double to, double value, double error) {}

  /** Integrates between the first and the last of the rising {@code breaks}. */
  static Result of(DoubleUnaryOperator function, List<Double> breaks, double allowed) {
    PriorityQueue<Cell> cells =
        new PriorityQueue<>(Comparator.comparingDouble(Cell::error).reversed());
    for (double[] piece : pieces(breaks)) {
      cells.add(cell(function, piece[0], piece[1]));
    }
    double error = sumOfErrors(cells);
    while (error > allowed && cells.size() < MOST_CELLS) {
      split(function, cells);
      error = sumOfErrors(cells);
    }
    return new Result(sumOfValues(cells), error, error <= allowed);
  }

  // Several cells per piece, so that no feature hides between the nodes of one.
  private static List<double[]> pieces(List<Double> breaks) {
    List<double[]> pieces = new ArrayList<>();
    for (int i = 1; i < breaks.size(); i++) {
      double from = breaks.get(i - 1);
      double width = (breaks.get(i) - from) / FIRST_CELLS;
      for (int k = 0; k < FIRST_CELLS; k++) {
        pieces.add(new double[] {from + k * width, from + (k + 1) * width});
      }
    }
    return pieces;
  }

  private static void split(DoubleUnaryOperator function, PriorityQueue<Cell> cells) {
    Cell worst = cells.remove();
    double middle = (worst.from + worst.to) / 2;
    cells.add(cell(function, worst.from, middle));
    cells.add(cell(function, middle, worst.to));
  }

  private static Cell cell(DoubleUnaryOperator function, double from, double to) {
    double middle = (from + to) / 2;
    double halves = gauss(function, from, middle) + gauss(function, middle, to);
    return new Cell(from, to, halves, Math.abs(halves - gauss(function, from, to)));
  }

  private static double gauss(DoubleUnaryOperator function, double from, double to) {
    double centre = (from + to) / 2;
    double half = (to - from) / 2;
    double outer =
        function.applyAsDouble(centre - half * NODE) + function.applyAsDouble(centre + half * NODE);
    return half * (5 * outer + 8 * function.applyAsDouble(centre)) / 9;
  }

  private static double sumOfErrors(PriorityQueue<Cell> cells) {
    return cells.stream().mapToDouble(Cell::error).sum();
  }

  private static double sumOfValues(PriorityQueue<Cell> cells) {
    return cells.stream().mapToDouble(Cell::value).sum();
  }
}
