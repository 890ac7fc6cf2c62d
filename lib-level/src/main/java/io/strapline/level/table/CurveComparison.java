package io.strapline.level.table;

import io.strapline.level.internal.Check;
import io.strapline.level.vessel.CapacityCurve;
import java.util.List;
import java.util.Locale;

/**
 * Where two curves of one vessel part, as a capacity table from its drawing's shape, or a table
 * after a repair from the one before. Immutable.
 *
 * <p>The curves are compared at the heights that both cover: from the higher of the two first rows
 * (a shape begins at zero) to the lower of the two full heights. They are compared at 4,097 heights
 * evenly apart and at every row of a table, and near the greatest differences as finely as doubles
 * tell. Two tables with straight lines are so compared exactly. Elsewhere a difference between two
 * compared heights may be missed; since neither curve falls, it exceeds the greatest one found by
 * no more than {@link #unseenCubicMetres}.
 *
 * @param greatestUp the height at which the second curve lies highest above the first; a difference
 *     of zero or less when it nowhere does
 * @param greatestDown the height at which it lies deepest below; a difference of zero or more when
 *     it nowhere does
 * @param beyond the ranges in which they differ by more than the limit, from below
 * @param scope what was compared
 * @param unseenCubicMetres how much a difference between two compared heights may exceed the
 *     greatest ones, at most; zero for two tables with straight lines
 */
public record CurveComparison(
    CurveDifference greatestUp,
    CurveDifference greatestDown,
    List<DifferenceRange> beyond,
    Scope scope,
    double unseenCubicMetres) {

  /**
   * What was compared.
   *
   * @param fromMetres lowest height
   * @param toMetres greatest height
   * @param limitCubicMetres differences beyond it are listed
   * @param capacityCubicMetres of the first curve, for percentages
   */
  public record Scope(
      double fromMetres, double toMetres, double limitCubicMetres, double capacityCubicMetres) {}

  /** Copies the list. */
  public CurveComparison {
    beyond = List.copyOf(beyond);
  }

  /**
   * Compares two curves.
   *
   * @param first the reference; percentages are of its capacity
   * @param second the curve that is judged
   * @param limitCubicMetres zero or more; ranges that differ by more are listed
   * @throws IllegalArgumentException if the limit is none or no height lies in both curves
   */
  public static CurveComparison of(
      CapacityCurve first, CapacityCurve second, double limitCubicMetres) {
    Check.present("CurveComparison.first", first, "pass the reference curve");
    Check.present("CurveComparison.second", second, "pass the curve to judge");
    Check.notNegative(
        "CurveComparison.limit", limitCubicMetres, "m3", "give the difference that matters");
    return new CurveSearch(first, second, limitCubicMetres).compare();
  }

  /** Returns a difference in percent of the first curve's capacity. */
  public double percent(CurveDifference difference) {
    return 100 * difference.cubicMetres() / scope.capacityCubicMetres();
  }

  /** Returns whether no difference beyond the limit was found, nor may lie unseen between. */
  public boolean agree() {
    double greatest = Math.max(greatestUp.cubicMetres(), -greatestDown.cubicMetres());
    return greatest + unseenCubicMetres <= scope.limitCubicMetres();
  }

  /** Returns the comparison as plain text: both extremes, then the ranges beyond the limit. */
  public String text() {
    StringBuilder text = new StringBuilder();
    line(text, "compared from %.4f to %.4f m", scope.fromMetres(), scope.toMetres());
    line(text, "greatest above: %s", text(greatestUp));
    line(text, "greatest below: %s", text(greatestDown));
    line(text, "unseen between compared heights: at most %.4g m3", unseenCubicMetres);
    line(text, "ranges beyond %.4g m3: %d", scope.limitCubicMetres(), beyond.size());
    for (DifferenceRange range : beyond) {
      String greatest = text(range.greatest());
      line(text, "  %.4f to %.4f m, most %s", range.fromMetres(), range.toMetres(), greatest);
    }
    return text.toString();
  }

  private String text(CurveDifference difference) {
    return String.format(
        Locale.ROOT,
        "%+.4f m3 (%+.3f %% of capacity) at %.4f m",
        difference.cubicMetres(),
        percent(difference),
        difference.heightMetres());
  }

  private static void line(StringBuilder text, String format, Object... values) {
    text.append(String.format(Locale.ROOT, format, values)).append('\n');
  }
}
