package io.strapline.level.surface;

/** Who decides on the shape of the surface. */
public enum SurfaceRule {
  /** The flow: heap from filling, funnel or crater from drawing, the last shape while still. */
  BY_FLOW,
  /** The user: always a heap. */
  ALWAYS_HEAP,
  /** The user: always a funnel. */
  ALWAYS_FUNNEL,
  /** The user: always flat, no correction. */
  ALWAYS_FLAT
}
