package io.strapline.level.point;

import io.strapline.level.internal.Check;
import io.strapline.level.reading.DiagnosticStatus;
import java.time.Instant;
import java.util.OptionalDouble;

/**
 * What a source delivers at one moment: one value and what else the device told. Immutable. The
 * value may be anything, NaN and infinities too: judging it is the measuring point's work.
 *
 * @param time when the device measured, in UTC
 * @param kind what {@code value} is
 * @param value metres, mA or counts according to {@code kind}; ignored for {@link Kind#NO_RETURN}
 * @param strength strength of the return in the device's own unit, if known
 * @param deviceStatus what the device says of itself
 * @param simulated whether the value comes from a simulator or is forced, and must be marked so
 */
public record Sample(
    Instant time,
    Kind kind,
    double value,
    OptionalDouble strength,
    DiagnosticStatus deviceStatus,
    boolean simulated) {

  /** What the value of a sample is. */
  public enum Kind {
    /** Distance along the beam, in metres. */
    DISTANCE,
    /** Level above the datum, in metres. */
    LEVEL,
    /** Loop current, in mA. */
    CURRENT,
    /** Raw count of an input card. */
    RAW_COUNT,
    /** The device measured and saw no surface. */
    NO_RETURN
  }

  /** Checks that all parts are there. */
  public Sample {
    Check.present("Sample.time", time, "give the source time");
    Check.present("Sample.kind", kind, "say what the value is");
    Check.present("Sample.strength", strength, "give OptionalDouble.empty() when unknown");
    Check.present("Sample.deviceStatus", deviceStatus, "give NORMAL when the device tells nothing");
  }

  /** Returns a distance along the beam in metres. */
  public static Sample distance(Instant time, double metres) {
    return plain(time, Kind.DISTANCE, metres);
  }

  /** Returns a level above the datum in metres. */
  public static Sample level(Instant time, double metres) {
    return plain(time, Kind.LEVEL, metres);
  }

  /** Returns a loop current in mA. */
  public static Sample current(Instant time, double milliamps) {
    return plain(time, Kind.CURRENT, milliamps);
  }

  /** Returns a raw count of an input card. */
  public static Sample rawCount(Instant time, double count) {
    return plain(time, Kind.RAW_COUNT, count);
  }

  /** Returns a sample that says: measured, no surface seen. */
  public static Sample noReturn(Instant time) {
    return plain(time, Kind.NO_RETURN, 0);
  }

  /** Returns this sample with the strength of its return, in the device's own unit. */
  public Sample withStrength(double newStrength) {
    return new Sample(time, kind, value, OptionalDouble.of(newStrength), deviceStatus, simulated);
  }

  /** Returns this sample with what the device says of itself. */
  public Sample withDeviceStatus(DiagnosticStatus newStatus) {
    return new Sample(time, kind, value, strength, newStatus, simulated);
  }

  /** Returns this sample, marked as simulated. */
  public Sample asSimulated() {
    return new Sample(time, kind, value, strength, deviceStatus, true);
  }

  private static Sample plain(Instant time, Kind kind, double value) {
    return new Sample(time, kind, value, OptionalDouble.empty(), DiagnosticStatus.NORMAL, false);
  }
}
