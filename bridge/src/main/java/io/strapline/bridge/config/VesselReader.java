package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.level.units.Dimension;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.PrismSection;
import io.strapline.level.vessel.PyramidSection;
import io.strapline.level.vessel.Rectangle;
import io.strapline.level.vessel.StackedVessel;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/** Reads the shape of a vessel. Stateless. */
final class VesselReader {

  /** A key of the vessel section, the keys below it, and what reads them. */
  private record Shape(Keys keys, Function<Section, Optional<? extends CapacityCurve>> reader) {}

  private static final Map<String, Shape> SHAPES =
      Map.of(
          "upright-cylinder", new Shape(Keys.UPRIGHT_CYLINDER, TankReader::upright),
          "rectangular-bin", new Shape(Keys.RECTANGULAR_BIN, VesselReader::rectangularBin),
          "lying-cylinder", new Shape(Keys.LYING_CYLINDER, TankReader::lying),
          "sphere", new Shape(Keys.SPHERE, TankReader::sphere),
          "capacity-table", new Shape(Keys.CAPACITY_TABLE, TableReader::read));

  private VesselReader() {}

  /** Returns the one shape that is given; empty after a problem. */
  static Optional<CapacityCurve> read(Section vessel) {
    return vessel.one(Keys.VESSEL.names()).flatMap(kind -> read(vessel, kind));
  }

  private static Optional<CapacityCurve> read(Section vessel, String kind) {
    if (kind.equals("stack")) {
      return StackReader.read(vessel).map(stack -> stack);
    }
    Shape shape = Objects.requireNonNull(SHAPES.get(kind));
    return vessel.section(kind, shape.keys()).flatMap(shape.reader());
  }

  private static Optional<? extends CapacityCurve> rectangularBin(Section section) {
    double length = section.quantity("length", Dimension.LENGTH);
    double width = section.quantity("width", Dimension.LENGTH);
    double height = section.quantity("height", Dimension.LENGTH);
    Optional<PrismSection> walls =
        section.build(() -> new PrismSection(new Rectangle(length, width), height));
    Optional<Section> bottom = bottom(section, Keys.BIN_BOTTOM, Keys.HOPPER);
    if (bottom.isEmpty()) {
      return section.build(
          () -> StackedVessel.rectangularBin(new Rectangle(length, width), height));
    }
    Optional<PyramidSection> hopper = walls.flatMap(above -> hopper(bottom.get(), above.plan()));
    return section.build(() -> StackedVessel.rectangularBinOnHopper(hopper.orElseThrow(), height));
  }

  private static Optional<PyramidSection> hopper(Section section, Rectangle plan) {
    double height = section.quantity("height", Dimension.LENGTH);
    double length = section.quantityOr("outlet-length", Dimension.LENGTH, 0);
    double width = section.quantityOr("outlet-width", Dimension.LENGTH, 0);
    refuseWide(section, "outlet-length", length, plan.lengthMetres());
    refuseWide(section, "outlet-width", width, plan.widthMetres());
    Optional<Rectangle> outlet = section.build(() -> new Rectangle(length, width));
    return section.build(() -> new PyramidSection(outlet.orElseThrow(), plan, height));
  }

  /** Opens what stands below the straight walls; empty for a flat bottom or after a problem. */
  private static Optional<Section> bottom(Section section, Keys kinds, Keys keys) {
    String kind = kinds.names().get(0);
    return section
        .section("bottom", kinds)
        .filter(bottom -> bottom.one(kinds.names()).isPresent())
        .flatMap(bottom -> bottom.section(kind, keys));
  }

  private static void refuseWide(Section section, String key, double outlet, double above) {
    if (outlet > above) {
      section.error(
          key,
          Reason.CONFLICT,
          "must not be greater than the vessel above it, " + Figures.metres(above),
          "write the size of the outlet, which is the narrow end");
    }
  }
}
