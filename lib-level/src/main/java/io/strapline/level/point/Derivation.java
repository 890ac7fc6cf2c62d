package io.strapline.level.point;

import io.strapline.level.inventory.MassCurve;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.vessel.CapacityCurve;
import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Makes level, volume and the rest of a distance. Immutable. */
final class Derivation {

  private final Mounting mounting;
  private final @Nullable CapacityCurve vessel;
  private final @Nullable LoopRange range;
  private final @Nullable Double density;
  private final @Nullable MassCurve packed;

  Derivation(PointSettings settings) {
    mounting = settings.mounting();
    vessel = settings.vessel().orElse(null);
    range = settings.range().orElse(null);
    density =
        settings.densityKilogramsPerCubicMetre().isPresent()
            ? settings.densityKilogramsPerCubicMetre().getAsDouble()
            : null;
    packed =
        settings
            .bulkDensity()
            .flatMap(known -> settings.vessel().map(curve -> MassCurve.of(curve, known)))
            .orElse(null);
  }

  /** Returns the level that belongs to a distance; uncertain when it lies outside the vessel. */
  Reading level(Reading distance) {
    double level = mounting.levelMetres(distance.value());
    boolean inside = vessel == null || vessel.covers(level);
    return distance.derived(level, inside ? Quality.GOOD : Quality.uncertain(Cause.OUTSIDE_VESSEL));
  }

  /** Returns all quantities that follow from the distance, in the order of {@link Quantity}. */
  EnumMap<Quantity, Reading> readings(Reading distance) {
    EnumMap<Quantity, Reading> readings = new EnumMap<>(Quantity.class);
    Reading level = level(distance);
    readings.put(Quantity.DISTANCE, distance);
    readings.put(
        Quantity.ULLAGE, distance.derived(mounting.ullageMetres(distance.value()), Quality.GOOD));
    readings.put(Quantity.LEVEL, level);
    putRange(readings, distance, level);
    putVolumes(readings, level);
    return readings;
  }

  private void putRange(Map<Quantity, Reading> readings, Reading distance, Reading level) {
    if (range != null) {
      double ranged =
          range.measure() == LoopRange.Measure.DISTANCE ? distance.value() : level.value();
      readings.put(Quantity.PERCENT, distance.derived(range.percent(ranged), Quality.GOOD));
      readings.put(
          Quantity.LOOP_CURRENT, distance.derived(range.currentMilliamps(ranged), Quality.GOOD));
    } else if (vessel != null) {
      double percent = 100 * level.value() / vessel.maxHeightMetres();
      readings.put(Quantity.PERCENT, level.derived(percent, Quality.GOOD));
    }
  }

  private void putVolumes(Map<Quantity, Reading> readings, Reading level) {
    if (vessel == null) {
      return;
    }
    double volume = vessel.volumeCubicMetres(level.value());
    readings.put(Quantity.VOLUME, level.derived(volume, Quality.GOOD));
    readings.put(
        Quantity.FREE_VOLUME, level.derived(vessel.capacityCubicMetres() - volume, Quality.GOOD));
    if (density != null) {
      readings.put(Quantity.MASS, level.derived(volume * density, Quality.GOOD));
    } else if (packed != null) {
      double mass = packed.atHeight(level.value()).kilograms();
      readings.put(Quantity.MASS, level.derived(mass, Quality.GOOD));
    }
  }

  /**
   * Returns a reading of every configured quantity with the value zero, for before the first good
   * sample.
   */
  EnumMap<Quantity, Reading> nothing(Reading blank) {
    EnumMap<Quantity, Reading> readings = readings(blank);
    readings.replaceAll((quantity, reading) -> new Reading(0, blank.quality(), blank.time()));
    return readings;
  }
}
