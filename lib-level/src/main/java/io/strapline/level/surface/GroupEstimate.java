package io.strapline.level.surface;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Level and volume from levels over places.
 *
 * @param levelMetres equivalent level
 * @param volumeCubicMetres volume
 * @param misfitMetres root mean square of the levels about a fitted plane; zero for area shares
 * @param cutByRoof whether a fitted plane reaches the roof
 */
record GroupEstimate(
    double levelMetres, double volumeCubicMetres, double misfitMetres, boolean cutByRoof) {

  /** Estimates by the method; a plane that the places do not allow gives way to area shares. */
  static GroupEstimate of(
      SolidsVessel vessel, GroupMethod method, List<PlanPoint> places, double[] levels) {
    return switch (method) {
      case AREA_WEIGHTED -> byArea(vessel, places, levels);
      case FITTED_PLANE ->
          new PlaneFit(places)
              .plane(levels)
              .map(plane -> byPlane(vessel, plane, places, levels))
              .orElseGet(() -> byArea(vessel, places, levels));
    };
  }

  private static GroupEstimate byPlane(
      SolidsVessel vessel, PlaneSurface plane, List<PlanPoint> places, double[] levels) {
    SurfaceContent content = SurfaceContent.of(vessel, plane);
    double squares = 0;
    for (int i = 0; i < levels.length; i++) {
      double off = levels[i] - plane.heightMetres(places.get(i));
      squares += off * off / levels.length;
    }
    return new GroupEstimate(
        content.equivalentLevelMetres(),
        content.volumeCubicMetres(),
        Math.sqrt(squares),
        content.cutByRoof());
  }

  private static GroupEstimate byArea(
      SolidsVessel vessel, List<PlanPoint> places, double[] levels) {
    List<Cell> cells = cells(vessel.plan(), places);
    boolean straight =
        IntStream.range(0, levels.length)
            .allMatch(
                i ->
                    levels[i] >= vessel.straightFromMetres()
                        && levels[i] <= vessel.straightToMetres());
    if (straight) {
      double level = mean(shares(cells), levels);
      return new GroupEstimate(level, vessel.curve().volumeCubicMetres(level), 0, false);
    }
    double volume = 0;
    for (int i = 0; i < levels.length; i++) {
      volume += VolumeIntegral.of(vessel, new FlatSurface(levels[i]), cells.get(i)).cubicMetres();
    }
    return new GroupEstimate(vessel.curve().heightMetres(volume), volume, 0, false);
  }

  /** Returns the part of the plan nearest to each place. */
  static double[] shares(Plan plan, List<PlanPoint> places) {
    return shares(cells(plan, places));
  }

  private static double[] shares(List<Cell> cells) {
    double[] areas = cells.stream().mapToDouble(Cell::area).toArray();
    double sum = 0;
    for (double area : areas) {
      sum += area;
    }
    for (int i = 0; i < areas.length; i++) {
      areas[i] /= sum;
    }
    return areas;
  }

  private static List<Cell> cells(Plan plan, List<PlanPoint> places) {
    return IntStream.range(0, places.size())
        .mapToObj(i -> new Cell(plan, places.get(i), without(places, i)))
        .toList();
  }

  private static List<PlanPoint> without(List<PlanPoint> places, int index) {
    return IntStream.range(0, places.size()).filter(i -> i != index).mapToObj(places::get).toList();
  }

  private static double mean(double[] shares, double[] levels) {
    double mean = 0;
    for (int i = 0; i < levels.length; i++) {
      mean += shares[i] * levels[i];
    }
    return mean;
  }

  /**
   * Returns what the levels at some places tell of another place: the fitted plane there if they
   * span one, else their mean.
   */
  static double predict(Plan plan, List<PlanPoint> places, double[] levels, PlanPoint at) {
    PlaneFit fit = new PlaneFit(places);
    Optional<PlaneSurface> plane = fit.spans(plan) ? fit.plane(levels) : Optional.empty();
    double mean = Arrays.stream(levels).average().orElse(0);
    return plane.map(p -> p.heightMetres(at)).orElse(mean);
  }
}
