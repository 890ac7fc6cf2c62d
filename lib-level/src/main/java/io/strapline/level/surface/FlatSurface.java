package io.strapline.level.surface;

import io.strapline.level.internal.Check;
import java.util.OptionalDouble;

/**
 * A level surface. Immutable.
 *
 * @param levelMetres above the datum; finite
 */
public record FlatSurface(double levelMetres) implements Surface {

  /** Checks the level. */
  public FlatSurface {
    levelMetres = Check.finite("FlatSurface.level", levelMetres, "m", "give the level");
  }

  @Override
  public double height(double x, double y) {
    return levelMetres;
  }

  @Override
  public double steepestRadians() {
    return 0;
  }

  @Override
  public double highestMetres(Plan plan) {
    return levelMetres;
  }

  @Override
  public double lowestMetres(Plan plan) {
    return levelMetres;
  }

  @Override
  public double[] crossings(Beam beam) {
    return new double[] {beam.distanceMetres(levelMetres)};
  }

  @Override
  public OptionalDouble meanMetres(Plan plan) {
    return OptionalDouble.of(levelMetres);
  }

  @Override
  public String describe() {
    return "flat at " + levelMetres + " m";
  }
}
