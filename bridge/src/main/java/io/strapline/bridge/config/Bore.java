package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.level.units.Dimension;
import io.strapline.level.vessel.Head;
import io.strapline.level.vessel.Shell;
import java.util.Optional;

/**
 * How wide a round vessel is: its inside diameter, or its outside diameter and the thickness of its
 * wall. Immutable.
 *
 * @param outsideMetres outside diameter; the inside diameter when the wall is not given
 * @param wallMetres thickness of one wall, 0 when the inside diameter is given
 * @param insideMetres inside diameter
 */
record Bore(double outsideMetres, double wallMetres, double insideMetres) {

  private static final double ANY_LENGTH = 1;

  /** Reads {@code diameter}, or {@code outside-diameter} and {@code wall-thickness}. */
  static Optional<Bore> read(Section section) {
    if (section.has("outside-diameter")) {
      return outside(section);
    }
    if (section.has("wall-thickness")) {
      section.error(
          "wall-thickness",
          Reason.CONFLICT,
          "belongs to an outside diameter",
          "give outside-diameter instead of diameter, or remove wall-thickness");
    }
    double inside = section.quantity("diameter", Dimension.LENGTH);
    Optional<Shell> shell = section.build(() -> new Shell(inside, ANY_LENGTH));
    return shell.map(known -> new Bore(inside, 0, inside));
  }

  private static Optional<Bore> outside(Section section) {
    double outside = section.quantity("outside-diameter", Dimension.LENGTH);
    double wall = section.quantity("wall-thickness", Dimension.LENGTH);
    if (section.has("diameter")) {
      section.error(
          "diameter",
          Reason.CONFLICT,
          "stands beside outside-diameter",
          "keep one of the two; wall-thickness goes with outside-diameter");
    }
    Optional<Shell> shell = section.build(() -> Shell.fromOutside(outside, wall, ANY_LENGTH));
    return shell.map(known -> new Bore(outside, wall, known.diameterMetres()));
  }

  /** Returns a head whose ratios its standard gives of the outside diameter, for this bore. */
  Head ofOutside(Head.Torispherical standard) {
    return wallMetres == 0 ? standard : standard.onInsideOf(outsideMetres, wallMetres);
  }

  /** Returns a head of these inside radii. */
  Head torispherical(double crownMetres, double knuckleMetres) {
    return new Head.Torispherical(crownMetres / insideMetres, knuckleMetres / insideMetres);
  }
}
