package io.strapline.level.signal;

import static io.strapline.level.signal.ProfileKey.ACCEPT_AFTER;
import static io.strapline.level.signal.ProfileKey.AVERAGE_SPAN;
import static io.strapline.level.signal.ProfileKey.BAND;
import static io.strapline.level.signal.ProfileKey.FALL;
import static io.strapline.level.signal.ProfileKey.FAR_BEYOND;
import static io.strapline.level.signal.ProfileKey.FAR_SPAN;
import static io.strapline.level.signal.ProfileKey.HOLD;
import static io.strapline.level.signal.ProfileKey.LAG;
import static io.strapline.level.signal.ProfileKey.LOST_HORIZON;
import static io.strapline.level.signal.ProfileKey.LOST_MARGIN;
import static io.strapline.level.signal.ProfileKey.MEDIAN_SPAN;
import static io.strapline.level.signal.ProfileKey.NEAR_BEYOND;
import static io.strapline.level.signal.ProfileKey.NEAR_SPAN;
import static io.strapline.level.signal.ProfileKey.RATE_TOLERANCE;
import static io.strapline.level.signal.ProfileKey.RISE;

import java.util.EnumMap;
import java.util.Map;

/**
 * Starting values of all stages for a kind of surface. Common practice, no source: look at the
 * signal of the plant, then replace what does not fit by {@link ProfileSheet#with}.
 */
public enum SignalProfile {
  /** A calm liquid. */
  STILL("still", "a calm liquid"),
  /** A bulk solid that is filled through the air: dust, a falling stream, collapses. */
  DUSTY_FILL("dusty-fill", "a bulk solid, filled through dust"),
  /** A stirred, boiling or splashing liquid. */
  RESTLESS("restless", "a stirred or splashing liquid"),
  /** A chute that must not block: quick, with pieces falling through the beam. */
  CHUTE("chute", "a chute that must not block"),
  /** The position of a carriage. */
  CARRIAGE("carriage", "the position of a carriage");

  private final String label;
  private final String text;

  SignalProfile(String label, String text) {
    this.label = label;
    this.text = text;
  }

  /** Returns the name of the profile, such as {@code dusty-fill}. */
  public String label() {
    return label;
  }

  /** Returns what it is for, in words. */
  public String text() {
    return text;
  }

  /** Returns its values. */
  public ProfileSheet sheet() {
    return new ProfileSheet(
        switch (this) {
          case STILL -> still().rows;
          case DUSTY_FILL -> dustyFill().rows;
          case RESTLESS -> restless().rows;
          case CHUTE -> chute().rows;
          case CARRIAGE -> carriage().rows;
        });
  }

  private static Sheet still() {
    return new Sheet()
        .put(HOLD, 10, "a few lost returns are no fault")
        .put(MEDIAN_SPAN, 2, "takes single wrong returns out")
        .put(AVERAGE_SPAN, 10, "a calm surface bears smoothing")
        .put(LAG, 5, "a quiet display")
        .put(NEAR_BEYOND, 0.3, "a calm liquid does not jump")
        .put(NEAR_SPAN, 3, "an arm or a drop passes sooner")
        .put(FAR_BEYOND, 0.3, "a calm liquid does not jump")
        .put(FAR_SPAN, 3, "a return from the bottom or the wall does not last")
        .put(BAND, 0.05, "ten times the usual noise of 5 mm")
        .put(ACCEPT_AFTER, 15, "a real change must show before an alarm's response time")
        .put(RISE, 0.01, "36 m/h, more than a tank is filled")
        .put(FALL, 0.01, "36 m/h, more than a tank is emptied")
        .put(RATE_TOLERANCE, 0.03, "six times the usual noise of 5 mm")
        .put(LOST_MARGIN, 0.2, "the beam often goes before the dead zone begins")
        .put(LOST_HORIZON, 60, "a minute of filling ahead");
  }

  private static Sheet dustyFill() {
    return still()
        .put(HOLD, 30, "dust hides the surface for a while")
        .put(MEDIAN_SPAN, 4, "dust returns come in short runs")
        .put(AVERAGE_SPAN, 30, "a rough surface scatters")
        .put(LAG, 10, "a silo is slow")
        .put(NEAR_BEYOND, 0.5, "rough surface, lumps")
        .put(NEAR_SPAN, 15, "a falling stream wavers; a batch that fell in stays")
        .put(FAR_BEYOND, 1, "the surface slides while it is emptied")
        .put(FAR_SPAN, 5, "nothing behind the surface gives a return, so believe it soon")
        .put(BAND, 0.3, "a rough surface scatters by this much")
        .put(ACCEPT_AFTER, 60, "a collapse must not be thrown away")
        .put(RISE, 0.02, "72 m/h, the steepest part of a heap under the stream")
        .put(FALL, 0.05, "a draw-down funnel falls faster than the mean")
        .put(RATE_TOLERANCE, 0.3, "as the agreement band")
        .put(LOST_MARGIN, 0.5, "dust is thickest when the silo is nearly full")
        .put(LOST_HORIZON, 120, "filling goes on for a while after the beam is gone");
  }

  private static Sheet restless() {
    return still()
        .put(AVERAGE_SPAN, 30, "several waves long")
        .put(LAG, 20, "waves are no level")
        .put(NEAR_BEYOND, 1, "waves and splashes are higher than 0.3 m")
        .put(FAR_BEYOND, 1, "a vortex is deeper than 0.3 m")
        .put(BAND, 0.5, "waves within it are one surface")
        .put(RISE, 0.05, "waves move faster than the level")
        .put(FALL, 0.05, "waves move faster than the level")
        .put(RATE_TOLERANCE, 0.3, "waves are no excess of rate");
  }

  private static Sheet chute() {
    return still()
        .put(HOLD, 2, "a blockage must be seen within seconds")
        .put(MEDIAN_SPAN, 1, "a single piece of material")
        .put(AVERAGE_SPAN, 0, "no delay")
        .put(LAG, 0, "no delay")
        .put(NEAR_BEYOND, 0.2, "pieces fall through the beam")
        .put(NEAR_SPAN, 1.5, "a piece passes sooner; a blockage stays")
        .put(FAR_BEYOND, 0.2, "the chute becomes free at once")
        .put(FAR_SPAN, 0.7, "a gap between pieces is no free chute")
        .put(BAND, 0.2, "coarse material")
        .put(ACCEPT_AFTER, 3, "a blockage must be seen within seconds")
        .put(RISE, 0, "a chute fills as fast as the material falls")
        .put(FALL, 0, "a blockage breaks loose at once")
        .put(LOST_MARGIN, 0.1, "the material may reach the transmitter")
        .put(LOST_HORIZON, 5, "a chute fills within seconds");
  }

  private static Sheet carriage() {
    return still()
        .put(HOLD, 2, "a moving carriage is not where it was")
        .put(MEDIAN_SPAN, 0.7, "takes single wrong returns out")
        .put(AVERAGE_SPAN, 0, "no delay: 1 s at 1 m/s is 1 m")
        .put(LAG, 0.3, "little delay: 0.3 m at 1 m/s")
        .put(NEAR_BEYOND, 1.5, "more than the carriage moves between two samples")
        .put(NEAR_SPAN, 1, "somebody walks through the beam")
        .put(FAR_BEYOND, 1.5, "more than the carriage moves between two samples")
        .put(FAR_SPAN, 1, "a return past the target does not last")
        .put(BAND, 1.5, "a moving carriage gives other distances each time")
        .put(ACCEPT_AFTER, 3, "the drive must not run on an old position")
        .put(RISE, 3, "faster than a carriage drives")
        .put(FALL, 3, "faster than a carriage drives")
        .put(RATE_TOLERANCE, 0.1, "noise and vibration")
        .put(LOST_MARGIN, 0.3, "about to reach the buffer")
        .put(LOST_HORIZON, 3, "the way it takes to stop");
  }

  /** Collects the values of a profile. */
  private static final class Sheet {
    private final Map<ProfileKey, ProfileSheet.Row> rows = new EnumMap<>(ProfileKey.class);

    Sheet put(ProfileKey key, double value, String why) {
      rows.put(key, ProfileSheet.row(key, value, why));
      return this;
    }
  }
}
