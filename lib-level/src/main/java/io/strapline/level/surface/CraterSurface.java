package io.strapline.level.surface;

import io.strapline.level.internal.Check;
import java.util.OptionalDouble;

/**
 * A heap with a crater drawn into it: the lower of the heap and the funnel over each place.
 * Immutable.
 *
 * @param heap what was filled
 * @param funnel what is being drawn
 */
public record CraterSurface(ConeSurface heap, ConeSurface funnel) implements Surface {

  /** Refuses cones of the wrong sense. */
  public CraterSurface {
    Check.present("CraterSurface.heap", heap, "give the heap");
    Check.present("CraterSurface.funnel", funnel, "give the funnel");
    if (heap.slope() > 0 || funnel.slope() < 0) {
      throw Check.error(
          "CraterSurface.slopes",
          heap.slope() + " and " + funnel.slope(),
          "m/m",
          "the heap must not rise and the funnel must not fall away from its axis",
          "give the heap first, then the funnel");
    }
  }

  @Override
  public double height(double x, double y) {
    return Math.min(heap.height(x, y), funnel.height(x, y));
  }

  @Override
  public double steepestRadians() {
    return Math.max(heap.steepestRadians(), funnel.steepestRadians());
  }

  @Override
  public double highestMetres(Plan plan) {
    return Math.min(heap.highestMetres(plan), funnel.highestMetres(plan));
  }

  @Override
  public double lowestMetres(Plan plan) {
    return Math.min(heap.lowestMetres(plan), funnel.lowestMetres(plan));
  }

  @Override
  public double[] crossings(Beam beam) {
    double[] first = heap.crossings(beam);
    double[] second = funnel.crossings(beam);
    double[] all = new double[first.length + second.length];
    System.arraycopy(first, 0, all, 0, first.length);
    System.arraycopy(second, 0, all, first.length, second.length);
    return all;
  }

  @Override
  public OptionalDouble meanMetres(Plan plan) {
    return OptionalDouble.empty();
  }

  @Override
  public String describe() {
    return heap.describe() + "; " + funnel.describe();
  }
}
