package io.strapline.level.plan;

import io.strapline.level.loop.LoopBand;
import java.util.OptionalDouble;

/**
 * What a loop must give at one point. Immutable.
 *
 * @param name of the point
 * @param signal what runs through the loop
 * @param surface where the surface is, by the transmitter's range; at a failure current the
 *     straight line goes on and the values stand for nothing but what a receiver without fault
 *     detection would show
 * @param shown what the receiver makes of it
 */
public record LoopCheckRow(String name, Signal signal, Surface surface, Shown shown) {

  /**
   * What runs through the loop.
   *
   * @param currentMilliamps to be measured or driven
   * @param percent of the transmitter's span
   * @param rawCount of the input card; empty without a card, or when its register cannot hold it
   * @param band of the current
   */
  public record Signal(
      double currentMilliamps, double percent, OptionalDouble rawCount, LoopBand band) {

    /** Returns whether a transmitter can signal a measurement by this current. */
    public boolean isMeasurement() {
      return isMeasurement(band);
    }

    static boolean isMeasurement(LoopBand band) {
      return band == LoopBand.UNDER_RANGE || band == LoopBand.NORMAL || band == LoopBand.OVER_RANGE;
    }
  }

  /**
   * Where the surface is.
   *
   * @param distanceMetres along the beam
   * @param levelMetres above the datum
   */
  public record Surface(double distanceMetres, double levelMetres) {}

  /**
   * What the receiver makes of the current. All empty at a failure current: it must show a fault
   * and no level.
   *
   * @param levelMetres level that it shows
   * @param errorMetres shown level less true level; negative hides a high level
   * @param errorPercent the same in percent of the receiver's span
   * @param surfaceMetres level at which the surface stands when the receiver shows the row's level,
   *     that is, when its alarm comes
   */
  public record Shown(
      OptionalDouble levelMetres,
      OptionalDouble errorMetres,
      OptionalDouble errorPercent,
      OptionalDouble surfaceMetres) {

    static final Shown FAULT =
        new Shown(
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty());
  }
}
