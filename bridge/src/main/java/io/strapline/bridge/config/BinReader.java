package io.strapline.bridge.config;

import io.strapline.level.units.Dimension;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.Outline;
import io.strapline.level.vessel.PrismSection;
import io.strapline.level.vessel.PyramidSection;
import io.strapline.level.vessel.Rectangle;
import io.strapline.level.vessel.SlopedFloorSection;
import io.strapline.level.vessel.StackedVessel;
import io.strapline.level.vessel.TransitionSection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads a bin with right angles and what stands below its walls. Stateless. */
final class BinReader {

  private BinReader() {}

  /** Returns the bin; empty after a problem. */
  static Optional<? extends CapacityCurve> read(Section section) {
    double length = section.quantity("length", Dimension.LENGTH);
    double width = section.quantity("width", Dimension.LENGTH);
    double height = section.quantity("height", Dimension.LENGTH);
    Optional<PrismSection> walls =
        section.build(() -> new PrismSection(new Rectangle(length, width), height));
    Optional<? extends io.strapline.level.vessel.Section> bottom =
        walls.flatMap(
            straight ->
                section
                    .section("bottom", Keys.BIN_BOTTOM)
                    .flatMap(keys -> bottom(keys, straight.plan())));
    return section.build(
        () ->
            StackedVessel.of(
                Stream.<io.strapline.level.vessel.Section>concat(
                        bottom.stream(), Stream.of(walls.orElseThrow()))
                    .toList()));
  }

  private static Optional<? extends io.strapline.level.vessel.Section> bottom(
      Section bottom, Rectangle plan) {
    Optional<String> kind = bottom.one(Keys.BIN_BOTTOM.names());
    if (kind.isEmpty()) {
      return Optional.empty();
    }
    return switch (kind.get()) {
      case "hopper" -> bottom.section("hopper", Keys.HOPPER).flatMap(keys -> hopper(keys, plan));
      case "sloped-floor" ->
          bottom.section("sloped-floor", Keys.SLOPED_FLOOR).flatMap(keys -> floor(keys, plan));
      default ->
          bottom.section("transition", Keys.TRANSITION).flatMap(keys -> transition(keys, plan));
    };
  }

  private static Optional<PyramidSection> hopper(Section section, Rectangle plan) {
    double height = section.quantity("height", Dimension.LENGTH);
    double length = section.quantityOr("outlet-length", Dimension.LENGTH, 0);
    double width = section.quantityOr("outlet-width", Dimension.LENGTH, 0);
    Transitions.refuseWide(section, List.of("outlet-length"), length, plan.lengthMetres());
    Transitions.refuseWide(section, List.of("outlet-width"), width, plan.widthMetres());
    Optional<Rectangle> outlet = section.build(() -> new Rectangle(length, width));
    return section.build(() -> new PyramidSection(outlet.orElseThrow(), plan, height));
  }

  private static Optional<SlopedFloorSection> floor(Section section, Rectangle plan) {
    double along = section.quantityOr("rise-along-length", Dimension.LENGTH, 0);
    double across = section.quantityOr("rise-along-width", Dimension.LENGTH, 0);
    return section.build(() -> new SlopedFloorSection(plan, along, across));
  }

  private static Optional<TransitionSection> transition(Section section, Rectangle plan) {
    Outline top = Outline.rectangle(plan.lengthMetres(), plan.widthMetres());
    return Transitions.below(section, Optional.of(top));
  }
}
