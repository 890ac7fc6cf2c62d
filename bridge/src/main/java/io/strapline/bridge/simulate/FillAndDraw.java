package io.strapline.bridge.simulate;

import io.strapline.bridge.config.SourceSettings.LevelProcess;
import io.strapline.level.vessel.CapacityCurve;
import java.util.Locale;
import java.util.Optional;

/**
 * A content that is filled at a constant rate up to one height, drawn at a constant rate down to
 * another, and so on. The content is a volume where there is a vessel, else the level itself. It is
 * a pure function of the time since the start, so nothing adds up over a long run. Immutable.
 *
 * <p>Derived here: on a filling leg {@code content = content at its start + fill rate * time}, on a
 * drawing leg {@code content at its start - draw rate * time}; one period is one leg of each.
 */
final class FillAndDraw {

  private final Optional<CapacityCurve> vessel;
  private final LevelProcess process;
  private final double start;
  private final double low;
  private final double high;

  /**
   * Takes how the level moves and in which vessel.
   *
   * @throws IllegalArgumentException if the two turning heights hold the same content or a rate is
   *     not greater than zero
   */
  FillAndDraw(LevelProcess process, Optional<CapacityCurve> vessel) {
    this.process = process;
    this.vessel = vessel;
    low = content(process.drawToMetres());
    high = content(process.fillToMetres());
    start = content(process.startLevelMetres());
    check(high > low, "fillTo", process.fillToMetres(), "must hold more than drawTo");
    check(positive(process.fillPerSecond()), "fill", process.fillPerSecond(), "must be above zero");
    check(positive(process.drawPerSecond()), "draw", process.drawPerSecond(), "must be above zero");
    check(Double.isFinite(start), "startLevel", process.startLevelMetres(), "must be a number");
  }

  private static boolean positive(double rate) {
    return Double.isFinite(rate) && rate > 0;
  }

  private static void check(boolean holds, String field, double value, String rule) {
    if (!holds) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "LevelProcess.%s = %s: %s; correct the simulated process",
              field,
              value,
              rule));
    }
  }

  /** Returns the level above the datum, in metres, so many seconds after the start. */
  double levelMetres(double elapsedSeconds) {
    double content = contentAfter(elapsedSeconds);
    return vessel.map(curve -> curve.heightMetres(content)).orElse(content);
  }

  /** Returns the content in m3 (in m without a vessel), so many seconds after the start. */
  double contentAfter(double elapsedSeconds) {
    double firstLeg = Math.abs(firstTurn() - start) / firstRate();
    if (elapsedSeconds < firstLeg) {
      return start + Math.signum(firstTurn() - start) * firstRate() * elapsedSeconds;
    }
    double sinceTurn = elapsedSeconds - firstLeg;
    return firstTurn() > low ? afterFull(sinceTurn) : afterFull(sinceTurn + drawSeconds());
  }

  /** A start above the upper height is drawn down first; every other start is filled. */
  private double firstTurn() {
    return start > high ? low : high;
  }

  private double firstRate() {
    return start > high ? process.drawPerSecond() : process.fillPerSecond();
  }

  private double afterFull(double seconds) {
    double fillSeconds = (high - low) / process.fillPerSecond();
    double phase = seconds % (drawSeconds() + fillSeconds);
    return phase < drawSeconds()
        ? high - process.drawPerSecond() * phase
        : low + process.fillPerSecond() * (phase - drawSeconds());
  }

  private double drawSeconds() {
    return (high - low) / process.drawPerSecond();
  }

  private double content(double levelMetres) {
    return vessel.map(curve -> curve.volumeCubicMetres(levelMetres)).orElse(levelMetres);
  }
}
