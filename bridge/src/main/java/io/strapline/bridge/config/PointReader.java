package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.level.alarm.AlarmSettings;
import io.strapline.level.inventory.BulkDensity;
import io.strapline.level.inventory.ConstantDensity;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.loop.RawCounts;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.SourceAges;
import io.strapline.level.signal.SignalSettings;
import io.strapline.level.units.Dimension;
import io.strapline.level.vessel.CapacityCurve;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Reads one measuring point. Not thread-safe. */
final class PointReader {

  /** A block takes 100 registers and must end below register 65536. */
  static final int LARGEST_BLOCK = 654;

  private final String tag;
  private final Section section;

  /** Takes the section of the point with this tag. */
  PointReader(String tag, Section section) {
    this.tag = tag;
    this.section = section;
  }

  /** Returns the point; empty when it has a problem. */
  Optional<PointConfig> read() {
    String title = section.textOr("title", tag);
    String area = section.textOr("area", "");
    OptionalInt block = section.optionalInteger("modbus-block", 1, LARGEST_BLOCK);
    PointSettings.Builder settings = PointSettings.builder(tag);
    Optional<Geometry> geometry = geometry(settings);
    conditioning(settings);
    alarms(settings, geometry);
    Optional<SourceSettings> source = source(geometry);
    Optional<Accuracy> accuracy = accuracy(geometry);
    Optional<PointConfig> point =
        section.build(
            () ->
                new PointConfig(
                    title, area, settings.build(), source.orElseThrow(), block, accuracy));
    point.ifPresent(made -> new PointWarnings(section, made, geometry.orElseThrow()).note());
    return point;
  }

  private Optional<Geometry> geometry(PointSettings.Builder settings) {
    Optional<Mounting> mounting = mounting();
    Optional<CapacityCurve> vessel =
        section.section("vessel", Keys.VESSEL).flatMap(VesselReader::read);
    Optional<LoopRange> range = section.section("range", Keys.RANGE).flatMap(LoopReader::range);
    Optional<BulkDensity> density = density();
    mounting.ifPresent(settings::mounting);
    vessel.ifPresent(settings::vessel);
    range.ifPresent(settings::range);
    density.ifPresent(known -> put(known, settings));
    return section.isSound() && mounting.isPresent()
        ? Optional.of(new Geometry(mounting.get(), vessel, range))
        : Optional.empty();
  }

  private Optional<Mounting> mounting() {
    String what = "the reference height of the transmitter";
    Optional<Section> mounting = section.requiredSection("mounting", Keys.MOUNTING, what);
    return mounting.flatMap(
        keys -> {
          double height = keys.quantity("reference-height", Dimension.LENGTH);
          double angle = keys.quantityOr("beam-angle", Dimension.ANGLE, 0);
          return keys.build(() -> new Mounting(height, angle));
        });
  }

  private Optional<BulkDensity> density() {
    Optional<Section> material = section.section("material", Keys.MATERIAL);
    if (material.isPresent() && !section.has("vessel")) {
      section.error(
          "material", Reason.CONFLICT, "needs a vessel", "give the vessel, or remove material");
    }
    return material.flatMap(MaterialReader::read);
  }

  private static void put(BulkDensity density, PointSettings.Builder settings) {
    if (density instanceof ConstantDensity constant) {
      settings.density(constant.atSurface());
    } else {
      settings.bulkDensity(density);
    }
  }

  private Optional<Accuracy> accuracy(Optional<Geometry> geometry) {
    return section
        .section("accuracy", Keys.ACCURACY)
        .flatMap(keys -> new AccuracyReader(keys).read(geometry, constantDensity()));
  }

  private OptionalDouble constantDensity() {
    Optional<BulkDensity> constant = density().filter(ConstantDensity.class::isInstance);
    return constant.isPresent()
        ? OptionalDouble.of(constant.get().atSurface())
        : OptionalDouble.empty();
  }

  private void conditioning(PointSettings.Builder settings) {
    section.section("loop", Keys.LOOP).flatMap(LoopReader::limits).ifPresent(settings::loopLimits);
    Optional<RawCounts> counts =
        section.section("raw-counts", Keys.RAW_COUNTS).flatMap(LoopReader::rawCounts);
    counts.ifPresent(settings::rawCounts);
    Optional<SignalSettings> signal =
        section.section("signal", Keys.SIGNAL).flatMap(SignalReader::read);
    signal.ifPresent(settings::signal);
    Optional<SourceAges> ages = section.section("silence", Keys.SILENCE).flatMap(this::ages);
    ages.ifPresent(settings::ages);
  }

  private Optional<SourceAges> ages(Section silence) {
    double lastUsable =
        silence.quantityOr(
            "last-usable-after", Dimension.TIME, SourceAges.DEFAULT.lastUsableSeconds());
    double bad = silence.quantityOr("bad-after", Dimension.TIME, SourceAges.DEFAULT.badSeconds());
    return silence.build(() -> new SourceAges(lastUsable, bad));
  }

  private void alarms(PointSettings.Builder settings, Optional<Geometry> geometry) {
    Optional<AlarmSettings> alarms =
        section
            .section("alarms", Keys.ALARMS)
            .flatMap(alarm -> new AlarmReader(alarm, geometry).read());
    alarms.ifPresent(settings::alarms);
  }

  private Optional<SourceSettings> source(Optional<Geometry> geometry) {
    String what = "where the samples come from: simulated, replay or modbus";
    Optional<SourceSettings> source =
        section
            .requiredSection("source", Keys.SOURCE, what)
            .flatMap(keys -> SourceReader.read(keys, geometry));
    source.ifPresent(this::checkSignal);
    return source;
  }

  /** A current means nothing without a range, a raw count nothing without its counts. */
  private void checkSignal(SourceSettings source) {
    boolean counts = source.signal() == Signal.RAW_COUNT;
    if ((counts || source.signal() == Signal.CURRENT) && !section.has("range")) {
      section.error(
          "range", Reason.MISSING, "is missing", "say what 4 mA and 20 mA mean: " + rangeExample());
    }
    if (counts && !section.has("raw-counts")) {
      section.error(
          "raw-counts", Reason.MISSING, "is missing", "give the counts at 4 mA and at 20 mA");
    }
    if (!counts && section.has("raw-counts")) {
      section.warn(
          "raw-counts",
          Reason.CONFLICT,
          "is not used, since the source gives no raw count",
          "remove it, or set the source's signal to raw-count");
    }
  }

  private static String rangeExample() {
    return "{ measures: distance, at-4mA: 21.5 m, at-20mA: 1 m }";
  }
}
