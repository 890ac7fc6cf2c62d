package io.strapline.level.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.testing.CsvRows;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class DiagnosticStatusTest {

  /**
   * F before C before S before M: published descriptions agree on the first two, S before M is this
   * project's choice.
   */
  private static final List<DiagnosticStatus> PRECEDENCE =
      List.of(
          DiagnosticStatus.FAILURE,
          DiagnosticStatus.FUNCTION_CHECK,
          DiagnosticStatus.OUT_OF_SPECIFICATION,
          DiagnosticStatus.MAINTENANCE_REQUIRED,
          DiagnosticStatus.NORMAL);

  @Test
  void prevailsInTheOrderFailureCheckSpecificationMaintenance() {
    for (int a = 0; a < PRECEDENCE.size(); a++) {
      for (int b = 0; b < PRECEDENCE.size(); b++) {
        DiagnosticStatus prevailing = PRECEDENCE.get(Math.min(a, b));
        assertEquals(prevailing, DiagnosticStatus.worst(PRECEDENCE.get(a), PRECEDENCE.get(b)));
      }
    }
  }

  /** device_health.csv: OPC 10000-100, DeviceHealthEnumeration, by the letter of NE 107. */
  @ParameterizedTest
  @EnumSource(DiagnosticStatus.class)
  void hasTheNumberThatThePublishedEnumerationGivesItsLetter(DiagnosticStatus status) {
    Map<String, String> numbers =
        CsvRows.read(DiagnosticStatusTest.class, "device_health.csv").stream()
            .collect(
                Collectors.toMap(
                    row -> row.text("ne107"), row -> row.text("value_or_status_byte")));

    assertEquals(
        numbers.get(String.valueOf(status.letter())), Integer.toString(status.deviceHealth()));
  }
}
