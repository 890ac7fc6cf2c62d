package io.strapline.bridge.publish.opcua;

import io.strapline.level.reading.Reading;
import java.time.Instant;
import java.util.Optional;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;
import org.eclipse.milo.opcua.stack.core.types.builtin.DateTime;
import org.eclipse.milo.opcua.stack.core.types.builtin.StatusCode;
import org.eclipse.milo.opcua.stack.core.types.builtin.Variant;

/** Makes OPC UA values. The source time is always set: some clients show a missing one as 1601. */
final class Values {

  private static final StatusCode NOTHING_YET =
      new StatusCode(StatusCodes.Bad_WaitingForInitialData);

  private Values() {}

  /** Returns the value with the status of its quality; without a value when it is BAD. */
  static DataValue of(Reading reading) {
    StatusCode status = StatusMapping.of(reading.quality());
    Object value = reading.quality().isBad() ? null : reading.value();
    return timed(value, status, reading.time());
  }

  /** Returns the value of a reading, or none with a bad status when there is none yet. */
  static DataValue of(Optional<Reading> reading, Instant otherwise) {
    return reading.map(Values::of).orElseGet(() -> timed(null, NOTHING_YET, otherwise));
  }

  /** Returns a good value. */
  static DataValue good(Object value, Instant time) {
    return timed(value, StatusCode.GOOD, time);
  }

  /** Returns a value that stands although it is not judged now. */
  static DataValue held(Object value, Instant time) {
    return timed(value, new StatusCode(StatusCodes.Uncertain_LastUsableValue), time);
  }

  private static DataValue timed(
      @org.jspecify.annotations.Nullable Object value, StatusCode status, Instant time) {
    return new DataValue(new Variant(value), status, new DateTime(time), null);
  }
}
