package io.strapline.level.diagnosis;

import io.strapline.level.internal.Check;

/**
 * When a loop current tells that its loop is at its end. Immutable.
 *
 * @param lowEndMilliamps where the transmitter's output ends below 4 mA; above 0, below 4
 * @param highEndMilliamps where it ends above 20 mA; above 20
 * @param bandMilliamps a current within this band stands still; finite, greater than zero
 * @param flatFromMilliamps a flat top is looked for from here up to 20 mA; above 4, below 20
 * @param holdOff of both
 */
public record CurrentCheck(
    double lowEndMilliamps,
    double highEndMilliamps,
    double bandMilliamps,
    double flatFromMilliamps,
    HoldOff holdOff) {

  /**
   * 3.8 and 20.5 mA (limits of NE 43 as quoted by an open PLC engineering course, module 14,
   * section 3.1); 0.01 mA and 16 mA for a minute: common practice, no source.
   */
  public static final CurrentCheck USUAL = new CurrentCheck(3.8, 20.5, 0.01, 16, HoldOff.MINUTE);

  /** Checks the settings. */
  public CurrentCheck {
    checkBetween("CurrentCheck.lowEnd", lowEndMilliamps, 0, 4);
    checkBetween("CurrentCheck.highEnd", highEndMilliamps, 20, 100);
    Check.positive("CurrentCheck.band", bandMilliamps, "mA", "enter such as 0.01");
    checkBetween("CurrentCheck.flatFrom", flatFromMilliamps, 4, 20);
    Check.present("CurrentCheck.holdOff", holdOff, "give the hold-off times");
  }

  private static void checkBetween(String field, double value, double low, double high) {
    if (!(value > low && value < high)) {
      String rule = "must be greater than " + low + " and less than " + high + " mA";
      throw Check.error(field, value, "mA", rule, "enter the current in mA");
    }
  }
}
