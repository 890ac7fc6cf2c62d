package io.strapline.bridge.cli;

import io.strapline.bridge.config.PointConfig;
import io.strapline.level.inventory.BulkDensity;
import io.strapline.level.loop.LoopLimits;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.loop.RawCounts;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.Quantity;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.table.CorrectedCurve;
import io.strapline.level.uncertainty.Contribution;
import io.strapline.level.uncertainty.UncertaintyBudget;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.TiltedTank;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Shows how each value of a snapshot follows from the one before it. Not thread-safe. */
final class EvalText {

  private static final int DECIMALS = 3;
  private static final double KILOGRAMS_PER_TONNE = 1000;

  private final PointConfig config;
  private final PointSettings point;
  private final Sample sample;
  private final PointSnapshot snapshot;
  private final TextTable table = new TextTable();

  /** Takes a point, the sample that it was given and the snapshot that came of it. */
  EvalText(PointConfig config, Sample sample, PointSnapshot snapshot) {
    this.config = config;
    point = config.point();
    this.sample = sample;
    this.snapshot = snapshot;
  }

  /** Returns the derivation, a step a line; of a BAD value, only why it is BAD. */
  List<String> lines() {
    addInput();
    if (!snapshot.level().quality().isBad()) {
      addDistance();
      addRange();
      addContents();
      EvalUncertainty.of(config, snapshot).ifPresent(this::addUncertainty);
    }
    addVerdict();
    List<String> lines = new ArrayList<>();
    lines.add(config.tag() + "  " + config.title());
    lines.addAll(table.lines());
    return lines;
  }

  private void addInput() {
    table.row(name(), value(), "given");
    point.rawCounts().filter(counts -> isCount()).ifPresent(this::addCurrent);
    snapshot.band().ifPresent(band -> table.row("band", band.name(), bandStep()));
  }

  private void addCurrent(RawCounts counts) {
    table.row(
        "current",
        Figures.of(counts.currentMilliamps(sample.value()), DECIMALS) + " mA",
        "4 mA at count "
            + Figures.plain(counts.countAt4())
            + ", 20 mA at count "
            + Figures.plain(counts.countAt20()));
  }

  private String name() {
    return switch (sample.kind()) {
      case DISTANCE -> "distance";
      case LEVEL -> "level";
      case CURRENT -> "current";
      case RAW_COUNT -> "raw count";
      case NO_RETURN -> "no return";
    };
  }

  private String value() {
    return switch (sample.kind()) {
      case DISTANCE, LEVEL -> Figures.of(sample.value(), DECIMALS) + " m";
      case CURRENT -> Figures.of(sample.value(), DECIMALS) + " mA";
      case RAW_COUNT -> Figures.plain(sample.value());
      case NO_RETURN -> "";
    };
  }

  private boolean isCount() {
    return sample.kind() == Sample.Kind.RAW_COUNT;
  }

  private String bandStep() {
    LoopLimits limits = point.loopLimits();
    return "measuring from "
        + Figures.plain(limits.underRange())
        + " to "
        + Figures.plain(limits.overRange())
        + " mA, failure at or below "
        + Figures.plain(limits.failureLow())
        + " and at or above "
        + Figures.plain(limits.failureHigh())
        + " mA";
  }

  private void addDistance() {
    if (sample.kind() != Sample.Kind.DISTANCE) {
      add(Quantity.DISTANCE, "distance", "m", distanceStep());
    }
    Mounting mounting = point.mounting();
    double angle = mounting.beamAngleDegrees();
    String slant = angle == 0 ? ", the beam is plumb" : " * cos(" + Figures.plain(angle) + " deg)";
    add(Quantity.ULLAGE, "ullage", "m", shown(Quantity.DISTANCE, "m") + slant);
    if (sample.kind() != Sample.Kind.LEVEL) {
      String reference = Figures.of(mounting.referenceHeightMetres(), DECIMALS) + " m - ";
      add(Quantity.LEVEL, "level", "m", reference + shown(Quantity.ULLAGE, "m"));
    }
    point.vessel().ifPresent(this::addGaugeDepth);
  }

  /** What a dipstick beside the transmitter would read. */
  private void addGaugeDepth(CapacityCurve curve) {
    CapacityCurve vessel = curve instanceof CorrectedCurve corrected ? corrected.vessel() : curve;
    OptionalDouble level = snapshot.level().usable();
    if (level.isPresent() && vessel instanceof TiltedTank tank) {
      double depth = tank.gaugeDepth(level.getAsDouble());
      table.row(
          "depth at gauge",
          Figures.of(depth, DECIMALS) + " m",
          "square to the axis, above the bottom line at the gauge");
    }
  }

  private String distanceStep() {
    return switch (sample.kind()) {
      case DISTANCE, NO_RETURN -> "";
      case LEVEL -> "(reference height - level) / cos(beam angle)";
      case CURRENT, RAW_COUNT -> point.range().map(this::rangeStep).orElse("no range configured");
    };
  }

  private String rangeStep(LoopRange range) {
    String what = range.measure() == LoopRange.Measure.LEVEL ? "from the level " : "";
    return String.format(
        Locale.ROOT,
        "%s%s m + (%s - 4 mA) / 16 mA * (%s m - %s m)",
        what,
        Figures.of(range.lowerMetres(), DECIMALS),
        shown(Quantity.LOOP_CURRENT, "mA"),
        Figures.of(range.upperMetres(), DECIMALS),
        Figures.of(range.lowerMetres(), DECIMALS));
  }

  private void addRange() {
    boolean ranged = point.range().isPresent();
    add(Quantity.PERCENT, "percent", "%", ranged ? "of the range" : "of the vessel's height");
    if (snapshot.band().isEmpty()) {
      add(Quantity.LOOP_CURRENT, "current", "mA", "what the loop would carry");
    }
  }

  private void addContents() {
    point
        .vessel()
        .ifPresent(
            vessel -> {
              add(Quantity.VOLUME, "volume", "m3", Shapes.describe(vessel));
              String capacity = Figures.of(vessel.capacityCubicMetres(), DECIMALS);
              add(Quantity.FREE_VOLUME, "free volume", "m3", capacity + " m3 - volume");
            });
    point
        .densityKilogramsPerCubicMetre()
        .ifPresent(density -> addMass("volume * " + Figures.plain(density) + " kg/m3"));
    point.bulkDensity().ifPresent(density -> addMass(packed(density)));
  }

  private void addMass(String step) {
    Optional<Reading> mass = snapshot.reading(Quantity.MASS);
    mass.ifPresent(reading -> table.row("mass", text(reading, 1 / KILOGRAMS_PER_TONNE, "t"), step));
  }

  private String packed(BulkDensity density) {
    double depth = Math.max(snapshot.level().value(), 0);
    double volume = snapshot.reading(Quantity.VOLUME).map(Reading::value).orElse(0.0);
    double mass = snapshot.reading(Quantity.MASS).map(Reading::value).orElse(0.0);
    String step =
        String.format(
            Locale.ROOT,
            "integral over the depth, %.1f kg/m3 at the surface, %.1f kg/m3 at the bottom",
            density.atSurface(),
            density.atDepth(depth));
    return volume > 0
        ? step + String.format(Locale.ROOT, ", mean %.1f kg/m3", mass / volume)
        : step;
  }

  private void addUncertainty(EvalUncertainty known) {
    addBudget("level +/-", known.level(), 1, "m");
    known.volume().ifPresent(budget -> addBudget("volume +/-", budget, 1, "m3"));
    known.mass().ifPresent(budget -> addBudget("mass +/-", budget, 1 / KILOGRAMS_PER_TONNE, "t"));
    List<String> doubts = known.volume().map(UncertaintyBudget::doubts).orElse(List.of());
    doubts.forEach(doubt -> table.row("doubtful", "", doubt));
  }

  private void addBudget(String name, UncertaintyBudget budget, double factor, String unit) {
    String value = Figures.of(budget.expanded() * factor, DECIMALS) + " " + unit;
    table.row(name, value, "k = " + Figures.plain(budget.coverageFactor()) + "; " + shares(budget));
  }

  /** Names the sources by their share of the variance, the greatest first. */
  private static String shares(UncertaintyBudget budget) {
    return budget.contributions().stream()
        .sorted(Comparator.comparingDouble(Contribution::inResult).reversed())
        .map(line -> line.name() + " " + Figures.of(budget.sharePercent(line), 0) + " %")
        .collect(Collectors.joining(", "));
  }

  private void addVerdict() {
    Quality quality = snapshot.level().quality();
    table.row("quality", quality.level().name(), quality.isGood() ? "" : quality.cause().text());
    table.row("status", snapshot.status().name(), "NE 107");
  }

  private void add(Quantity quantity, String name, String unit, String step) {
    snapshot.reading(quantity).ifPresent(reading -> table.row(name, text(reading, 1, unit), step));
  }

  private String shown(Quantity quantity, String unit) {
    return snapshot.reading(quantity).map(reading -> text(reading, 1, unit)).orElse("-");
  }

  /** A BAD value is not shown: somebody might use it. */
  private static String text(Reading reading, double factor, String unit) {
    return reading.usable().isPresent()
        ? Figures.of(reading.value() * factor, DECIMALS) + " " + unit
        : "- (BAD)";
  }
}
