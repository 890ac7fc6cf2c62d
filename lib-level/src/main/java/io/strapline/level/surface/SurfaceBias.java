package io.strapline.level.surface;

/**
 * By how much a flat reading would be wrong: what the beam's level says as if the surface were
 * flat, less what lies under the assumed surface. Positive: the flat reading overstates. Immutable.
 *
 * @param levelMetres error of the level
 * @param volumeCubicMetres error of the volume
 */
public record SurfaceBias(double levelMetres, double volumeCubicMetres) {}
