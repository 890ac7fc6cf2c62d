package io.strapline.level.reading;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;

import java.time.Instant;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class DiagnosticTest {

  @ParameterizedTest
  @EnumSource(DiagnosticStatus.class)
  void refusesADiagnosticThatSaysThatNothingIsWrong(DiagnosticStatus status) {
    if (status == DiagnosticStatus.NORMAL) {
      assertRefused(
          "Diagnostic.status", () -> new Diagnostic(status, Cause.NO_RETURN, Instant.EPOCH));
    } else {
      assertDoesNotThrow(() -> new Diagnostic(status, Cause.NO_RETURN, Instant.EPOCH));
    }
  }
}
