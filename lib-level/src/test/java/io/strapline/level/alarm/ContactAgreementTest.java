package io.strapline.level.alarm;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.alarm.ContactAgreement.Agreement;
import io.strapline.level.alarm.ContactAgreement.Contact;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ContactAgreementTest {

  private static final Instant START = Instant.parse("2024-05-01T06:00:00Z");

  private static Instant at(double seconds) {
    return START.plus(Duration.ofNanos(Math.round(seconds * 1e9)));
  }

  @ParameterizedTest
  @CsvSource({
    "true, ALARM, AGREES", "false, NORMAL, AGREES", "true, NORMAL, DISAGREES",
    "false, ALARM, DISAGREES", "true, UNKNOWN, DISAGREES", "false, UNKNOWN, DISAGREES"
  })
  void comparesBothSides(boolean expected, Contact contact, Agreement told) {
    assertEquals(told, ContactAgreement.of(0).judge(expected, contact, at(0)));
  }

  @Test
  void flagsADisagreementExactlyAfterTheTimeAllowed() {
    ContactAgreement agreement = ContactAgreement.of(5);
    agreement.judge(true, Contact.NORMAL, at(10));

    assertEquals(Agreement.DIFFERS, agreement.judge(true, Contact.NORMAL, at(15).minusNanos(1)));
    assertEquals(Agreement.DISAGREES, agreement.judge(true, Contact.NORMAL, at(15)));
    assertEquals(Agreement.AGREES, agreement.judge(true, Contact.ALARM, at(16)));
    assertEquals(Agreement.DIFFERS, agreement.judge(true, Contact.UNKNOWN, at(17)));
    assertEquals(Agreement.DIFFERS, agreement.agreement());
  }

  /** The disagreement goes on although both sides have turned. */
  @Test
  void countsOnWhenBothSidesTurnAtOnce() {
    ContactAgreement agreement = ContactAgreement.of(5);
    agreement.judge(true, Contact.NORMAL, at(0));
    agreement.judge(false, Contact.ALARM, at(3));

    assertEquals(Agreement.DISAGREES, agreement.judge(false, Contact.ALARM, at(5)));
  }

  @Test
  void isNotStuckWhenTheClockIsSetBack() {
    ContactAgreement agreement = ContactAgreement.of(5);
    agreement.judge(true, Contact.NORMAL, at(3600));
    agreement.judge(true, Contact.NORMAL, at(0));

    assertEquals(Agreement.DISAGREES, agreement.judge(true, Contact.NORMAL, at(5)));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1e-9})
  void refusesATimeThatIsNegativeOrNotFinite(double wrong) {
    assertRefused("ContactAgreement.allowed", () -> ContactAgreement.of(wrong));
  }
}
