package io.strapline.level.vessel;

import io.strapline.level.internal.Check;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.ToDoubleFunction;

/**
 * Puts a vessel together from measurements taken at several heights: level areas, or lengths and
 * widths. The escape for shapes that have no name. Stateless.
 */
public final class SurveyedProfile {

  private SurveyedProfile() {}

  /**
   * The level area at a height.
   *
   * @param heightMetres above the datum
   * @param squareMetres inside area, zero or greater
   */
  public record AreaAt(double heightMetres, double squareMetres) {}

  /**
   * Length and width at a height.
   *
   * @param heightMetres above the datum
   * @param plan inside length and width
   */
  public record PlanAt(double heightMetres, Rectangle plan) {}

  /**
   * Returns the vessel whose area changes along a straight line from row to row, so that its volume
   * is quadratic between rows.
   *
   * @param rows two or more, the first at height 0, heights rising; a height given twice makes a
   *     step
   * @throws IllegalArgumentException if a row breaks these rules; the message names the row
   */
  public static StackedVessel ofAreas(List<AreaAt> rows) {
    return stack(
        rows,
        AreaAt::heightMetres,
        (below, above) ->
            new AreaSection(
                below.squareMetres(),
                above.squareMetres(),
                above.heightMetres() - below.heightMetres()));
  }

  /**
   * Returns the vessel whose length and width change along straight lines from row to row, so that
   * its area is quadratic between rows.
   *
   * @param rows two or more, the first at height 0, heights rising; a height given twice makes a
   *     step
   * @throws IllegalArgumentException if a row breaks these rules; the message names the row
   */
  public static StackedVessel ofPlans(List<PlanAt> rows) {
    return stack(
        rows,
        PlanAt::heightMetres,
        (below, above) ->
            new PyramidSection(
                below.plan(), above.plan(), above.heightMetres() - below.heightMetres()));
  }

  private static <T> StackedVessel stack(
      List<T> rows, ToDoubleFunction<T> height, BiFunction<T, T, Section> between) {
    checkHeights(rows.stream().mapToDouble(height).toArray());
    List<Section> sections = new ArrayList<>();
    for (int i = 1; i < rows.size(); i++) {
      if (height.applyAsDouble(rows.get(i)) > height.applyAsDouble(rows.get(i - 1))) {
        sections.add(section(i + 1, rows.get(i - 1), rows.get(i), between));
      }
    }
    return StackedVessel.of(sections);
  }

  private static <T> Section section(int row, T below, T above, BiFunction<T, T, Section> between) {
    try {
      return between.apply(below, above);
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException("SurveyedProfile row " + row + ": " + e.getMessage(), e);
    }
  }

  private static void checkHeights(double[] heights) {
    if (heights.length < 2) {
      throw Check.error(
          "SurveyedProfile.rows",
          heights.length,
          "",
          "must be two or more",
          "give a row at the bottom and one at the top");
    }
    if (heights[0] != 0) {
      throw Check.error(
          "SurveyedProfile.height(row 1)",
          heights[0],
          "m",
          "must be 0",
          "measure from the lowest inside point");
    }
    for (int i = 1; i < heights.length; i++) {
      if (!(heights[i] >= heights[i - 1] && Double.isFinite(heights[i]))) {
        throw Check.error(
            "SurveyedProfile.height(row " + (i + 1) + ")",
            heights[i],
            "m",
            "must not be less than " + heights[i - 1] + " m, that of the row before",
            "give the rows bottom to top");
      }
    }
    if (heights[heights.length - 1] == 0) {
      throw Check.error(
          "SurveyedProfile.height(row " + heights.length + ")",
          0,
          "m",
          "must be greater than 0 in the last row",
          "give the height of the top");
    }
  }
}
