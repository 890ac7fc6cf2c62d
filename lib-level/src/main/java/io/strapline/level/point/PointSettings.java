package io.strapline.level.point;

import io.strapline.level.alarm.AlarmSettings;
import io.strapline.level.diagnosis.Baseline;
import io.strapline.level.diagnosis.DiagnosisSettings;
import io.strapline.level.internal.Check;
import io.strapline.level.inventory.BulkDensity;
import io.strapline.level.inventory.MassCurve;
import io.strapline.level.loop.LoopLimits;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.loop.RawCounts;
import io.strapline.level.reading.StatusPrecedence;
import io.strapline.level.signal.RateSettings;
import io.strapline.level.signal.SignalChain;
import io.strapline.level.signal.SignalSettings;
import io.strapline.level.vessel.CapacityCurve;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Everything that a measuring point needs to know. Immutable; made by {@link #builder(String)}. */
public final class PointSettings {

  private final String tag;
  private final Mounting mounting;
  private final @Nullable CapacityCurve vessel;
  private final @Nullable LoopRange range;
  private final LoopLimits loopLimits;
  private final @Nullable RawCounts rawCounts;
  private final SignalSettings signal;
  private final OptionalDouble densityKilogramsPerCubicMetre;
  private final @Nullable BulkDensity bulkDensity;
  private final AlarmSettings alarms;
  private final SourceAges ages;
  private final StatusPrecedence precedence;
  private final DiagnosisSettings diagnosis;
  private final Baseline baseline;

  private PointSettings(Builder from) {
    tag = Check.text("PointSettings.tag", from.tag, "give the tag of the measuring point");
    mounting =
        Check.present(
            "PointSettings.mounting",
            from.mounting,
            "give the reference height of the transmitter");
    vessel = from.vessel;
    range = from.range;
    loopLimits = from.loopLimits;
    rawCounts = from.rawCounts;
    signal = from.signal;
    densityKilogramsPerCubicMetre = from.density;
    bulkDensity = from.bulkDensity;
    if (bulkDensity != null && densityKilogramsPerCubicMetre.isPresent()) {
      throw Check.error(
          "PointSettings.density",
          densityKilogramsPerCubicMetre.getAsDouble(),
          "kg/m3",
          "stands beside a density by depth",
          "set one of the two");
    }
    alarms = from.alarms;
    ages = from.ages;
    precedence = from.precedence;
    diagnosis = from.diagnosis;
    baseline = from.baseline;
    checkFlow();
  }

  private void checkFlow() {
    boolean flow =
        signal
            .surface()
            .rates()
            .filter(rates -> rates.measure() == RateSettings.Measure.FLOW)
            .isPresent();
    if (flow && vessel == null) {
      throw Check.error(
          "RateSettings.measure",
          "FLOW",
          "",
          "needs a vessel, whose area makes a speed of the flow",
          "give the vessel, or the limits as speeds");
    }
  }

  /** Returns a builder; {@link Builder#mounting} is the only setting without a default. */
  public static Builder builder(String tag) {
    return new Builder(tag);
  }

  /** Returns a builder that holds these settings, to change some of them. */
  public Builder toBuilder() {
    return new Builder(this);
  }

  /** Returns the tag, such as {@code LT-101}. */
  public String tag() {
    return tag;
  }

  /** Returns where the transmitter sits and looks. */
  public Mounting mounting() {
    return mounting;
  }

  /** Returns the vessel; empty for a point that measures a position only. */
  public Optional<CapacityCurve> vessel() {
    return Optional.ofNullable(vessel);
  }

  /** Returns what 4 and 20 mA mean. */
  public Optional<LoopRange> range() {
    return Optional.ofNullable(range);
  }

  /** Returns by which limits a loop current is judged. */
  public LoopLimits loopLimits() {
    return loopLimits;
  }

  /** Returns how raw counts become a current. */
  public Optional<RawCounts> rawCounts() {
    return Optional.ofNullable(rawCounts);
  }

  /** Returns the conditioning. */
  public SignalSettings signal() {
    return signal;
  }

  /** Returns the density of the material in kg/m3, greater than zero. */
  public OptionalDouble densityKilogramsPerCubicMetre() {
    return densityKilogramsPerCubicMetre;
  }

  /** Returns the density of a material that packs under its own weight. */
  public Optional<BulkDensity> bulkDensity() {
    return Optional.ofNullable(bulkDensity);
  }

  /** Returns the mass in the full vessel, in kilograms; empty without a vessel or a density. */
  public OptionalDouble greatestMassKilograms() {
    if (vessel == null) {
      return OptionalDouble.empty();
    }
    if (bulkDensity != null) {
      return OptionalDouble.of(MassCurve.of(vessel, bulkDensity).full().kilograms());
    }
    return densityKilogramsPerCubicMetre.isPresent()
        ? OptionalDouble.of(
            vessel.capacityCubicMetres() * densityKilogramsPerCubicMetre.getAsDouble())
        : OptionalDouble.empty();
  }

  /** Returns the alarms; their set points are levels above the datum. */
  public AlarmSettings alarms() {
    return alarms;
  }

  /** Returns how long a silent source is borne with. */
  public SourceAges ages() {
    return ages;
  }

  /** Returns which NE 107 status prevails. */
  public StatusPrecedence precedence() {
    return precedence;
  }

  /** Returns what is looked for in the samples. */
  public DiagnosisSettings diagnosis() {
    return diagnosis;
  }

  /** Returns what was usual at this point when it was last kept. */
  public Baseline baseline() {
    return baseline;
  }

  /** Returns a new chain of this point's conditioning, with its own rate limits. */
  public SignalChain newChain() {
    return SignalChain.of(signal, BeamSpeeds.of(this));
  }

  /** Collects the settings of one measuring point. Not thread-safe. */
  public static final class Builder {

    private final String tag;
    private @Nullable Mounting mounting;
    private @Nullable CapacityCurve vessel;
    private @Nullable LoopRange range;
    private LoopLimits loopLimits = LoopLimits.NE43;
    private @Nullable RawCounts rawCounts;
    private SignalSettings signal = SignalSettings.PLAIN;
    private OptionalDouble density = OptionalDouble.empty();
    private @Nullable BulkDensity bulkDensity;
    private AlarmSettings alarms = AlarmSettings.NONE;
    private SourceAges ages = SourceAges.DEFAULT;
    private StatusPrecedence precedence = StatusPrecedence.DEFAULT;
    private DiagnosisSettings diagnosis = DiagnosisSettings.NONE;
    private Baseline baseline = Baseline.NOTHING;

    private Builder(String tag) {
      this.tag = tag;
    }

    private Builder(PointSettings from) {
      tag = from.tag;
      mounting = from.mounting;
      vessel = from.vessel;
      range = from.range;
      loopLimits = from.loopLimits;
      rawCounts = from.rawCounts;
      signal = from.signal;
      density = from.densityKilogramsPerCubicMetre;
      bulkDensity = from.bulkDensity;
      alarms = from.alarms;
      ages = from.ages;
    }

    /** Sets where the transmitter sits and looks. */
    public Builder mounting(Mounting value) {
      mounting = value;
      return this;
    }

    /** Sets the vessel; without one there is no volume. */
    public Builder vessel(CapacityCurve value) {
      vessel = value;
      return this;
    }

    /** Sets what 4 and 20 mA mean; needed for a current or raw counts. */
    public Builder range(LoopRange value) {
      range = value;
      return this;
    }

    /** Sets the limits of the loop current; default {@link LoopLimits#NE43}. */
    public Builder loopLimits(LoopLimits value) {
      loopLimits = value;
      return this;
    }

    /** Sets how raw counts become a current. */
    public Builder rawCounts(RawCounts value) {
      rawCounts = value;
      return this;
    }

    /** Sets the conditioning; default {@link SignalSettings#PLAIN}. */
    public Builder signal(SignalSettings value) {
      signal = value;
      return this;
    }

    /** Sets the density in kg/m3, greater than zero; without one there is no mass. */
    public Builder density(double kilogramsPerCubicMetre) {
      density =
          OptionalDouble.of(
              Check.positive(
                  "PointSettings.density",
                  kilogramsPerCubicMetre,
                  "kg/m3",
                  "enter the bulk density of the material"));
      return this;
    }

    /**
     * Sets the density of a material that packs under its own weight, in place of {@link #density};
     * the mass then is the integral over the depth, see {@link MassCurve}.
     */
    public Builder bulkDensity(BulkDensity value) {
      bulkDensity = value;
      return this;
    }

    /** Sets the alarms; default {@link AlarmSettings#NONE}. */
    public Builder alarms(AlarmSettings value) {
      alarms = value;
      return this;
    }

    /** Sets the age limits; default {@link SourceAges#DEFAULT}. */
    public Builder ages(SourceAges value) {
      ages = value;
      return this;
    }

    /** Sets which NE 107 status prevails; default {@link StatusPrecedence#DEFAULT}. */
    public Builder precedence(StatusPrecedence value) {
      precedence = value;
      return this;
    }

    /** Sets what is looked for in the samples; default {@link DiagnosisSettings#NONE}. */
    public Builder diagnosis(DiagnosisSettings value) {
      diagnosis = value;
      return this;
    }

    /** Sets what was usual when it was last kept; default {@link Baseline#NOTHING}. */
    public Builder baseline(Baseline value) {
      baseline = value;
      return this;
    }

    /**
     * Returns the settings.
     *
     * @throws IllegalArgumentException naming what is missing or contradicts something else
     */
    public PointSettings build() {
      return new PointSettings(this);
    }
  }
}
