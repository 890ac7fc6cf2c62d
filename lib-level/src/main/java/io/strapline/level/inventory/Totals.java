package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import io.strapline.level.internal.Elapsed;
import io.strapline.level.inventory.TotalsState.Turning;
import io.strapline.level.reading.Reading;
import java.time.Instant;
import java.util.Optional;

/**
 * Totals of what was filled and drawn, from the level alone. Stateful, one thread at a time; {@link
 * #state} is all there is to save, {@link #restore} continues from it, {@link #clear} sets both
 * totals to zero.
 *
 * <p><b>Hysteresis.</b> While filling, every new highest level adds the amount above the one
 * before; the movement turns only when the level has come back from the highest by the threshold,
 * and then the whole way back counts as drawn. Drawing is the mirror image. So noise below the
 * threshold cannot creep: a level that stands adds at most its own peak once. Nothing that goes on
 * is lost: a slow movement counts in full as soon as it has gone the threshold. Always {@code
 * filled - drawn = content at the turning point - content at the first sample}.
 *
 * <p><b>Bias.</b> Each turning point carries the noise of its sample. Where the level rests, the
 * turning point moves to the noise's peak and both totals come out high; either is off by at most
 * the noise's peak-to-peak, as an amount, for each fill-and-draw cycle. True movements smaller than
 * the threshold do not count. Choose the threshold at two to three times the peak-to-peak noise.
 *
 * <p><b>Gaps.</b> BAD and held samples are left out. What moved meanwhile, or while the program was
 * down, counts net with the next usable sample. A sample older than the newest by up to {@value
 * #LATECOMER_SECONDS} s is a latecomer and ignored; one that is older still means that the clock
 * was set, and counts.
 *
 * <p>Sums are double precision and compensated, see {@link CompensatedSum}: single precision stops
 * counting single litres at 16 777 216.
 */
public final class Totals {

  /** Age against the newest sample up to which a sample is ignored, in seconds. */
  public static final double LATECOMER_SECONDS = 60;

  // Keeps a return of exactly the threshold from hanging on the last bit.
  private static final double SLACK = 1 - 1e-9;

  private final double thresholdMetres;
  private final Content content;
  private TotalsState state;

  private Totals(double thresholdMetres, Content content, TotalsState state) {
    this.thresholdMetres =
        Check.positive(
            "Totals.threshold",
            thresholdMetres,
            "m",
            "give two to three times the peak-to-peak noise of the level");
    this.content = Check.present("Totals.content", content, "give the content");
    this.state = Check.present("Totals.state", state, "give the saved state");
  }

  /**
   * Returns totals of zero.
   *
   * @param thresholdMetres return of the level that turns the movement, finite, greater than zero
   * @param content unit of the totals
   */
  public static Totals of(double thresholdMetres, Content content) {
    return new Totals(thresholdMetres, content, TotalsState.NONE);
  }

  /** Returns totals that go on from a saved state, see {@link #of}. */
  public static Totals restore(double thresholdMetres, Content content, TotalsState saved) {
    return new Totals(thresholdMetres, content, saved);
  }

  /** Takes the next level, in metres above the datum, and returns the state after it. */
  public TotalsState add(Reading level) {
    Check.present("Totals.level", level, "give the level's reading");
    if (!level.quality().isBad() && !level.quality().cause().isHeld() && !late(level.time())) {
      state = next(level);
    }
    return state;
  }

  /** Returns all that must be saved. */
  public TotalsState state() {
    return state;
  }

  /** Sets both totals to zero and returns the state before. */
  public TotalsState clear() {
    TotalsState before = state;
    state = new TotalsState(CompensatedSum.ZERO, CompensatedSum.ZERO, before.turning(), false);
    return before;
  }

  private boolean late(Instant time) {
    return state
        .turning()
        .map(turning -> Elapsed.seconds(turning.lastTime(), time))
        .filter(age -> age < 0 && age >= -LATECOMER_SECONDS)
        .isPresent();
  }

  private TotalsState next(Reading level) {
    Optional<Turning> turning = state.turning();
    if (turning.isEmpty()) {
      return turned(FlowDirection.STILL, level.value(), level.time());
    }
    Turning from = turning.get();
    FlowDirection direction = moved(from, level.value());
    if (direction == FlowDirection.STILL) {
      return turned(from.direction(), from.heightMetres(), level.time());
    }
    return counted(from, direction, level);
  }

  // The direction that the way from the turning point counts for, STILL when it does not count.
  private FlowDirection moved(Turning from, double height) {
    double change = height - from.heightMetres();
    FlowDirection direction = FlowDirection.of(change);
    boolean onward = direction == from.direction();
    boolean far = Math.abs(change) >= thresholdMetres * SLACK;
    return onward || far ? direction : FlowDirection.STILL;
  }

  private TotalsState counted(Turning from, FlowDirection direction, Reading level) {
    double change = content.at(level.value()) - content.at(from.heightMetres());
    boolean fills = direction == FlowDirection.FILLING;
    return new TotalsState(
        fills ? state.filled().plus(change) : state.filled(),
        fills ? state.drawn() : state.drawn().plus(-change),
        Optional.of(new Turning(direction, level.value(), level.time())),
        state.doubtful() || !level.quality().isGood());
  }

  private TotalsState turned(FlowDirection direction, double height, Instant time) {
    return new TotalsState(
        state.filled(),
        state.drawn(),
        Optional.of(new Turning(direction, height, time)),
        state.doubtful());
  }
}
