package io.strapline.level.surface;

import io.strapline.level.internal.Check;

/**
 * An upright box with sides along x and y: beam of the structure, walkway, baffle. Immutable.
 *
 * @param name not blank
 * @param low corner with the smaller x and y
 * @param high corner with the greater x and y
 * @param span heights of its lower and upper end
 */
public record BoxObstacle(String name, PlanPoint low, PlanPoint high, HeightSpan span)
    implements Obstacle {

  /** Checks the fields. */
  public BoxObstacle {
    Check.text("BoxObstacle.name", name, "name the obstacle");
    Check.present("BoxObstacle.low", low, "give the corner with the smaller x and y");
    Check.present("BoxObstacle.high", high, "give the corner with the greater x and y");
    Check.present("BoxObstacle.span", span, "give both ends");
    if (!(low.xMetres() <= high.xMetres() && low.yMetres() <= high.yMetres())) {
      throw Check.error(
          "BoxObstacle.low",
          low.describe(),
          "m",
          "must not lie beyond high " + high.describe(),
          "exchange the corners");
    }
  }

  @Override
  public double distanceMetres(PlanPoint place, double heightMetres) {
    double x = outside(place.xMetres(), low.xMetres(), high.xMetres());
    double y = outside(place.yMetres(), low.yMetres(), high.yMetres());
    return Math.hypot(Math.hypot(x, y), span.outsideMetres(heightMetres));
  }

  private static double outside(double value, double low, double high) {
    return Math.max(Math.max(low - value, value - high), 0.0);
  }
}
