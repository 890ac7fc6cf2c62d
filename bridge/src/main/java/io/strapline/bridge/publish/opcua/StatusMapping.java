package io.strapline.bridge.publish.opcua;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.types.builtin.StatusCode;

/**
 * The OPC UA status code of a quality. Codes: OPC 10000-6 Annex A.2; what they stand for here: OPC
 * 30142 tables 13 to 15 (a failure of the process, such as no return, is plain Bad) and OPC 10000-8
 * table A.61, where those speak, else this project's choice. Stateless.
 */
final class StatusMapping {

  /** InfoType DataValue, without which limit bits mean nothing: OPC 10000-4 table 177. */
  private static final long DATA_VALUE = 0x0400;

  private static final long LOW = DATA_VALUE | 0x0100;
  private static final long HIGH = DATA_VALUE | 0x0200;
  private static final long SEVERITY = 0xC0000000L;
  private static final long LIMITS = 0x0700;

  private StatusMapping() {}

  /** Returns the status code; its severity is always the one of the quality. */
  static StatusCode of(Quality quality) {
    long severity = severity(quality.level());
    long code = code(quality.cause());
    boolean agrees = (code & SEVERITY) == severity;
    return new StatusCode(agrees ? code : severity | (code & LIMITS));
  }

  private static long severity(Quality.Level level) {
    return switch (level) {
      case GOOD -> StatusCodes.Good;
      case UNCERTAIN -> StatusCodes.Uncertain;
      case BAD -> StatusCodes.Bad;
    };
  }

  private static long code(Cause cause) {
    return switch (cause) {
      case NONE, DEVICE_MAINTENANCE_REQUIRED, STRENGTH_LOW, STRENGTH_FALLING -> StatusCodes.Good;
      case WAITING_FOR_FIRST_SAMPLE -> StatusCodes.Bad_WaitingForInitialData;
      case LOOP_FAULT_LOW -> StatusCodes.Bad_SensorFailure | LOW;
      case LOOP_FAULT_HIGH -> StatusCodes.Bad_SensorFailure | HIGH;
      case LOOP_GAP_LOW -> StatusCodes.Uncertain_SensorNotAccurate | LOW;
      case LOOP_GAP_HIGH -> StatusCodes.Uncertain_SensorNotAccurate | HIGH;
      case LOOP_UNDER_RANGE -> StatusCodes.Uncertain_EngineeringUnitsExceeded | LOW;
      case LOOP_OVER_RANGE -> StatusCodes.Uncertain_EngineeringUnitsExceeded | HIGH;
      case LOOP_FAULT_CONFIRMING, NO_RETURN_HELD, TIME_WENT_BACK, OBSTRUCTION_HELD ->
          StatusCodes.Uncertain_LastUsableValue;
      case SUBSTITUTED -> StatusCodes.Uncertain_SubstituteValue;
      case NOT_A_NUMBER -> StatusCodes.Bad_SensorFailure;
      case NO_RETURN, DEAD_ZONE, FAR_LIMIT, WEAK_RETURN, INVALID_CODE, OVERFULL_SUSPECTED ->
          StatusCodes.Bad;
      case OUTSIDE_VESSEL -> StatusCodes.Uncertain_EngineeringUnitsExceeded;
      case BEAM_LOST -> StatusCodes.Uncertain_SubNormal;
      case DEVICE_FAILURE -> StatusCodes.Bad_DeviceFailure;
      case BEAMS_DISAGREE,
          DEVICE_OUT_OF_SPECIFICATION,
          JUMP_UNCONFIRMED,
          RATE_LIMITED,
          EMPTY_SUSPECTED,
          NOISE_HIGH,
          VALUE_STUCK,
          RATE_IMPLAUSIBLE,
          CURRENT_FLAT_TOP,
          RANGE_SHORT ->
          StatusCodes.Uncertain_SensorNotAccurate;
      case CURRENT_SATURATED -> StatusCodes.Uncertain_EngineeringUnitsExceeded;
      case DEVICE_FUNCTION_CHECK -> StatusCodes.Bad_OutOfService;
      case SOURCE_SILENT_HELD -> StatusCodes.Uncertain_NoCommunicationLastUsableValue;
      case SOURCE_SILENT, NO_COMMUNICATION -> StatusCodes.Bad_NoCommunication;
      case SIMULATED -> StatusCodes.Uncertain_SimulatedValue;
      case NOT_CONFIGURED -> StatusCodes.Bad_ConfigurationError;
      case PROCESSING_ERROR -> StatusCodes.Bad_InternalError;
    };
  }
}
