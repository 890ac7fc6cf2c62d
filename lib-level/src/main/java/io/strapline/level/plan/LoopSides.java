package io.strapline.level.plan;

import io.strapline.level.internal.Check;
import io.strapline.level.loop.LoopLimits;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.loop.RawCounts;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import java.util.Optional;

/**
 * The two sides of a current loop: what the transmitter is set to and what the receiver (input card
 * and control system) takes the current for. Immutable.
 *
 * @param transmitter range set in the transmitter
 * @param receiver range set in the receiver; may be a level where the other is a distance
 * @param mounting joins distance and level
 * @param limits by which the receiver judges the current
 * @param card raw counts of the input card; empty when the receiver shows no counts
 */
public record LoopSides(
    LoopRange transmitter,
    LoopRange receiver,
    Mounting mounting,
    LoopLimits limits,
    Optional<RawCounts> card) {

  /** Checks that all parts are there. */
  public LoopSides {
    Check.present("LoopSides.transmitter", transmitter, "give the range set in the transmitter");
    Check.present("LoopSides.receiver", receiver, "give the range set in the receiver");
    Check.present("LoopSides.mounting", mounting, "give the mounting");
    Check.present("LoopSides.limits", limits, "give LoopLimits.NE43 unless the plant has others");
    Check.present("LoopSides.card", card, "give Optional.empty() without raw counts");
  }

  /**
   * Returns the sides of a measuring point, which is the receiver here.
   *
   * @param transmitter range as read in the transmitter itself, not copied from the settings
   * @throws IllegalArgumentException if the point has no loop range
   */
  public static LoopSides of(LoopRange transmitter, PointSettings point) {
    LoopRange receiver =
        point
            .range()
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "LoopSides.receiver is missing: "
                            + point.tag()
                            + " has no loop range; give its value at 4 and 20 mA"));
    return new LoopSides(
        transmitter, receiver, point.mounting(), point.loopLimits(), point.rawCounts());
  }

  /** Returns the current that the transmitter gives for a level, not saturated. */
  double currentMilliamps(double levelMetres) {
    return current(transmitter, levelMetres);
  }

  /** Returns the level that a current stands for by the transmitter's range. */
  double meantMetres(double currentMilliamps) {
    return level(transmitter, currentMilliamps);
  }

  /** Returns the level that the receiver makes of a current. */
  double shownMetres(double currentMilliamps) {
    return level(receiver, currentMilliamps);
  }

  /** Returns the current at which the receiver shows this level. */
  double alarmMilliamps(double levelMetres) {
    return current(receiver, levelMetres);
  }

  /** Returns the level at which the surface stands when the receiver shows this level. */
  double surfaceWhenShown(double levelMetres) {
    return level(transmitter, alarmMilliamps(levelMetres));
  }

  private double current(LoopRange range, double levelMetres) {
    boolean distance = range.measure() == LoopRange.Measure.DISTANCE;
    return range.currentMilliamps(distance ? mounting.distanceMetres(levelMetres) : levelMetres);
  }

  private double level(LoopRange range, double currentMilliamps) {
    double value = range.valueMetres(currentMilliamps);
    return range.measure() == LoopRange.Measure.DISTANCE ? mounting.levelMetres(value) : value;
  }

  /** Returns the receiver's span as a difference of level, in metres, greater than zero. */
  double receiverSpanMetres() {
    return Math.abs(shownMetres(20) - shownMetres(4));
  }
}
