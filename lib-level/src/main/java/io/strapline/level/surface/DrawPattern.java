package io.strapline.level.surface;

/** What drawing makes of a heap. */
public enum DrawPattern {
  /** The whole surface becomes a funnel at once: small vessels, steep hoppers. */
  WHOLE_FUNNEL,
  /** A crater grows into the heap, whose rest stands still: wide silos, core flow. */
  CRATER
}
