package io.strapline.level.reading;

import static io.strapline.level.reading.DiagnosticStatus.FAILURE;
import static io.strapline.level.reading.DiagnosticStatus.FUNCTION_CHECK;
import static io.strapline.level.reading.DiagnosticStatus.MAINTENANCE_REQUIRED;
import static io.strapline.level.reading.DiagnosticStatus.NORMAL;
import static io.strapline.level.reading.DiagnosticStatus.OUT_OF_SPECIFICATION;

/**
 * Why a quality is not good: one cause, the NE 107 status it stands for, a sentence for people, and
 * what they do about it.
 */
public enum Cause {
  /** Nothing is wrong. */
  NONE(NORMAL, "valid measurement", "nothing"),
  /** No sample has arrived since the start. */
  WAITING_FOR_FIRST_SAMPLE(
      FUNCTION_CHECK, "no sample has arrived yet", "wait; if it stays, check the source"),
  /** The loop current has been in the low failure band for the confirmation time. */
  LOOP_FAULT_LOW(
      FAILURE,
      "loop current in the low failure band: open loop or transmitter fault",
      "check loop supply, wiring, transmitter: open loop or failure current"),
  /** The loop current has been in the high failure band for the confirmation time. */
  LOOP_FAULT_HIGH(
      FAILURE,
      "loop current in the high failure band: short or transmitter fault",
      "check for a short; the transmitter may signal a failure upscale"),
  /** A failure current is being confirmed or has just gone; the last good value is held. */
  LOOP_FAULT_CONFIRMING(
      OUT_OF_SPECIFICATION,
      "failure current being confirmed, last value held",
      "wait for the confirmation time; the last value is held, limits are held back"),
  /** The current lies between the low failure band and the measuring range. */
  LOOP_GAP_LOW(
      OUT_OF_SPECIFICATION,
      "current between the low failure band and the range",
      "check range, loop budget and card calibration"),
  /** The current lies between the measuring range and the high failure band. */
  LOOP_GAP_HIGH(
      OUT_OF_SPECIFICATION,
      "current between the range and the high failure band",
      "check range and card calibration"),
  /** The current is valid but below 4 mA. */
  LOOP_UNDER_RANGE(
      OUT_OF_SPECIFICATION,
      "current below 4 mA: below the set range",
      "surface beyond the 4 mA point: check range against vessel"),
  /** The current is valid but above 20 mA. */
  LOOP_OVER_RANGE(
      OUT_OF_SPECIFICATION,
      "current above 20 mA: above the set range",
      "surface beyond the 20 mA point: check range against vessel"),
  /** The sample was not a finite number. */
  NOT_A_NUMBER(
      FAILURE, "sample was not a finite number", "check the source's scaling and register type"),
  /** The transmitter saw no surface and the no-return policy has run out. */
  NO_RETURN(
      FAILURE,
      "no return from the surface",
      "look for dust, fog, a dirty window, a beam past the surface"),
  /** The transmitter saw no surface; the last good value is held for a time. */
  NO_RETURN_HELD(
      OUT_OF_SPECIFICATION,
      "no return from the surface, last value held",
      "wait; the no-return policy holds the last value, limits are held back"),
  /** The transmitter saw no surface; the configured substitute stands in. */
  SUBSTITUTED(
      FAILURE,
      "no return from the surface, substitute value in use",
      "as for NO_RETURN; the value is the configured stand-in: limits are held back, the bad-signal alarm stands"),
  /** The distance lies inside the dead zone, where the transmitter cannot measure. */
  DEAD_ZONE(
      FAILURE,
      "distance inside the dead zone",
      "the surface may be too near: treat as over-full until seen otherwise"),
  /** The distance lies beyond the far limit. */
  FAR_LIMIT(
      FAILURE,
      "distance beyond the far limit",
      "the beam may miss the surface or the vessel is empty"),
  /** The return was weaker than the least strength. */
  WEAK_RETURN(
      FAILURE, "return weaker than the least strength", "clean the window, check aim and material"),
  /** The value is one that the device sends in place of a measurement. */
  INVALID_CODE(
      FAILURE,
      "device sent a code that means no measurement",
      "the device sends a code for \"no measurement\": see its manual"),
  /** A reading far from the surface is not yet believed; the value of before stays in use. */
  OBSTRUCTION_HELD(
      OUT_OF_SPECIFICATION,
      "a sudden change is not yet confirmed, value of before in use",
      "wait; if it comes often, look for dust, a falling stream or an object in the beam"),
  /** A sudden change was accepted because its time was up, not because readings agree. */
  JUMP_UNCONFIRMED(
      OUT_OF_SPECIFICATION,
      "a sudden change taken over after its time without agreement",
      "look into the vessel: the readings do not agree on where the surface is"),
  /** The signal moves faster than the surface can; the value follows at the greatest rate. */
  RATE_LIMITED(
      OUT_OF_SPECIFICATION,
      "signal faster than the surface can move, value follows at the limit",
      "compare with what goes in and out; check the limits, look for dust or a collapse"),
  /** The beam was lost while the surface was about to enter the dead zone. */
  OVERFULL_SUSPECTED(
      FAILURE,
      "beam lost close to the dead zone: the vessel may be over-full",
      "stop filling, treat the vessel as over-full until somebody has looked"),
  /** The beam was lost while the surface was about to pass the far limit. */
  EMPTY_SUSPECTED(
      OUT_OF_SPECIFICATION,
      "beam lost close to the far limit: the vessel may be empty",
      "check whether the vessel is empty; if not, check aim and range"),
  /** The return has been far weaker than usual for the hold-off time. */
  STRENGTH_LOW(
      MAINTENANCE_REQUIRED,
      "return far weaker than usual",
      "look for a wet or dirty window, heavy dust or another material"),
  /** The return grows weaker over days. */
  STRENGTH_FALLING(
      MAINTENANCE_REQUIRED,
      "return has grown weaker over days",
      "plan to clean the window; then let the baseline be learned anew"),
  /** The distance scatters far more than usual. */
  NOISE_HIGH(
      OUT_OF_SPECIFICATION,
      "distance scatters more than usual",
      "look for dust, filling across the beam, a loose mounting or interference"),
  /** The value stands still although it should move. */
  VALUE_STUCK(
      OUT_OF_SPECIFICATION,
      "value stands still although it should move",
      "compare with a hand measurement; look for an object in the beam, a rat-hole or a bridge"),
  /** The distance changes faster than the surface can. */
  RATE_IMPLAUSIBLE(
      OUT_OF_SPECIFICATION,
      "distance changes faster than the surface can move",
      "look for a stream across the beam, several targets or electrical noise"),
  /** The loop current stands at the end of its measuring range. */
  CURRENT_SATURATED(
      OUT_OF_SPECIFICATION,
      "loop current stands at the end of its range",
      "set 4 and 20 mA so that the range covers the vessel"),
  /** The loop current stands dead still just below 20 mA: the loop may not carry more. */
  CURRENT_FLAT_TOP(
      OUT_OF_SPECIFICATION,
      "loop current goes flat below 20 mA",
      "check supply voltage and loop resistance at 20 mA; the real level may be higher"),
  /** The return vanishes well above the bottom of the vessel. */
  RANGE_SHORT(
      OUT_OF_SPECIFICATION,
      "return vanishes well above the bottom of the vessel",
      "check range, aim and material: the transmitter does not reach the bottom"),
  /** The level lies outside the vessel or its capacity table; the end value is held. */
  OUTSIDE_VESSEL(
      OUT_OF_SPECIFICATION,
      "level outside the vessel or table, end value held",
      "check reference height, datum and table"),
  /** Beams on one vessel differ by more than any surface between them allows. */
  BEAMS_DISAGREE(
      OUT_OF_SPECIFICATION,
      "beams disagree beyond the limit",
      "see which beam is wrong (tape, other beams), clean and check aim; steepest slope set too small?"),
  /** A beam of several on one vessel gives nothing; the others stand in for it. */
  BEAM_LOST(
      OUT_OF_SPECIFICATION,
      "a beam is lost, the other beams stand in",
      "repair the lost beam; the others stand in and the stated uncertainty is wider"),
  /** The device reports that it has failed. */
  DEVICE_FAILURE(
      FAILURE, "device reports a failure", "the device reports a failure: see its manual"),
  /** The device reports that it works outside its specification. */
  DEVICE_OUT_OF_SPECIFICATION(
      OUT_OF_SPECIFICATION,
      "device reports out of specification",
      "the device reports it: see its manual"),
  /** The device asks for maintenance; its value is still valid. */
  DEVICE_MAINTENANCE_REQUIRED(
      MAINTENANCE_REQUIRED,
      "device asks for maintenance",
      "plan the maintenance the device asks for"),
  /** The device reports a function check. */
  DEVICE_FUNCTION_CHECK(
      FUNCTION_CHECK, "device reports a function check", "somebody works on the device: wait"),
  /** No sample for longer than the first age limit; the last value is held. */
  SOURCE_SILENT_HELD(
      OUT_OF_SPECIFICATION,
      "source silent, last value held",
      "the source has been silent past the first age limit; limits are held back"),
  /** No sample for longer than the second age limit. */
  SOURCE_SILENT(FAILURE, "source silent", "check the source, its network and its clock"),
  /** The source cannot reach the device. */
  NO_COMMUNICATION(
      FAILURE, "no communication with the device", "check address, network and device"),
  /** The sample's time lies before the one of the sample before it. */
  TIME_WENT_BACK(
      OUT_OF_SPECIFICATION,
      "sample older than the one before it, ignored",
      "the source's clock stepped back; older samples are ignored"),
  /** The value comes from a simulator or is forced. */
  SIMULATED(FUNCTION_CHECK, "simulated or forced value", "the value is not measured"),
  /** The configuration gives no way to compute this value. */
  NOT_CONFIGURED(
      FAILURE,
      "value cannot be computed with this configuration",
      "the configuration lacks a range or raw counts for this signal"),
  /** Evaluating the sample failed inside the program. */
  PROCESSING_ERROR(FAILURE, "evaluation failed, see the log", "see the log, report the fault");

  private final DiagnosticStatus status;
  private final String text;
  private final String advice;

  Cause(DiagnosticStatus status, String text, String advice) {
    this.status = status;
    this.text = text;
    this.advice = advice;
  }

  /** Returns the NE 107 status that this cause stands for. */
  public DiagnosticStatus status() {
    return status;
  }

  /**
   * Returns whether the value that carries this cause is the last one again and no new measurement,
   * so that it must neither be filtered anew nor be judged against a limit.
   *
   * <p>{@link #OBSTRUCTION_HELD} is not among them: there the device measures, and the value of
   * before is believed more than the reading. Limits go on being judged by it, or specks of dust
   * could hold back a high alarm for ever by starting its delay anew each time.
   */
  public boolean isHeld() {
    return this == LOOP_FAULT_CONFIRMING || this == NO_RETURN_HELD || this == SOURCE_SILENT_HELD;
  }

  /** Returns the cause in a short English sentence without a full stop. */
  public String text() {
    return text;
  }

  /**
   * Returns what a person does first, in one English sentence without a full stop; local procedures
   * prevail.
   */
  public String advice() {
    return advice;
  }
}
