package io.strapline.bridge.publish.opcua;

import io.strapline.bridge.publish.opcua.VariableSpec.Label;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.Quantity;
import io.strapline.level.units.CurrentUnit;
import io.strapline.level.units.LengthUnit;
import io.strapline.level.units.MassUnit;
import io.strapline.level.units.RatioUnit;
import io.strapline.level.units.VolumeUnit;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** The measured and computed values of a point, each with its last good value. Stateless. */
final class QuantityVariables {

  private QuantityVariables() {}

  /** Returns the variables of what the point is configured to compute. */
  static List<VariableSpec> of(PointSettings settings) {
    List<VariableSpec> specs = new ArrayList<>();
    for (Quantity quantity : configured(settings)) {
      specs.add(present(quantity, settings));
      specs.add(lastGood(quantity, settings));
    }
    return specs;
  }

  /**
   * Returns what the point computes. The strength of the return is among it when a least strength
   * is configured: then the device is known to tell it.
   */
  static Set<Quantity> configured(PointSettings settings) {
    EnumSet<Quantity> configured = EnumSet.of(Quantity.DISTANCE, Quantity.ULLAGE, Quantity.LEVEL);
    if (settings.range().isPresent()) {
      configured.addAll(EnumSet.of(Quantity.PERCENT, Quantity.LOOP_CURRENT));
    }
    if (settings.vessel().isPresent()) {
      configured.addAll(EnumSet.of(Quantity.PERCENT, Quantity.VOLUME, Quantity.FREE_VOLUME));
      if (settings.greatestMassKilograms().isPresent()) {
        configured.add(Quantity.MASS);
      }
    }
    if (settings.signal().gates().leastStrength().isPresent()) {
      configured.add(Quantity.STRENGTH);
    }
    return configured;
  }

  private static VariableSpec present(Quantity quantity, PointSettings settings) {
    return new VariableSpec(
        path(quantity),
        new Label(title(quantity), description(quantity)),
        ValueType.DOUBLE,
        scale(quantity, new Ranges(settings)),
        snapshot -> Values.of(snapshot.reading(quantity), snapshot.sourceTime()));
  }

  private static VariableSpec lastGood(Quantity quantity, PointSettings settings) {
    String title = "Last good " + title(quantity).toLowerCase(Locale.ROOT);
    return new VariableSpec(
        path(quantity) + ".LastGood",
        new Label(title, title + ", with the source time at which it was measured"),
        ValueType.DOUBLE,
        scale(quantity, new Ranges(settings)).map(scale -> Scale.of(scale.unit())),
        snapshot -> Values.of(snapshot.lastGood(quantity), snapshot.sourceTime()));
  }

  private static String path(Quantity quantity) {
    return switch (quantity) {
      case DISTANCE -> "Distance";
      case ULLAGE -> "Ullage";
      case LEVEL -> "Level";
      case PERCENT -> "Percent";
      case VOLUME -> "Volume";
      case FREE_VOLUME -> "FreeVolume";
      case MASS -> "Mass";
      case LOOP_CURRENT -> "LoopCurrent";
      case STRENGTH -> "Strength";
    };
  }

  private static String title(Quantity quantity) {
    return switch (quantity) {
      case DISTANCE -> "Distance";
      case ULLAGE -> "Ullage";
      case LEVEL -> "Level";
      case PERCENT -> "Percent";
      case VOLUME -> "Volume";
      case FREE_VOLUME -> "Free volume";
      case MASS -> "Mass";
      case LOOP_CURRENT -> "Loop current";
      case STRENGTH -> "Strength of the return";
    };
  }

  private static String description(Quantity quantity) {
    return switch (quantity) {
      case DISTANCE -> "Distance along the beam from the reference point to the surface";
      case ULLAGE -> "Plumb distance from the reference point down to the surface";
      case LEVEL -> "Height of the surface above the datum";
      case PERCENT -> "Percent of the measuring range; without one, of the vessel's height";
      case VOLUME -> "Volume below the surface";
      case FREE_VOLUME -> "Capacity of the vessel less the volume";
      case MASS -> "Volume times the configured density";
      case LOOP_CURRENT -> "Loop current, measured, or computed from the range";
      case STRENGTH -> "Strength of the return in the device's own unit";
    };
  }

  private static Optional<Scale> scale(Quantity quantity, Ranges ranges) {
    return switch (quantity) {
      case DISTANCE ->
          Optional.of(
              Scale.of(LengthUnit.METRE, ranges.distance())
                  .withInstrumentRange(ranges.measurableDistance()));
      case ULLAGE -> Optional.of(Scale.of(LengthUnit.METRE, ranges.ullage()));
      case LEVEL -> Optional.of(Scale.of(LengthUnit.METRE, ranges.level()));
      case PERCENT -> Optional.of(Scale.of(RatioUnit.PERCENT, new Span(0, 100)));
      case VOLUME, FREE_VOLUME -> Optional.of(Scale.of(VolumeUnit.CUBIC_METRE, ranges.volume()));
      case MASS -> Optional.of(Scale.of(MassUnit.KILOGRAM, ranges.mass()));
      case LOOP_CURRENT ->
          Optional.of(
              Scale.of(CurrentUnit.MILLIAMPERE, new Span(4, 20))
                  .withInstrumentRange(ranges.measurableCurrent()));
      case STRENGTH -> Optional.empty();
    };
  }
}
