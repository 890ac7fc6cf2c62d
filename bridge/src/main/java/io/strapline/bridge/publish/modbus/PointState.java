package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.config.ModbusSettings.BadValue;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmSnapshot;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.Quantity;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.DiagnosticStatus;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * What the registers of one measuring point are made of. Immutable.
 *
 * @param tag of the point
 * @param snapshot of the point; null when there is none, which makes everything BAD
 * @param unseenSeconds real time since this snapshot was first seen; every evaluation makes a new
 *     one, so a long time means that the point is no longer evaluated
 * @param moment what is common to the image
 */
record PointState(
    String tag, @Nullable PointSnapshot snapshot, double unseenSeconds, Moment moment) {

  /** Points are evaluated several times a second; common practice, no source. */
  static final double STALLED_SECONDS = 10;

  private static final Quality NOTHING = Quality.bad(Cause.PROCESSING_ERROR);

  /** Returns whether no number of this point may be trusted, whatever its snapshot says. */
  boolean isDead() {
    return snapshot == null || !(unseenSeconds <= STALLED_SECONDS) || moment.stalled();
  }

  /** Returns the quality of the level. */
  Quality quality() {
    return quality(Quantity.LEVEL).orElse(NOTHING);
  }

  /** Returns the quality of a quantity; empty when the point is not configured to compute it. */
  Optional<Quality> quality(Quantity quantity) {
    return reading(quantity).map(reading -> isDead() ? NOTHING : reading.quality());
  }

  /** Returns the value for the registers; NaN when there is none to show. */
  double value(Quantity quantity) {
    Optional<Reading> reading = reading(quantity);
    if (reading.isEmpty()) {
      return Double.NaN;
    }
    boolean bad = isDead() || reading.get().quality().isBad();
    return bad ? heldValue(quantity) : reading.get().value();
  }

  private double heldValue(Quantity quantity) {
    if (snapshot == null || moment.badValue() == BadValue.NAN) {
      return Double.NaN;
    }
    return snapshot.lastGood(quantity).map(Reading::value).orElse(Double.NaN);
  }

  /** Returns whether registers show old values of a quantity that is BAD now. */
  boolean holdsValues() {
    for (Quantity quantity : Quantity.values()) {
      boolean bad = quality(quantity).filter(Quality::isBad).isPresent();
      if (bad && !Double.isNaN(value(quantity))) {
        return true;
      }
    }
    return false;
  }

  /** Returns one bit for each quantity whose quality fulfils a condition. */
  int quantities(Predicate<Quality> condition) {
    int bits = 0;
    for (Quantity quantity : Quantity.values()) {
      bits |= quality(quantity).filter(condition).isPresent() ? 1 << bit(quantity) : 0;
    }
    return bits;
  }

  /** Returns one bit for each alarm that fulfils a condition. */
  int alarms(Predicate<AlarmSnapshot> condition) {
    int bits = 0;
    if (snapshot != null) {
      for (AlarmSnapshot alarm : snapshot.alarms()) {
        bits |= condition.test(alarm) ? 1 << bit(alarm.kind()) : 0;
      }
    }
    return bits;
  }

  /** Returns the NE 107 status; a dead point has failed. */
  DiagnosticStatus status() {
    return snapshot == null || isDead() ? DiagnosticStatus.FAILURE : snapshot.status();
  }

  /** Returns the cause of the prevailing diagnostic. */
  Cause diagnosticCause() {
    if (snapshot == null || isDead()) {
      return Cause.PROCESSING_ERROR;
    }
    return snapshot.diagnostics().isEmpty() ? Cause.NONE : snapshot.diagnostics().get(0).cause();
  }

  /**
   * Returns the age of the data in seconds: at the last evaluation, plus the time since then, so
   * that it goes on growing when evaluation stops. Infinite when there is no snapshot.
   */
  double ageSeconds() {
    return snapshot == null
        ? Double.POSITIVE_INFINITY
        : snapshot.ageSeconds() + Math.max(0, unseenSeconds);
  }

  /** Returns the number of the snapshot, 0 to 4294967295, then 0 again. */
  long sequence() {
    return snapshot == null ? 0 : snapshot.sequence() & 0xFFFF_FFFFL;
  }

  /** Returns the source time in milliseconds since 1970; 0 when there is none. */
  long sourceMillis() {
    return snapshot == null ? 0 : Math.max(0, snapshot.sourceTime().toEpochMilli());
  }

  private Optional<Reading> reading(Quantity quantity) {
    return snapshot == null ? Optional.empty() : snapshot.reading(quantity);
  }

  /** Returns the bit that stands for a quantity. */
  static int bit(Quantity quantity) {
    return switch (quantity) {
      case DISTANCE -> 0;
      case ULLAGE -> 1;
      case LEVEL -> 2;
      case PERCENT -> 3;
      case VOLUME -> 4;
      case FREE_VOLUME -> 5;
      case MASS -> 6;
      case LOOP_CURRENT -> 7;
      case STRENGTH -> 8;
    };
  }

  /** Returns the bit that stands for an alarm. */
  static int bit(AlarmKind kind) {
    return switch (kind) {
      case HIGH_HIGH -> 0;
      case HIGH -> 1;
      case LOW -> 2;
      case LOW_LOW -> 3;
      case BAD_SIGNAL -> 4;
    };
  }
}
