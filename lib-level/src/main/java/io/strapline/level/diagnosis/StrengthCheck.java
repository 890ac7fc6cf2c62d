package io.strapline.level.diagnosis;

import io.strapline.level.internal.Check;

/**
 * When a return is weaker than usual. Immutable.
 *
 * @param lowShare a strength below this share of the baseline is low; in (0, 1)
 * @param fallingShare a recent mean below this share of the baseline has fallen; in (0, 1)
 * @param recentSeconds time constant of the recent mean; finite, greater than zero
 * @param learning how the baseline is learned
 * @param holdOff of both
 */
public record StrengthCheck(
    double lowShare,
    double fallingShare,
    double recentSeconds,
    Learning learning,
    HoldOff holdOff) {

  /** Below 30 % for a minute; over a day below 60 %: common practice, no source. */
  public static final StrengthCheck USUAL =
      new StrengthCheck(0.3, 0.6, 86_400, Learning.USUAL, HoldOff.MINUTE);

  /** Checks the settings. */
  public StrengthCheck {
    checkShare("StrengthCheck.lowShare", lowShare);
    checkShare("StrengthCheck.fallingShare", fallingShare);
    Check.positive("StrengthCheck.recent", recentSeconds, "s", "enter such as 86400 for a day");
    Check.present("StrengthCheck.learning", learning, "say how the baseline is learned");
    Check.present("StrengthCheck.holdOff", holdOff, "give the hold-off times");
  }

  private static void checkShare(String field, double share) {
    if (!(share > 0 && share < 1)) {
      throw Check.error(field, share, "", "must lie between 0 and 1", "enter such as 0.3");
    }
  }
}
