package io.strapline.level.table;

import io.strapline.level.internal.Check;
import io.strapline.level.vessel.CapacityCurve;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.NavigableSet;
import java.util.TreeSet;

/** Finds where two curves part; see {@link CurveComparison}. */
final class CurveSearch {

  private static final int EVEN_STEPS = 4_096;

  private static final int MOST_HALVINGS = 64;

  /** Each step of the golden section keeps this part of its range. */
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  private final CapacityCurve first;
  private final CapacityCurve second;
  private final double limit;
  private final double from;
  private final double to;
  private final List<CurveDifference> points;

  CurveSearch(CapacityCurve first, CapacityCurve second, double limit) {
    this.first = first;
    this.second = second;
    this.limit = limit;
    // An empty volume gives the height of a table's first row, and zero in a vessel.
    from = Math.max(first.heightMetres(0), second.heightMetres(0));
    to = Math.min(first.maxHeightMetres(), second.maxHeightMetres());
    if (!(from < to)) {
      String range = String.format(Locale.ROOT, "%s to %s", from, to);
      throw Check.error(
          "CurveComparison.heights", range, "m", "no height lies in both", "check the datums");
    }
    points = heights().stream().map(this::at).toList();
  }

  private NavigableSet<Double> heights() {
    NavigableSet<Double> heights = new TreeSet<>(List.of(from, to));
    for (int i = 1; i < EVEN_STEPS; i++) {
      heights.add(from + (to - from) * i / EVEN_STEPS);
    }
    for (CapacityCurve curve : List.of(first, second)) {
      if (curve instanceof CapacityTable table) {
        table.rows().stream()
            .map(CapacityRow::heightMetres)
            .filter(height -> height > from && height < to)
            .forEach(heights::add);
      }
    }
    return heights;
  }

  private CurveDifference at(double height) {
    return new CurveDifference(
        height, first.volumeCubicMetres(height), second.volumeCubicMetres(height));
  }

  CurveComparison compare() {
    CurveDifference up = extreme(1, 0, points.size() - 1);
    CurveDifference down = extreme(-1, 0, points.size() - 1);
    return new CurveComparison(
        up,
        down,
        ranges(),
        new CurveComparison.Scope(from, to, limit, first.capacityCubicMetres()),
        unseen(Math.max(up.cubicMetres(), 0), Math.min(down.cubicMetres(), 0)));
  }

  /** The greatest difference times the sign between two points, refined beside the greatest one. */
  private CurveDifference extreme(int sign, int low, int high) {
    int best = low;
    for (int i = low + 1; i <= high; i++) {
      if (sign * points.get(i).cubicMetres() > sign * points.get(best).cubicMetres()) {
        best = i;
      }
    }
    CurveDifference refined =
        golden(
            sign,
            points.get(Math.max(best - 1, low)).heightMetres(),
            points.get(Math.min(best + 1, high)).heightMetres());
    boolean better = sign * refined.cubicMetres() > sign * points.get(best).cubicMetres();
    return better ? refined : points.get(best);
  }

  /** Golden section search (Press et al., Numerical Recipes, section 10.2). */
  private CurveDifference golden(int sign, double below, double above) {
    double low = below;
    double high = above;
    for (int i = 0; i < MOST_HALVINGS && low < high; i++) {
      CurveDifference left = at(high - GOLDEN * (high - low));
      CurveDifference right = at(low + GOLDEN * (high - low));
      if (sign * left.cubicMetres() >= sign * right.cubicMetres()) {
        high = right.heightMetres();
      } else {
        low = left.heightMetres();
      }
    }
    return at(low + (high - low) / 2);
  }

  /**
   * Neither curve falls, so between two heights the second less the first is at most the second's
   * upper volume less the first's lower one, and the other way round. Straight lines part most at
   * their ends.
   */
  private double unseen(double up, double down) {
    if (isStraight(first) && isStraight(second)) {
      return 0;
    }
    double most = 0;
    for (int i = 1; i < points.size(); i++) {
      CurveDifference low = points.get(i - 1);
      CurveDifference high = points.get(i);
      most = Math.max(most, high.secondCubicMetres() - low.firstCubicMetres() - up);
      most = Math.max(most, high.firstCubicMetres() - low.secondCubicMetres() + down);
    }
    return most;
  }

  private static boolean isStraight(CapacityCurve curve) {
    return curve instanceof CapacityTable table && table.interpolation() == Interpolation.LINEAR;
  }

  private List<DifferenceRange> ranges() {
    List<DifferenceRange> ranges = new ArrayList<>();
    for (int sign : new int[] {1, -1}) {
      int begin = -1;
      for (int i = 0; i <= points.size(); i++) {
        boolean beyond = i < points.size() && sign * points.get(i).cubicMetres() > limit;
        if (beyond && begin < 0) {
          begin = i;
        } else if (!beyond && begin >= 0) {
          ranges.add(range(sign, begin, i - 1));
          begin = -1;
        }
      }
    }
    ranges.sort(Comparator.comparingDouble(DifferenceRange::fromMetres));
    return ranges;
  }

  private DifferenceRange range(int sign, int begin, int end) {
    double start = begin == 0 ? from : crossing(sign, begin, begin - 1);
    double stop = end == points.size() - 1 ? to : crossing(sign, end, end + 1);
    return new DifferenceRange(start, stop, extreme(sign, begin, end));
  }

  /**
   * Where the difference comes back to the limit, between a point beyond it and one that is not.
   */
  private double crossing(int sign, int beyond, int within) {
    double out = points.get(beyond).heightMetres();
    double in = points.get(within).heightMetres();
    for (int i = 0; i < MOST_HALVINGS; i++) {
      double middle = out + (in - out) / 2;
      if (sign * at(middle).cubicMetres() > limit) {
        out = middle;
      } else {
        in = middle;
      }
    }
    return out;
  }
}
