package io.strapline.level.surface;

/**
 * Where a beam lands. Immutable.
 *
 * @param target what it meets
 * @param distanceMetres along the beam from the reference point; zero when the reference point is
 *     buried
 * @param place in plan
 * @param levelMetres above the datum
 * @param widthMetres of the beam there
 */
public record BeamSpot(
    BeamTarget target,
    double distanceMetres,
    PlanPoint place,
    double levelMetres,
    double widthMetres) {}
