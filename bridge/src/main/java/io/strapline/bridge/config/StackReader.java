package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.level.units.Dimension;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.CylinderSection;
import io.strapline.level.vessel.Head;
import io.strapline.level.vessel.HeadSection;
import io.strapline.level.vessel.PrismSection;
import io.strapline.level.vessel.PyramidSection;
import io.strapline.level.vessel.Rectangle;
import io.strapline.level.vessel.StackedVessel;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/** Reads a vessel of sections, bottom to top. Stateless. */
final class StackReader {

  /** A kind of section, the keys below it, and what reads them. */
  private record Part(
      Keys keys, Function<Section, Optional<? extends io.strapline.level.vessel.Section>> reader) {}

  private static final Map<String, Part> PARTS =
      Map.of(
          "cylinder", new Part(Keys.CYLINDER_SECTION, StackReader::cylinder),
          "cone", new Part(Keys.CONE_SECTION, StackReader::cone),
          "straight-walls", new Part(Keys.STRAIGHT_WALLS, StackReader::walls),
          "taper", new Part(Keys.TAPER, StackReader::taper),
          "transition", new Part(Keys.TRANSITION_SECTION, Transitions::between),
          "bottom-head", new Part(Keys.HEAD_SECTION, StackReader::bottomHead),
          "top-head", new Part(Keys.HEAD_SECTION, StackReader::topHead));

  private StackReader() {}

  /** Returns the vessel of the list at the key {@code stack}; empty after a problem. */
  static Optional<? extends CapacityCurve> read(Section vessel) {
    List<Section> items = vessel.sections("stack", Keys.STACK);
    List<? extends io.strapline.level.vessel.Section> sections =
        items.stream().flatMap(item -> part(item).stream()).toList();
    if (items.isEmpty() && vessel.isSound()) {
      vessel.error(
          "stack",
          Reason.MISSING,
          "has no section",
          "list the sections, the lowest first, each one of " + String.join(", ", names()));
    }
    return vessel.build(() -> StackedVessel.of(List.copyOf(sections)));
  }

  private static List<String> names() {
    return Keys.STACK.names();
  }

  private static Optional<? extends io.strapline.level.vessel.Section> part(Section item) {
    return item.one(names()).flatMap(kind -> part(item, kind));
  }

  private static Optional<? extends io.strapline.level.vessel.Section> part(
      Section item, String kind) {
    Part part = Objects.requireNonNull(PARTS.get(kind));
    return item.section(kind, part.keys()).flatMap(part.reader());
  }

  private static Optional<CylinderSection> cylinder(Section keys) {
    double diameter = keys.quantity("diameter", Dimension.LENGTH);
    double height = keys.quantity("height", Dimension.LENGTH);
    return keys.build(() -> new CylinderSection(diameter, height));
  }

  private static Optional<? extends io.strapline.level.vessel.Section> cone(Section keys) {
    double bottom = keys.quantity("bottom-diameter", Dimension.LENGTH);
    double top = keys.quantity("top-diameter", Dimension.LENGTH);
    return ConeReader.read(keys, bottom, top);
  }

  private static Optional<PrismSection> walls(Section keys) {
    double length = keys.quantity("length", Dimension.LENGTH);
    double width = keys.quantity("width", Dimension.LENGTH);
    double height = keys.quantity("height", Dimension.LENGTH);
    return keys.build(() -> new PrismSection(new Rectangle(length, width), height));
  }

  private static Optional<PyramidSection> taper(Section keys) {
    Optional<Rectangle> bottom = plan(keys, "bottom-length", "bottom-width");
    Optional<Rectangle> top = plan(keys, "top-length", "top-width");
    double height = keys.quantity("height", Dimension.LENGTH);
    return keys.build(() -> new PyramidSection(bottom.orElseThrow(), top.orElseThrow(), height));
  }

  private static Optional<Rectangle> plan(Section keys, String along, String across) {
    double length = keys.quantity(along, Dimension.LENGTH);
    double width = keys.quantity(across, Dimension.LENGTH);
    refuseNegative(keys, along, length);
    refuseNegative(keys, across, width);
    return keys.build(() -> new Rectangle(length, width));
  }

  private static void refuseNegative(Section keys, String key, double length) {
    if (length < 0) {
      keys.error(
          key,
          Reason.OUT_OF_RANGE,
          "must be zero or greater",
          "write the inside length, 0 m where walls meet");
    }
  }

  private static Optional<HeadSection> bottomHead(Section keys) {
    return head(keys, HeadSection::bottom);
  }

  private static Optional<HeadSection> topHead(Section keys) {
    return head(keys, HeadSection::top);
  }

  private interface Maker {
    HeadSection make(Head head, double diameterMetres);
  }

  private static Optional<HeadSection> head(Section keys, Maker maker) {
    Optional<Bore> bore = Bore.read(keys);
    Optional<Head> head = EndHead.head(keys, bore);
    if (head.isPresent() && head.get() instanceof Head.Flat) {
      keys.error(
          "form",
          Reason.CONFLICT,
          "has no height",
          "leave a flat end out of the stack, or choose another form");
    }
    return keys.build(() -> maker.make(head.orElseThrow(), bore.orElseThrow().insideMetres()));
  }
}
