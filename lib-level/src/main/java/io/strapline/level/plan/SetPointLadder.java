package io.strapline.level.plan;

import io.strapline.level.vessel.CapacityCurve;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * The set points of one side, from the critical level inwards. Each step leaves the volume of its
 * time at the greatest flow: {@code V(lower) = V(upper) - Q t}, then the height of that volume,
 * less the allowance; mirrored for the low side. Immutable.
 */
final class SetPointLadder {

  private static final List<SetPoint> HIGH =
      List.of(SetPoint.AUTOMATIC_SHUT_OFF, SetPoint.HIGH_HIGH, SetPoint.MAXIMUM_WORKING);
  private static final List<SetPoint> LOW = List.of(SetPoint.LOW_LOW, SetPoint.MINIMUM_WORKING);

  private final CapacityCurve vessel;
  private final boolean high;
  private final double flow;
  private final double opposite;
  private final List<SetPointRow> rows = new ArrayList<>();
  private @Nullable SetPointProblem problem;

  private SetPointLadder(SetPointBasis basis, boolean high, double share) {
    vessel = basis.vessel();
    this.high = high;
    flow = basis.flows().towards(high) * share;
    opposite = basis.criticalMetres(!high);
    double critical = basis.criticalMetres(high);
    double volume = vessel.volumeCubicMetres(critical);
    SetPoint start = high ? SetPoint.CRITICAL_HIGH : SetPoint.CRITICAL_LOW;
    rows.add(new SetPointRow(start, critical, volume, 0, 0, 0));
    for (SetPoint setPoint : high ? HIGH : LOW) {
      if (problem == null && basis.step(setPoint).isPresent()) {
        add(setPoint, basis.step(setPoint).get());
      }
    }
  }

  /**
   * Derives one side.
   *
   * @param share of the greatest flow that is reckoned with, in (0, 1]
   */
  static SetPointLadder of(SetPointBasis basis, boolean high, double share) {
    return new SetPointLadder(basis, high, share);
  }

  /** The rows that could be derived, the critical level first. */
  List<SetPointRow> rows() {
    return List.copyOf(rows);
  }

  SetPointRow last() {
    return rows.get(rows.size() - 1);
  }

  @Nullable SetPointProblem problem() {
    return problem;
  }

  private void add(SetPoint setPoint, ResponseStep step) {
    SetPointRow from = last();
    double room = Math.abs(vessel.volumeCubicMetres(opposite) - from.volumeCubicMetres());
    double needed = flow * step.requiredSeconds();
    if (!(needed < room)) {
      problem = noRoom(setPoint, OptionalDouble.empty(), OptionalDouble.of(needed - room));
      return;
    }
    double level = level(from, needed, step.margin());
    if (!(high ? level > opposite : level < opposite)) {
      problem =
          noRoom(setPoint, OptionalDouble.of(Math.abs(opposite - level)), OptionalDouble.empty());
      return;
    }
    rows.add(row(setPoint, level, step));
  }

  private double level(SetPointRow from, double needed, Margin margin) {
    double inwards = high ? -1 : 1;
    double byVolume = vessel.heightMetres(from.volumeCubicMetres() + inwards * needed);
    double withAllowance = byVolume + inwards * margin.allowanceMetres();
    double least = from.levelMetres() + inwards * margin.leastMetres();
    return high ? Math.min(withAllowance, least) : Math.max(withAllowance, least);
  }

  private SetPointRow row(SetPoint setPoint, double level, ResponseStep step) {
    double volume = vessel.volumeCubicMetres(level);
    double fromLast = Math.abs(last().volumeCubicMetres() - volume) / flow;
    double fromCritical = Math.abs(rows.get(0).volumeCubicMetres() - volume) / flow;
    return new SetPointRow(setPoint, level, volume, step.requiredSeconds(), fromLast, fromCritical);
  }

  private static SetPointProblem noRoom(
      SetPoint setPoint, OptionalDouble metres, OptionalDouble volume) {
    SetPointProblem.Reason reason =
        volume.isPresent()
            ? SetPointProblem.Reason.NO_ROOM_FOR_VOLUME
            : SetPointProblem.Reason.NO_ROOM_FOR_HEIGHT;
    return new SetPointProblem(setPoint, reason, metres, volume, "see the share that fits");
  }
}
