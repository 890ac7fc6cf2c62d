package io.strapline.bridge.testing;

import io.strapline.bridge.config.ModbusSettings;
import io.strapline.bridge.config.OpcUaSettings;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;

/** Plants and points for tests. Stateless. */
public final class Plants {

  private Plants() {}

  /** Returns a plant of Kestrel Quay with both servers off. */
  public static PlantSettings quiet(List<PointConfig> points) {
    return new PlantSettings(
        "Kestrel Quay",
        Path.of("kestrel-quay.yaml"),
        Path.of("strapline-data"),
        new OpcUaSettings(false, "127.0.0.1", 0, true, List.of()),
        new ModbusSettings(
            false,
            "127.0.0.1",
            0,
            Set.of(1),
            ModbusSettings.WordOrder.ABCD,
            ModbusSettings.BadValue.NAN),
        points);
  }

  /** Returns a point of this library configuration and source. */
  public static PointConfig point(PointSettings point, SourceSettings source) {
    return new PointConfig("test point", "quay", point, source, OptionalInt.empty());
  }

  /** Returns a builder of a point whose transmitter looks straight down from this height. */
  public static PointSettings.Builder plumb(String tag, double referenceHeightMetres) {
    return PointSettings.builder(tag).mounting(Mounting.plumb(referenceHeightMetres));
  }
}
