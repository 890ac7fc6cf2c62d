package io.strapline.level.plan;

import io.strapline.level.internal.Check;
import io.strapline.level.surface.Beam;
import io.strapline.level.surface.BeamView;
import io.strapline.level.surface.Obstacle;
import io.strapline.level.surface.SolidsVessel;
import java.util.List;

/**
 * What the aim of a beam is planned from. Immutable.
 *
 * @param vessel with its inside walls
 * @param mounting the beam where it will sit, with its spread; pointing straight down it must enter
 *     the vessel. Its own tilt and azimuth are of no effect
 * @param mostTiltDegrees greatest tilt that mounting and material allow, in [0, 80]
 * @param leastClearMetres gap that must stay between the edge of the beam and each obstacle; zero
 *     or more
 * @param obstacles in the vessel, the filling stream among them; may be empty
 */
public record BeamPlanBasis(
    SolidsVessel vessel,
    Beam mounting,
    double mostTiltDegrees,
    double leastClearMetres,
    List<Obstacle> obstacles) {

  /** Checks the numbers and that the beam enters the vessel. */
  public BeamPlanBasis {
    Check.present("BeamPlanBasis.vessel", vessel, "give the vessel");
    Check.present("BeamPlanBasis.mounting", mounting, "give the beam");
    Check.present("BeamPlanBasis.obstacles", obstacles, "give an empty list for none");
    obstacles = List.copyOf(obstacles);
    mostTiltDegrees =
        Check.between(
            "BeamPlanBasis.mostTilt",
            mostTiltDegrees,
            "deg",
            0,
            Beam.MOST_TILT_DEGREES,
            "give the greatest tilt that the mounting allows");
    leastClearMetres =
        Check.notNegative(
            "BeamPlanBasis.leastClear", leastClearMetres, "m", "give the gap to keep");
    BeamView.of(vessel, mounting.aimed(0, 0));
  }
}
