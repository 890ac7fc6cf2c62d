package io.strapline.level.signal;

import io.strapline.level.internal.Check;

/**
 * One value of a {@link SignalProfile}. All of them are times, lengths and speeds, none a count.
 */
public enum ProfileKey {
  /** How long the last value is held without a return. */
  HOLD("hold", "s"),
  /** Time that the median looks back; delays by half of it at most. */
  MEDIAN_SPAN("median-span", "s"),
  /** Time that the moving average looks back; delays by half of it at most. */
  AVERAGE_SPAN("average-span", "s"),
  /** Time constant of the lag. */
  LAG("lag", "s"),
  /** A reading nearer than the surface by more than this is doubted. */
  NEAR_BEYOND("near-beyond", "m"),
  /** How long nearer readings must agree, six in ten of them; 0 for no doubt. */
  NEAR_SPAN("near-span", "s"),
  /** A reading farther than the surface by more than this is doubted. */
  FAR_BEYOND("far-beyond", "m"),
  /** How long farther readings must agree, six in ten of them; 0 for no doubt. */
  FAR_SPAN("far-span", "s"),
  /** Readings that lie this close together agree. */
  BAND("agreement-band", "m"),
  /** A change is believed after this time at the latest. */
  ACCEPT_AFTER("accept-after", "s"),
  /** Greatest believable rise of the surface, upright; 0 for no limit. */
  RISE("rise-limit", "m/s"),
  /** Greatest believable fall of the surface, upright; 0 for no limit. */
  FALL("fall-limit", "m/s"),
  /** Distance from the signal that is not marked as limited. */
  RATE_TOLERANCE("rate-tolerance", "m"),
  /** A surface this close to an end of the range is about to leave it. */
  LOST_MARGIN("lost-beam-margin", "m"),
  /** How far ahead the surface's movement is carried on; 0 for no watch over a lost beam. */
  LOST_HORIZON("lost-beam-horizon", "s");

  private final String label;
  private final String unit;

  ProfileKey(String label, String unit) {
    this.label = label;
    this.unit = unit;
  }

  /** Returns the name of the value, such as {@code median-span}. */
  public String label() {
    return label;
  }

  /** Returns the unit: s, m or m/s. */
  public String unit() {
    return unit;
  }

  /** Returns the value if it is finite, zero or more. */
  double checked(double value) {
    return Check.notNegative(
        "ProfileSheet." + label, value, unit, "enter the value, 0 where the stage is not wanted");
  }
}
