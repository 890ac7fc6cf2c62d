package io.strapline.level.alarm;

import io.strapline.level.internal.Check;
import io.strapline.level.internal.Elapsed;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Compares what a contact in the field says with what it should say: the contact of a relay read
 * back, or a level switch beside the transmitter. A disagreement that lasts is a fault of one of
 * them. Stateful, one thread at a time.
 */
public final class ContactAgreement {

  /** Position of the contact in the field. */
  public enum Contact {
    /** It signals the alarm. */
    ALARM,
    /** It signals no alarm. */
    NORMAL,
    /** It cannot be read: counts as a disagreement, since nothing confirms the other side. */
    UNKNOWN
  }

  /** How the two sides stand to each other. */
  public enum Agreement {
    /** Both say the same. */
    AGREES,
    /** They differ, but not yet for the time allowed. */
    DIFFERS,
    /** They have differed for the time allowed or longer. */
    DISAGREES
  }

  private final Duration allowed;
  private @Nullable Instant differsSince;
  private Agreement agreement = Agreement.AGREES;

  private ContactAgreement(Duration allowed) {
    this.allowed = allowed;
  }

  /**
   * Returns a comparison that has seen nothing yet.
   *
   * @param allowedSeconds how long the two may differ, finite, zero or more: travel of the contact,
   *     filters, the difference in height of two devices at the least speed of the surface
   */
  public static ContactAgreement of(double allowedSeconds) {
    double seconds =
        Check.notNegative(
            "ContactAgreement.allowed",
            allowedSeconds,
            "s",
            "enter how long the two sides may differ");
    return new ContactAgreement(Elapsed.delay(seconds));
  }

  /**
   * Compares, in time order.
   *
   * @param expectedAlarm whether the contact should signal the alarm
   */
  public Agreement judge(boolean expectedAlarm, Contact contact, Instant time) {
    if (contact == (expectedAlarm ? Contact.ALARM : Contact.NORMAL)) {
      differsSince = null;
      agreement = Agreement.AGREES;
      return agreement;
    }
    if (differsSince == null || time.isBefore(differsSince)) {
      differsSince = time;
    }
    boolean lasts = Elapsed.reached(differsSince, time, allowed);
    agreement = lasts ? Agreement.DISAGREES : Agreement.DIFFERS;
    return agreement;
  }

  /** Returns the latest result; {@link Agreement#AGREES} before the first comparison. */
  public Agreement agreement() {
    return agreement;
  }
}
