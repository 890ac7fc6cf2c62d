package io.strapline.level.signal;

import io.strapline.level.internal.Check;
import io.strapline.level.signal.ObstructionSettings.Doubt;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;

/**
 * The values of a profile, some of them perhaps replaced, and the conditioning made of them for a
 * sample interval. Immutable.
 *
 * <p>Times become counts of samples here: a filter over the time t has {@code floor(t / Ts) + 1}
 * samples (the median an odd number), so that its delay {@code (N - 1) / 2 Ts} is never more than t
 * / 2, however slow the samples come; agreement takes at least 2 of 3. Where samples are rare, the
 * doubted distance grows to what the surface can do between two samples, the accepting time to
 * three and the horizon to four intervals.
 */
public final class ProfileSheet {

  private static final int AGREE_IN_TEN = 6;
  private static final int LEAST_LOOKED_AT = 3;

  private final Map<ProfileKey, Row> rows;

  ProfileSheet(Map<ProfileKey, Row> rows) {
    this.rows = new EnumMap<>(rows);
  }

  /**
   * One value in words. Immutable.
   *
   * @param name of the value, such as {@code median-span}
   * @param value zero or more
   * @param unit s, m or m/s
   * @param why it is so
   */
  public record Row(String name, double value, String unit, String why) {}

  static Row row(ProfileKey key, double value, String why) {
    return new Row(key.label(), key.checked(value), key.unit(), why);
  }

  /** Returns all values in the order of {@link ProfileKey}. */
  public List<Row> rows() {
    return Stream.of(ProfileKey.values()).map(this::row).toList();
  }

  /** Returns a value in the unit of its key. */
  public double value(ProfileKey key) {
    return row(key).value();
  }

  private Row row(ProfileKey key) {
    return Objects.requireNonNull(rows.get(key), key.label());
  }

  /**
   * Returns a sheet with another value.
   *
   * @param value in the unit of the key, finite, zero or more
   */
  public ProfileSheet with(ProfileKey key, double value) {
    return with(key, value, "set for this point");
  }

  /** Returns a sheet with another value and its reason. */
  public ProfileSheet with(ProfileKey key, double value, String why) {
    Check.text("ProfileSheet.why", why, "say in a few words why");
    EnumMap<ProfileKey, Row> others = new EnumMap<>(rows);
    others.put(key, row(key, value, why));
    return new ProfileSheet(others);
  }

  /**
   * Returns the conditioning.
   *
   * @param gates what counts as a measurement: a matter of the device and the vessel, not of the
   *     profile
   * @param sampleIntervalSeconds time between samples, greater than zero
   * @throws IllegalArgumentException naming the setting that breaks its rule
   */
  public SignalSettings settings(GateSettings gates, double sampleIntervalSeconds) {
    double interval = Delays.checkedInterval(sampleIntervalSeconds);
    int median = samples(ProfileKey.MEDIAN_SPAN, interval, Median.MAX_SAMPLES);
    return new SignalSettings(
        gates,
        NoReturnPolicy.hold(value(ProfileKey.HOLD)),
        median - (median + 1) % 2,
        samples(ProfileKey.AVERAGE_SPAN, interval, MovingAverage.MAX_SAMPLES),
        value(ProfileKey.LAG),
        surface(interval));
  }

  private int samples(ProfileKey span, double interval, int most) {
    // A hair more, so that 1 s at three samples a second is four samples and not three.
    return (int) Math.min(most, Math.floor(value(span) / interval + 1e-6) + 1);
  }

  private SurfaceChecks surface(double interval) {
    SurfaceChecks checks = SurfaceChecks.NONE;
    if (value(ProfileKey.NEAR_SPAN) > 0 || value(ProfileKey.FAR_SPAN) > 0) {
      checks = checks.with(obstruction(interval));
    }
    if (value(ProfileKey.RISE) > 0 || value(ProfileKey.FALL) > 0) {
      checks = checks.with(rates());
    }
    return value(ProfileKey.LOST_HORIZON) > 0 ? checks.with(lostBeam(interval)) : checks;
  }

  private ObstructionSettings obstruction(double interval) {
    return new ObstructionSettings(
        doubt(ProfileKey.NEAR_BEYOND, ProfileKey.NEAR_SPAN, ProfileKey.RISE, interval),
        doubt(ProfileKey.FAR_BEYOND, ProfileKey.FAR_SPAN, ProfileKey.FALL, interval),
        value(ProfileKey.BAND),
        Math.max(value(ProfileKey.ACCEPT_AFTER), LEAST_LOOKED_AT * interval));
  }

  private Doubt doubt(ProfileKey beyond, ProfileKey span, ProfileKey speed, double interval) {
    double distance = Math.max(value(beyond), value(speed) * interval);
    if (value(span) == 0) {
      return new Doubt(Math.max(distance, value(ProfileKey.BAND)), 1, 1);
    }
    int of = Math.max(LEAST_LOOKED_AT, samples(span, interval, Doubt.MOST));
    return new Doubt(distance, Math.max(of / 2 + 1, (AGREE_IN_TEN * of + 9) / 10), of);
  }

  private RateSettings rates() {
    return RateSettings.speed(
        limit(ProfileKey.RISE), limit(ProfileKey.FALL), value(ProfileKey.RATE_TOLERANCE));
  }

  private double limit(ProfileKey key) {
    return value(key) > 0 ? value(key) : Double.MAX_VALUE;
  }

  private LostBeamSettings lostBeam(double interval) {
    return new LostBeamSettings(
        value(ProfileKey.LOST_MARGIN), Math.max(value(ProfileKey.LOST_HORIZON), 4 * interval));
  }
}
