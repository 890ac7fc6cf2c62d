package io.strapline.level.surface;

/** What a beam meets first. */
public enum BeamTarget {
  /** The surface of the filling. */
  SURFACE,
  /** A straight wall. */
  WALL,
  /** The wall of a hopper. */
  HOPPER,
  /** A flat floor or ledge. */
  FLOOR,
  /** The outlet of a hopper. */
  OUTLET,
  /** The inside of a roof that narrows upwards. */
  ROOF
}
