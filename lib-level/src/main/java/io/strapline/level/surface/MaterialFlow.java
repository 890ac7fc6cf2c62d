package io.strapline.level.surface;

/** What the solids in a vessel are doing. */
public enum MaterialFlow {
  /** Solids come in and pile up under the fill point. */
  FILLING,
  /** Solids go out and a funnel opens over the draw point. */
  DRAWING,
  /** Neither; the surface keeps the shape of the last movement. */
  STILL
}
