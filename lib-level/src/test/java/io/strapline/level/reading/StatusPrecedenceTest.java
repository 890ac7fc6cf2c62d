package io.strapline.level.reading;

import static io.strapline.level.reading.DiagnosticStatus.FAILURE;
import static io.strapline.level.reading.DiagnosticStatus.FUNCTION_CHECK;
import static io.strapline.level.reading.DiagnosticStatus.MAINTENANCE_REQUIRED;
import static io.strapline.level.reading.DiagnosticStatus.NORMAL;
import static io.strapline.level.reading.DiagnosticStatus.OUT_OF_SPECIFICATION;
import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class StatusPrecedenceTest {

  @Test
  void putsMaintenanceFirstWhereSomebodyWantsItSo() {
    StatusPrecedence other =
        StatusPrecedence.of(FAILURE, FUNCTION_CHECK, MAINTENANCE_REQUIRED, OUT_OF_SPECIFICATION);

    assertEquals(MAINTENANCE_REQUIRED, other.worst(OUT_OF_SPECIFICATION, MAINTENANCE_REQUIRED));
    assertEquals(
        OUT_OF_SPECIFICATION,
        StatusPrecedence.DEFAULT.worst(OUT_OF_SPECIFICATION, MAINTENANCE_REQUIRED));
  }

  @ParameterizedTest
  @EnumSource(DiagnosticStatus.class)
  void letsEveryStatusPrevailOverNormal(DiagnosticStatus status) {
    assertEquals(status, StatusPrecedence.DEFAULT.worst(NORMAL, status));
    assertEquals(status, StatusPrecedence.DEFAULT.worst(status, NORMAL));
  }

  @Test
  void refusesAnOrderThatIsNotComplete() {
    String field = "StatusPrecedence.order";
    assertRefused(field, () -> StatusPrecedence.of());
    assertRefused(field, () -> StatusPrecedence.of(FAILURE, FUNCTION_CHECK));
    assertRefused(
        field, () -> StatusPrecedence.of(FAILURE, FAILURE, FUNCTION_CHECK, OUT_OF_SPECIFICATION));
    assertRefused(
        field, () -> StatusPrecedence.of(FAILURE, FUNCTION_CHECK, OUT_OF_SPECIFICATION, NORMAL));
  }
}
