package io.strapline.bridge.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.bridge.config.SourceSettings.Event;
import io.strapline.bridge.config.SourceSettings.Event.Fault;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FaultTimelineTest {

  private final FaultTimeline timeline =
      new FaultTimeline(
          List.of(
              new Event(Fault.SILENT, 10, 5, OptionalDouble.empty()),
              new Event(Fault.NO_RETURN, 12, 2, OptionalDouble.of(20))));

  @ParameterizedTest
  @CsvSource({
    "0,",
    "9.999,",
    "10, SILENT",
    "12, SILENT",
    "14.999, SILENT",
    "15,",
    "31.9,",
    "32, NO_RETURN",
    "33.9, NO_RETURN",
    "34,",
    "52, NO_RETURN",
    "-1,"
  })
  void aFaultHoldsFromItsStartToItsEndAndRepeats(double seconds, Fault fault) {
    assertEquals(Optional.ofNullable(fault), timeline.faultAt(seconds));
  }
}
