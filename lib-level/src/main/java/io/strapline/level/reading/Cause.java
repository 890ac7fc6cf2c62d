package io.strapline.level.reading;

import static io.strapline.level.reading.DiagnosticStatus.FAILURE;
import static io.strapline.level.reading.DiagnosticStatus.FUNCTION_CHECK;
import static io.strapline.level.reading.DiagnosticStatus.MAINTENANCE_REQUIRED;
import static io.strapline.level.reading.DiagnosticStatus.NORMAL;
import static io.strapline.level.reading.DiagnosticStatus.OUT_OF_SPECIFICATION;

/**
 * Why a quality is not good: one cause, the NE 107 status it stands for, and a sentence for people.
 */
public enum Cause {
  /** Nothing is wrong. */
  NONE(NORMAL, "valid measurement"),
  /** No sample has arrived since the start. */
  WAITING_FOR_FIRST_SAMPLE(FUNCTION_CHECK, "no sample has arrived yet"),
  /** The loop current has been in the low failure band for the confirmation time. */
  LOOP_FAULT_LOW(FAILURE, "loop current in the low failure band: open loop or transmitter fault"),
  /** The loop current has been in the high failure band for the confirmation time. */
  LOOP_FAULT_HIGH(FAILURE, "loop current in the high failure band: short or transmitter fault"),
  /** A failure current is being confirmed or has just gone; the last good value is held. */
  LOOP_FAULT_CONFIRMING(OUT_OF_SPECIFICATION, "failure current being confirmed, last value held"),
  /** The current lies between the low failure band and the measuring range. */
  LOOP_GAP_LOW(OUT_OF_SPECIFICATION, "current between the low failure band and the range"),
  /** The current lies between the measuring range and the high failure band. */
  LOOP_GAP_HIGH(OUT_OF_SPECIFICATION, "current between the range and the high failure band"),
  /** The current is valid but below 4 mA. */
  LOOP_UNDER_RANGE(OUT_OF_SPECIFICATION, "current below 4 mA: below the set range"),
  /** The current is valid but above 20 mA. */
  LOOP_OVER_RANGE(OUT_OF_SPECIFICATION, "current above 20 mA: above the set range"),
  /** The sample was not a finite number. */
  NOT_A_NUMBER(FAILURE, "sample was not a finite number"),
  /** The transmitter saw no surface and the no-return policy has run out. */
  NO_RETURN(FAILURE, "no return from the surface"),
  /** The transmitter saw no surface; the last good value is held for a time. */
  NO_RETURN_HELD(OUT_OF_SPECIFICATION, "no return from the surface, last value held"),
  /** The transmitter saw no surface; the configured substitute stands in. */
  SUBSTITUTED(FAILURE, "no return from the surface, substitute value in use"),
  /** The distance lies inside the dead zone, where the transmitter cannot measure. */
  DEAD_ZONE(FAILURE, "distance inside the dead zone"),
  /** The distance lies beyond the far limit. */
  FAR_LIMIT(FAILURE, "distance beyond the far limit"),
  /** The return was weaker than the least strength. */
  WEAK_RETURN(FAILURE, "return weaker than the least strength"),
  /** The value is one that the device sends in place of a measurement. */
  INVALID_CODE(FAILURE, "device sent a code that means no measurement"),
  /** The level lies outside the vessel or its capacity table; the end value is held. */
  OUTSIDE_VESSEL(OUT_OF_SPECIFICATION, "level outside the vessel or table, end value held"),
  /** Beams on one vessel differ by more than any surface between them allows. */
  BEAMS_DISAGREE(OUT_OF_SPECIFICATION, "beams disagree beyond the limit"),
  /** A beam of several on one vessel gives nothing; the others stand in for it. */
  BEAM_LOST(OUT_OF_SPECIFICATION, "a beam is lost, the other beams stand in"),
  /** The device reports that it has failed. */
  DEVICE_FAILURE(FAILURE, "device reports a failure"),
  /** The device reports that it works outside its specification. */
  DEVICE_OUT_OF_SPECIFICATION(OUT_OF_SPECIFICATION, "device reports out of specification"),
  /** The device asks for maintenance; its value is still valid. */
  DEVICE_MAINTENANCE_REQUIRED(MAINTENANCE_REQUIRED, "device asks for maintenance"),
  /** The device reports a function check. */
  DEVICE_FUNCTION_CHECK(FUNCTION_CHECK, "device reports a function check"),
  /** No sample for longer than the first age limit; the last value is held. */
  SOURCE_SILENT_HELD(OUT_OF_SPECIFICATION, "source silent, last value held"),
  /** No sample for longer than the second age limit. */
  SOURCE_SILENT(FAILURE, "source silent"),
  /** The source cannot reach the device. */
  NO_COMMUNICATION(FAILURE, "no communication with the device"),
  /** The sample's time lies before the one of the sample before it. */
  TIME_WENT_BACK(OUT_OF_SPECIFICATION, "sample older than the one before it, ignored"),
  /** The value comes from a simulator or is forced. */
  SIMULATED(FUNCTION_CHECK, "simulated or forced value"),
  /** The configuration gives no way to compute this value. */
  NOT_CONFIGURED(FAILURE, "value cannot be computed with this configuration"),
  /** Evaluating the sample failed inside the program. */
  PROCESSING_ERROR(FAILURE, "evaluation failed, see the log");

  private final DiagnosticStatus status;
  private final String text;

  Cause(DiagnosticStatus status, String text) {
    this.status = status;
    this.text = text;
  }

  /** Returns the NE 107 status that this cause stands for. */
  public DiagnosticStatus status() {
    return status;
  }

  /**
   * Returns whether the value that carries this cause is the last one again and no new measurement,
   * so that it must neither be filtered anew nor be judged against a limit.
   */
  public boolean isHeld() {
    return this == LOOP_FAULT_CONFIRMING || this == NO_RETURN_HELD || this == SOURCE_SILENT_HELD;
  }

  /** Returns the cause in a short English sentence without a full stop. */
  public String text() {
    return text;
  }
}
