package io.strapline.level.surface;

import java.util.List;
import java.util.Optional;

/**
 * Plane through levels over places by least squares: the normal equations about the centroid, any
 * textbook on linear regression with two variables. Immutable.
 */
final class PlaneFit {

  /** Part of the plan's size by which the places must stand off their best line. */
  static final double LEAST_WIDTH_SHARE = 0.05;

  private final List<PlanPoint> places;
  private final double meanX;
  private final double meanY;
  private double xx;
  private double xy;
  private double yy;

  PlaneFit(List<PlanPoint> places) {
    this.places = List.copyOf(places);
    meanX = places.stream().mapToDouble(PlanPoint::xMetres).average().orElse(0);
    meanY = places.stream().mapToDouble(PlanPoint::yMetres).average().orElse(0);
    for (PlanPoint place : places) {
      double x = place.xMetres() - meanX;
      double y = place.yMetres() - meanY;
      xx += x * x;
      xy += x * y;
      yy += y * y;
    }
  }

  /**
   * Returns the root mean square distance of the places from their best line: the smaller
   * eigenvalue of the scatter matrix.
   */
  double widthMetres() {
    double least = (xx + yy - Math.hypot(xx - yy, 2 * xy)) / 2;
    return Math.sqrt(Math.max(least, 0.0) / places.size());
  }

  /** Returns whether the places span the plan well enough for a plane. */
  boolean spans(Plan plan) {
    double size = Math.sqrt(plan.areaSquareMetres());
    return places.size() >= 3 && widthMetres() >= LEAST_WIDTH_SHARE * size;
  }

  /** Returns the plane; nothing if the places stand in line. */
  Optional<PlaneSurface> plane(double[] levels) {
    double mean = 0;
    for (double level : levels) {
      mean += level / levels.length;
    }
    double xz = 0;
    double yz = 0;
    for (int i = 0; i < levels.length; i++) {
      xz += (places.get(i).xMetres() - meanX) * (levels[i] - mean);
      yz += (places.get(i).yMetres() - meanY) * (levels[i] - mean);
    }
    double determinant = xx * yy - xy * xy;
    if (!(determinant > 0)) {
      return Optional.empty();
    }
    double slopeX = (xz * yy - yz * xy) / determinant;
    double slopeY = (yz * xx - xz * xy) / determinant;
    return Optional.of(new PlaneSurface(mean - slopeX * meanX - slopeY * meanY, slopeX, slopeY));
  }
}
