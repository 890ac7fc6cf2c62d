package io.strapline.level.surface;

import io.strapline.level.reading.Reading;
import java.time.Instant;

/**
 * The corrected content of a vessel at one sample. Immutable. All readings carry the time of the
 * level and the worse quality of level, flow and vessel.
 *
 * @param equivalentLevel level above the datum, in metres, of a flat surface with the same volume
 * @param volume under the assumed surface, in cubic metres
 * @param highest highest level of the assumed surface, in metres: what an overfill alarm looks at
 * @param lowest lowest level of the assumed surface, in metres
 * @param bias by how much a flat reading would be wrong
 * @param uncertaintyCubicMetres by how much the volume may be too high because the beam cannot see
 *     the shape (bare wall under the beam, crater not yet at the beam); zero where the shape is
 *     settled; without the uncertainty of distance and angle. The capacity when the level is BAD
 * @param state shape in use, and the movement behind it
 */
public record SurfaceSnapshot(
    Reading equivalentLevel,
    Reading volume,
    Reading highest,
    Reading lowest,
    SurfaceBias bias,
    double uncertaintyCubicMetres,
    State state) {

  /**
   * What decides on the shape.
   *
   * @param shape the correction in use
   * @param flow what the solids are doing
   * @param shapeSince time of the sample from which the shape is in use
   */
  public record State(SurfaceShape shape, MaterialFlow flow, Instant shapeSince) {}
}
