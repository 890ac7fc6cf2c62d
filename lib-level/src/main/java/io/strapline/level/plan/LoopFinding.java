package io.strapline.level.plan;

import io.strapline.level.internal.Check;
import io.strapline.level.loop.LoopLimits;
import java.util.OptionalDouble;

/**
 * Which side of a loop is wrong. Immutable. The current in the middle tells: the transmitter side
 * must give the current that belongs to the true level, the receiver side must show the level that
 * belongs to the current.
 *
 * <p>Both sides are judged by the transmitter's range, the one agreed: a receiver with another
 * range is the one at fault.
 *
 * @param idealMilliamps current that belongs to the true level, held at the limits of the measuring
 *     range as a transmitter holds it
 * @param transmitterErrorMilliamps measured less ideal current
 * @param transmitterErrorPercent the same in percent of 16 mA
 * @param receiver what the receiver side should show and by how much it misses
 * @param verdict which side exceeds its tolerance
 */
public record LoopFinding(
    double idealMilliamps,
    double transmitterErrorMilliamps,
    double transmitterErrorPercent,
    Receiver receiver,
    Verdict verdict) {

  private static final double SPAN_MILLIAMPS = 16;

  /** Which side exceeds its tolerance. */
  public enum Verdict {
    /** Neither. */
    BOTH_SIDES_GOOD,
    /**
     * Transmitter, its range, mounting or reference point; or the loop cannot carry the current.
     */
    TRANSMITTER_SIDE_AT_FAULT,
    /** Input card, its scaling, or the range in the control system. */
    RECEIVER_SIDE_AT_FAULT,
    /** Both, even if their errors happen to cancel. */
    BOTH_SIDES_AT_FAULT
  }

  /**
   * The receiver's side.
   *
   * @param expectedMetres level that belongs to the measured current; empty at a failure current,
   *     where it must show a fault
   * @param errorMetres shown less expected level; empty when one of them is missing
   * @param errorPercent the same in percent of the transmitter's span
   */
  public record Receiver(
      OptionalDouble expectedMetres, OptionalDouble errorMetres, OptionalDouble errorPercent) {}

  /**
   * Greatest errors that still count as good, each in percent of span, greater than zero. The
   * reference's own error belongs into the first.
   *
   * @param transmitterPercent of the current against the true level
   * @param receiverPercent of the shown level against the current
   */
  public record Tolerance(double transmitterPercent, double receiverPercent) {

    /** Checks both. */
    public Tolerance {
      Check.positive(
          "LoopFinding.tolerance.transmitter",
          transmitterPercent,
          "%",
          "enter a tolerance in percent of span");
      Check.positive(
          "LoopFinding.tolerance.receiver",
          receiverPercent,
          "%",
          "enter a tolerance in percent of span");
    }
  }

  /** Judges what was observed. */
  public static LoopFinding of(LoopSides sides, LoopObservation observed, Tolerance tolerance) {
    double ideal = saturated(sides.currentMilliamps(observed.referenceMetres()), sides.limits());
    double error = observed.currentMilliamps() - ideal;
    double percent = 100 * error / SPAN_MILLIAMPS;
    Receiver receiver = receiver(sides, observed);
    boolean transmitterGood = Math.abs(percent) <= tolerance.transmitterPercent();
    boolean receiverGood = receiverGood(receiver, observed, tolerance.receiverPercent());
    return new LoopFinding(ideal, error, percent, receiver, verdict(transmitterGood, receiverGood));
  }

  private static double saturated(double currentMilliamps, LoopLimits limits) {
    return Math.max(limits.underRange(), Math.min(limits.overRange(), currentMilliamps));
  }

  private static Receiver receiver(LoopSides sides, LoopObservation observed) {
    OptionalDouble none = OptionalDouble.empty();
    if (sides.limits().classify(observed.currentMilliamps()).isFailure()) {
      return new Receiver(none, none, none);
    }
    double expected = sides.meantMetres(observed.currentMilliamps());
    if (observed.shownMetres().isEmpty()) {
      return new Receiver(OptionalDouble.of(expected), none, none);
    }
    double error = observed.shownMetres().getAsDouble() - expected;
    double span = Math.abs(sides.meantMetres(20) - sides.meantMetres(4));
    return new Receiver(
        OptionalDouble.of(expected),
        OptionalDouble.of(error),
        OptionalDouble.of(100 * error / span));
  }

  private static boolean receiverGood(Receiver receiver, LoopObservation observed, double percent) {
    boolean faultExpected = receiver.expectedMetres().isEmpty();
    if (faultExpected || observed.shownMetres().isEmpty()) {
      return faultExpected && observed.shownMetres().isEmpty();
    }
    return Math.abs(receiver.errorPercent().orElseThrow()) <= percent;
  }

  private static Verdict verdict(boolean transmitterGood, boolean receiverGood) {
    if (transmitterGood) {
      return receiverGood ? Verdict.BOTH_SIDES_GOOD : Verdict.RECEIVER_SIDE_AT_FAULT;
    }
    return receiverGood ? Verdict.TRANSMITTER_SIDE_AT_FAULT : Verdict.BOTH_SIDES_AT_FAULT;
  }
}
