package io.strapline.level.signal;

import io.strapline.level.internal.Check;
import java.util.Optional;

/**
 * The stages that know how a surface can move, each optional, and the branch that feeds the alarms.
 * Immutable.
 *
 * @param obstruction when a sudden change is believed; empty: every reading is
 * @param rates how fast the surface can move; empty: no limit
 * @param lostBeam when a lost beam means over-full or empty; empty: never
 * @param alarmBranch from which branch alarms are judged
 */
public record SurfaceChecks(
    Optional<ObstructionSettings> obstruction,
    Optional<RateSettings> rates,
    Optional<LostBeamSettings> lostBeam,
    AlarmBranch alarmBranch) {

  /** None of the stages, alarms from the early branch. */
  public static final SurfaceChecks NONE =
      new SurfaceChecks(Optional.empty(), Optional.empty(), Optional.empty(), AlarmBranch.EARLY);

  /** Checks that all parts are there. */
  public SurfaceChecks {
    String none = "give Optional.empty() for no such stage";
    Check.present("SurfaceChecks.obstruction", obstruction, none);
    Check.present("SurfaceChecks.rates", rates, none);
    Check.present("SurfaceChecks.lostBeam", lostBeam, none);
    Check.present("SurfaceChecks.alarmBranch", alarmBranch, "give EARLY or SMOOTH");
  }

  /** Returns these checks with an obstruction gate. */
  public SurfaceChecks with(ObstructionSettings newObstruction) {
    return new SurfaceChecks(Optional.of(newObstruction), rates, lostBeam, alarmBranch);
  }

  /** Returns these checks with rate limits. */
  public SurfaceChecks with(RateSettings newRates) {
    return new SurfaceChecks(obstruction, Optional.of(newRates), lostBeam, alarmBranch);
  }

  /** Returns these checks with a watch over a lost beam. */
  public SurfaceChecks with(LostBeamSettings newLostBeam) {
    return new SurfaceChecks(obstruction, rates, Optional.of(newLostBeam), alarmBranch);
  }

  /** Returns these checks with alarms from this branch. */
  public SurfaceChecks with(AlarmBranch newBranch) {
    return new SurfaceChecks(obstruction, rates, lostBeam, newBranch);
  }
}
