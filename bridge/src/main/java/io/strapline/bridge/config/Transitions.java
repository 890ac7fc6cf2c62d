package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.level.units.Dimension;
import io.strapline.level.vessel.Outline;
import io.strapline.level.vessel.TransitionSection;
import java.util.List;
import java.util.Optional;

/** Reads hoppers that lead from one outline to another, such as round to slot. Stateless. */
final class Transitions {

  private Transitions() {}

  /**
   * Returns the hopper below a vessel; empty after a problem.
   *
   * @param top the vessel's outline, unless it has problems of its own
   */
  static Optional<TransitionSection> below(Section keys, Optional<Outline> top) {
    double height = keys.quantity("height", Dimension.LENGTH);
    Optional<Outline> outlet = outline(keys, "outlet");
    if (outlet.isPresent() && top.isPresent()) {
      Outline narrow = outlet.get();
      Outline wide = top.get();
      String round = "outlet-diameter";
      refuseWide(keys, List.of("outlet-length", round), narrow.lengthMetres(), wide.lengthMetres());
      refuseWide(keys, List.of("outlet-width", round), narrow.widthMetres(), wide.widthMetres());
    }
    return top.flatMap(
        wide -> keys.build(() -> new TransitionSection(outlet.orElseThrow(), wide, height)));
  }

  /** Returns a section of a stack between two outlines; empty after a problem. */
  static Optional<TransitionSection> between(Section keys) {
    double height = keys.quantity("height", Dimension.LENGTH);
    Optional<Outline> bottom = outline(keys, "bottom");
    Optional<Outline> top = outline(keys, "top");
    return keys.build(() -> new TransitionSection(bottom.orElseThrow(), top.orElseThrow(), height));
  }

  /** A diameter, or length and width with rounded corners. */
  private static Optional<Outline> outline(Section keys, String end) {
    String round = end + "-diameter";
    String along = end + "-length";
    String across = end + "-width";
    String corner = end + "-corner-radius";
    if (keys.one(List.of(round, along)).isEmpty()) {
      return Optional.empty();
    }
    if (keys.has(round)) {
      refuseBeside(keys, round, across);
      refuseBeside(keys, round, corner);
      double diameter = keys.quantity(round, Dimension.LENGTH);
      return built(keys, round, () -> Outline.circle(diameter));
    }
    double length = keys.quantity(along, Dimension.LENGTH);
    double width = keys.quantity(across, Dimension.LENGTH);
    double radius = keys.quantityOr(corner, Dimension.LENGTH, 0);
    String told = keys.has(corner) ? corner : along;
    return built(keys, told, () -> new Outline(length, width, radius));
  }

  private static void refuseBeside(Section keys, String one, String other) {
    if (keys.has(other)) {
      keys.error(other, Reason.CONFLICT, "stands beside " + one, "keep one of the two");
    }
  }

  /** The library does not know of which end an outline is, so the problem is told at this key. */
  private static Optional<Outline> built(
      Section keys, String key, java.util.function.Supplier<Outline> maker) {
    if (!keys.isSound()) {
      return Optional.empty();
    }
    try {
      return Optional.of(maker.get());
    } catch (IllegalArgumentException refused) {
      LibraryError error = LibraryError.of(refused);
      keys.error(key, Reason.OUT_OF_RANGE, error.rule(), error.fix("correct the value"));
      return Optional.empty();
    }
  }

  /** Refuses an outlet that is wider than what stands on it, at the first of the keys given. */
  static void refuseWide(Section keys, List<String> among, double outlet, double above) {
    if (outlet > above) {
      keys.error(
          among.stream().filter(keys::has).findFirst().orElse(among.get(0)),
          Reason.CONFLICT,
          "must not be greater than the vessel above it, " + Figures.metres(above),
          "write the size of the outlet, which is the narrow end");
    }
  }
}
