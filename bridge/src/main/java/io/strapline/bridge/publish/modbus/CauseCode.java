package io.strapline.bridge.publish.modbus;

import io.strapline.level.reading.Cause;

/** Numbers of the causes on the wire. They never change; a new cause gets a new number. */
public final class CauseCode {

  private CauseCode() {}

  /** Returns the number of a cause: 0 for none, tens by kind of trouble. */
  public static int of(Cause cause) {
    return switch (cause) {
      case NONE -> 0;
      case WAITING_FOR_FIRST_SAMPLE -> 1;
      case NOT_CONFIGURED -> 2;
      case PROCESSING_ERROR -> 3;
      case SIMULATED -> 4;
      case TIME_WENT_BACK -> 5;
      case LOOP_FAULT_LOW -> 10;
      case LOOP_FAULT_HIGH -> 11;
      case LOOP_FAULT_CONFIRMING -> 12;
      case LOOP_GAP_LOW -> 13;
      case LOOP_GAP_HIGH -> 14;
      case LOOP_UNDER_RANGE -> 15;
      case LOOP_OVER_RANGE -> 16;
      case NOT_A_NUMBER -> 20;
      case NO_RETURN -> 21;
      case NO_RETURN_HELD -> 22;
      case SUBSTITUTED -> 23;
      case DEAD_ZONE -> 24;
      case FAR_LIMIT -> 25;
      case WEAK_RETURN -> 26;
      case INVALID_CODE -> 27;
      case OUTSIDE_VESSEL -> 30;
      case DEVICE_FAILURE -> 40;
      case DEVICE_OUT_OF_SPECIFICATION -> 41;
      case DEVICE_FUNCTION_CHECK -> 42;
      case DEVICE_MAINTENANCE_REQUIRED -> 43;
      case SOURCE_SILENT_HELD -> 50;
      case SOURCE_SILENT -> 51;
      case NO_COMMUNICATION -> 52;
      case BEAMS_DISAGREE -> 60;
      case BEAM_LOST -> 61;
      case OBSTRUCTION_HELD -> 70;
      case JUMP_UNCONFIRMED -> 71;
      case RATE_LIMITED -> 72;
      case OVERFULL_SUSPECTED -> 73;
      case EMPTY_SUSPECTED -> 74;
      case STRENGTH_LOW -> 80;
      case STRENGTH_FALLING -> 81;
      case NOISE_HIGH -> 82;
      case VALUE_STUCK -> 83;
      case RATE_IMPLAUSIBLE -> 84;
      case CURRENT_SATURATED -> 85;
      case CURRENT_FLAT_TOP -> 86;
      case RANGE_SHORT -> 87;
    };
  }
}
