package io.strapline.level.plan;

import io.strapline.level.internal.Check;
import io.strapline.level.vessel.CapacityCurve;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What set points are derived from. Immutable; made by {@link #builder}. For bulk material all
 * levels are levels of equal volume (the surface laid flat).
 */
public final class SetPointBasis {

  private final CapacityCurve vessel;
  private final double criticalHighMetres;
  private final double criticalLowMetres;
  private final DesignFlows flows;
  private final EnumMap<SetPoint, ResponseStep> steps;
  private final MeasuringWindow window;

  private SetPointBasis(Builder from) {
    vessel = from.vessel;
    flows = from.flows;
    steps = new EnumMap<>(from.steps);
    window = from.window;
    double full = vessel.maxHeightMetres();
    criticalLowMetres =
        Check.between(
            "SetPointBasis.criticalLow",
            from.criticalLowMetres,
            "m",
            0,
            full,
            "enter the level below which harm begins, 0 for the datum");
    criticalHighMetres = checkedHigh(from.criticalHighMetres, full);
    checkFlows();
  }

  private double checkedHigh(double metres, double full) {
    String field = "SetPointBasis.criticalHigh";
    String fix = "enter the level above which harm begins";
    Check.between(field, metres, "m", 0, full, fix);
    if (!(metres > criticalLowMetres)) {
      String rule = "must be above criticalLow (" + criticalLowMetres + " m)";
      throw Check.error(field, metres, "m", rule, fix);
    }
    return metres;
  }

  private void checkFlows() {
    for (SetPoint setPoint : steps.keySet()) {
      Check.positive(
          setPoint.isHigh() ? "SetPointBasis.flows.in" : "SetPointBasis.flows.out",
          flows.towards(setPoint.isHigh()),
          "m3/s",
          "enter the greatest flow, since " + setPoint.label() + " is derived from it");
    }
  }

  /** Returns a builder for a vessel and its greatest flows. */
  public static Builder builder(CapacityCurve vessel, DesignFlows flows) {
    return new Builder(vessel, flows);
  }

  /** Returns the vessel. */
  public CapacityCurve vessel() {
    return vessel;
  }

  /** Returns the greatest flows. */
  public DesignFlows flows() {
    return flows;
  }

  /** Returns the levels that can be measured. */
  public MeasuringWindow window() {
    return window;
  }

  /** Returns the step of a set point; empty for one that is not wanted and for critical ones. */
  public Optional<ResponseStep> step(SetPoint setPoint) {
    return Optional.ofNullable(steps.get(setPoint));
  }

  double criticalMetres(boolean high) {
    return high ? criticalHighMetres : criticalLowMetres;
  }

  /** Collects what set points are derived from. Not thread-safe. */
  public static final class Builder {

    private final CapacityCurve vessel;
    private final DesignFlows flows;
    private final Map<SetPoint, ResponseStep> steps = new EnumMap<>(SetPoint.class);
    private double criticalHighMetres;
    private double criticalLowMetres;
    private MeasuringWindow window = MeasuringWindow.OPEN;

    private Builder(@Nullable CapacityCurve vessel, @Nullable DesignFlows flows) {
      this.vessel = Check.present("SetPointBasis.vessel", vessel, "give the vessel or its table");
      this.flows = Check.present("SetPointBasis.flows", flows, "give the greatest flows");
      criticalHighMetres = this.vessel.maxHeightMetres();
    }

    /**
     * Sets the level above which harm begins; default the full height of the vessel.
     *
     * @param metres above the datum, in (critical low, full height]
     */
    public Builder criticalHigh(double metres) {
      criticalHighMetres = metres;
      return this;
    }

    /**
     * Sets the level below which harm begins; default the datum.
     *
     * @param metres above the datum, in [0, critical high)
     */
    public Builder criticalLow(double metres) {
      criticalLowMetres = metres;
      return this;
    }

    /**
     * Asks for a set point.
     *
     * @param setPoint not a critical one
     * @param step from it to the next one towards its critical level
     */
    public Builder step(SetPoint setPoint, ResponseStep step) {
      Check.present("SetPointBasis.step", setPoint, "name the set point");
      if (setPoint.isCritical()) {
        throw Check.error(
            "SetPointBasis.step",
            setPoint.name(),
            "",
            "is given and not derived",
            "set it by criticalHigh or criticalLow");
      }
      Check.present("SetPointBasis.step of " + setPoint, step, "give the response time");
      steps.put(setPoint, step);
      return this;
    }

    /** Sets the levels that the transmitter can measure; default {@link MeasuringWindow#OPEN}. */
    public Builder window(MeasuringWindow value) {
      window = Check.present("SetPointBasis.window", value, "give MeasuringWindow.OPEN for none");
      return this;
    }

    /**
     * Returns the basis.
     *
     * @throws IllegalArgumentException naming what contradicts something else
     */
    public SetPointBasis build() {
      return new SetPointBasis(this);
    }
  }
}
