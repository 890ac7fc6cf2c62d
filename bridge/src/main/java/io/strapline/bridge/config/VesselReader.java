package io.strapline.bridge.config;

import io.strapline.level.vessel.CapacityCurve;
import java.util.List;
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
          "rectangular-bin", new Shape(Keys.RECTANGULAR_BIN, BinReader::read),
          "lying-cylinder", new Shape(Keys.LYING_CYLINDER, TankReader::lying),
          "sphere", new Shape(Keys.SPHERE, TankReader::sphere),
          "capacity-table", new Shape(Keys.CAPACITY_TABLE, TableReader::read));

  private VesselReader() {}

  /** Returns the one shape that is given; empty after a problem. */
  static Optional<CapacityCurve> read(Section vessel) {
    List<String> shapes =
        Keys.VESSEL.names().stream().filter(key -> !key.equals("deadwood")).toList();
    Optional<CapacityCurve> shape = vessel.one(shapes).flatMap(kind -> read(vessel, kind));
    return DeadwoodReader.corrected(vessel, shape);
  }

  private static Optional<CapacityCurve> read(Section vessel, String kind) {
    if (kind.equals("stack")) {
      return StackReader.read(vessel).map(stack -> stack);
    }
    if (kind.equals("profile")) {
      return ProfileReader.read(vessel).map(stack -> stack);
    }
    Shape shape = Objects.requireNonNull(SHAPES.get(kind));
    return vessel.section(kind, shape.keys()).flatMap(shape.reader());
  }
}
