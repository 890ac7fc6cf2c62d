package io.strapline.bridge.publish.opcua;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.bridge.testing.CheckValues;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import java.util.Arrays;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.eclipse.milo.opcua.stack.core.types.builtin.StatusCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class StatusMappingTest {

  /** Names and numbers of OPC 10000-6 Annex A.2; the source stands in each row. */
  private static final Map<String, Long> PUBLISHED =
      CheckValues.rows(StatusMappingTest.class, "status_codes.csv").stream()
          .filter(row -> !row.get("severity").isEmpty())
          .collect(
              Collectors.toMap(
                  row -> row.get("name"), row -> Long.parseLong(row.get("unsigned_decimal"))));

  // Rows without limit bits: OPC 30142 tables 13 to 15 and OPC 10000-8 table A.61, as collected in
  // status_mapping.csv, else this project's proposal there.
  @ParameterizedTest
  @CsvSource({
    "WAITING_FOR_FIRST_SAMPLE, BAD, Bad_WaitingForInitialData",
    "LOOP_FAULT_LOW, BAD, Bad_SensorFailure + DataValue info + LimitLow",
    "LOOP_FAULT_HIGH, BAD, Bad_SensorFailure + DataValue info + LimitHigh",
    "LOOP_FAULT_CONFIRMING, UNCERTAIN, Uncertain_LastUsableValue",
    "LOOP_GAP_LOW, UNCERTAIN, Uncertain_SensorNotAccurate + DataValue info + LimitLow",
    "LOOP_GAP_HIGH, UNCERTAIN, Uncertain_SensorNotAccurate + DataValue info + LimitHigh",
    "LOOP_UNDER_RANGE, UNCERTAIN, Uncertain_EngineeringUnitsExceeded + DataValue info + LimitLow",
    "LOOP_OVER_RANGE, UNCERTAIN, Uncertain_EngineeringUnitsExceeded + DataValue info + LimitHigh",
    "NOT_A_NUMBER, BAD, Bad_SensorFailure",
    "NO_RETURN, BAD, Bad",
    "NO_RETURN_HELD, UNCERTAIN, Uncertain_LastUsableValue",
    "SUBSTITUTED, UNCERTAIN, Uncertain_SubstituteValue",
    "DEAD_ZONE, BAD, Bad",
    "FAR_LIMIT, BAD, Bad",
    "WEAK_RETURN, BAD, Bad",
    "INVALID_CODE, BAD, Bad",
    "OUTSIDE_VESSEL, UNCERTAIN, Uncertain_EngineeringUnitsExceeded",
    "BEAMS_DISAGREE, UNCERTAIN, Uncertain_SensorNotAccurate",
    "BEAM_LOST, UNCERTAIN, Uncertain_SubNormal",
    "DEVICE_FAILURE, BAD, Bad_DeviceFailure",
    "DEVICE_OUT_OF_SPECIFICATION, UNCERTAIN, Uncertain_SensorNotAccurate",
    "DEVICE_FUNCTION_CHECK, BAD, Bad_OutOfService",
    "OBSTRUCTION_HELD, UNCERTAIN, Uncertain_LastUsableValue",
    "JUMP_UNCONFIRMED, UNCERTAIN, Uncertain_SensorNotAccurate",
    "RATE_LIMITED, UNCERTAIN, Uncertain_SensorNotAccurate",
    "OVERFULL_SUSPECTED, BAD, Bad",
    "EMPTY_SUSPECTED, UNCERTAIN, Uncertain_SensorNotAccurate",
    "NOISE_HIGH, UNCERTAIN, Uncertain_SensorNotAccurate",
    "VALUE_STUCK, UNCERTAIN, Uncertain_SensorNotAccurate",
    "RATE_IMPLAUSIBLE, UNCERTAIN, Uncertain_SensorNotAccurate",
    "CURRENT_SATURATED, UNCERTAIN, Uncertain_EngineeringUnitsExceeded",
    "CURRENT_FLAT_TOP, UNCERTAIN, Uncertain_SensorNotAccurate",
    "RANGE_SHORT, UNCERTAIN, Uncertain_SensorNotAccurate",
    "SOURCE_SILENT_HELD, UNCERTAIN, Uncertain_NoCommunicationLastUsableValue",
    "SOURCE_SILENT, BAD, Bad_NoCommunication",
    "NO_COMMUNICATION, BAD, Bad_NoCommunication",
    "TIME_WENT_BACK, UNCERTAIN, Uncertain_LastUsableValue",
    "SIMULATED, UNCERTAIN, Uncertain_SimulatedValue",
    "NOT_CONFIGURED, BAD, Bad_ConfigurationError",
    "PROCESSING_ERROR, BAD, Bad_InternalError",
  })
  void givesThePublishedNumberOfEachCause(Cause cause, Quality.Level level, String name) {
    long expected = Objects.requireNonNull(PUBLISHED.get(name), name);
    assertEquals(expected, StatusMapping.of(new Quality(level, cause)).value());
  }

  @ParameterizedTest
  @EnumSource(value = Cause.class, mode = EnumSource.Mode.EXCLUDE, names = "NONE")
  void neverChangesTheSeverityOfTheQuality(Cause cause) {
    StatusCode uncertain = StatusMapping.of(Quality.uncertain(cause));
    StatusCode bad = StatusMapping.of(Quality.bad(cause));
    assertEquals(true, uncertain.isUncertain(), cause + " uncertain gives " + uncertain);
    assertEquals(true, bad.isBad(), cause + " bad gives " + bad);
  }

  @Test
  void isGoodExactlyForGood() {
    assertEquals(PUBLISHED.get("Good"), StatusMapping.of(Quality.GOOD).value());
  }

  // project-proposal rows of status_mapping.csv name only codes that the published list has
  @Test
  void usesNoCodeThatIsNotInTheCollectedTables() {
    var proposed =
        CheckValues.rows(StatusMappingTest.class, "status_mapping.csv").stream()
            .filter(row -> row.get("statuscode_hex").startsWith("0x"))
            .map(row -> Long.decode(row.get("statuscode_hex")))
            .collect(Collectors.toSet());
    long internalError = Objects.requireNonNull(PUBLISHED.get("Bad_InternalError"));
    long linkLost =
        Objects.requireNonNull(PUBLISHED.get("Uncertain_NoCommunicationLastUsableValue"));
    proposed.add(internalError); // programming error: beyond those tables
    proposed.add(linkLost); // held value while the link is lost: OPC 10000-6 Annex A.2 alone
    Arrays.stream(Cause.values())
        .filter(cause -> cause != Cause.NONE)
        .flatMap(cause -> java.util.stream.Stream.of(Quality.uncertain(cause), Quality.bad(cause)))
        .map(quality -> StatusMapping.of(quality).value() & 0xFFFF0000L)
        .forEach(code -> assertEquals(true, proposed.contains(code), Long.toHexString(code)));
  }
}
