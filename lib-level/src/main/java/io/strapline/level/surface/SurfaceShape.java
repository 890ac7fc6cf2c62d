package io.strapline.level.surface;

/** Which correction is in use. */
public enum SurfaceShape {
  /** Level surface: no correction. */
  FLAT,
  /** Cone up under the fill point. */
  HEAP,
  /** Cone down over the draw point, over the whole plan. */
  FUNNEL,
  /** Funnel drawn into the last heap, which still stands around it. */
  CRATER
}
