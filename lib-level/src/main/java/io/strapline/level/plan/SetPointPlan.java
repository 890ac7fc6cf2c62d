package io.strapline.level.plan;

import io.strapline.level.inventory.Content;
import io.strapline.level.inventory.GreatestFlows;
import io.strapline.level.inventory.Target;
import io.strapline.level.inventory.TimeToTarget;
import io.strapline.level.reading.Reading;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Set points of a vessel, derived by volume from the critical levels, the greatest flows and the
 * response times. Immutable.
 *
 * <p>{@code V(upper) - V(lower) = Q t}: by volume and not by a constant speed of the surface, since
 * a lying cylinder or a hopper fills at a changing speed. From the top: critical high, automatic
 * shut-off, high-high, maximum working; from the bottom: critical low, low-low, minimum working.
 * Steps that are not asked for are left out. What does not fit is told and not bent.
 *
 * <p>This is arithmetic for people who plan. It is no overfill protection, and Strapline is no
 * safety-instrumented system: local codes and the site's own analysis decide.
 */
public final class SetPointPlan {

  private static final int HALVINGS = 60;
  private static final double SECONDS_PER_HOUR = 3600;

  private final SetPointBasis basis;
  private final SetPointLadder high;
  private final SetPointLadder low;
  private final List<SetPointProblem> problems;

  private SetPointPlan(SetPointBasis basis) {
    this.basis = basis;
    high = SetPointLadder.of(basis, true, 1);
    low = SetPointLadder.of(basis, false, 1);
    List<SetPointProblem> found = new ArrayList<>();
    findRoomProblems(found);
    findUnmeasured(found);
    problems = List.copyOf(found);
  }

  /** Derives the set points; look at {@link #problems()} before using them. */
  public static SetPointPlan of(SetPointBasis basis) {
    return new SetPointPlan(basis);
  }

  /** Returns whether all set points fit the vessel and the transmitter. */
  public boolean fits() {
    return problems.isEmpty();
  }

  /** Returns what does not fit, empty when all does. */
  public List<SetPointProblem> problems() {
    return problems;
  }

  /** Returns the critical levels and all set points that could be derived, top to bottom. */
  public List<SetPointRow> rows() {
    List<SetPointRow> all = new ArrayList<>(high.rows());
    all.addAll(low.rows());
    all.sort(Comparator.comparing(SetPointRow::setPoint));
    return List.copyOf(all);
  }

  /**
   * Returns one set point.
   *
   * @throws IllegalArgumentException if it was not asked for or could not be derived
   */
  public SetPointRow row(SetPoint setPoint) {
    return rows().stream()
        .filter(row -> row.setPoint() == setPoint)
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "SetPointPlan.row = "
                        + setPoint
                        + ": must be one that was asked for and fits; see problems()"));
  }

  /**
   * Returns the greatest share of flow times response time with which all set points find room:
   * with the greatest flows, or with all response times, cut to this share. 1 when they fit as they
   * are; empty when allowances and least heights alone leave no room.
   */
  public OptionalDouble shareThatFits() {
    if (hasRoom(1)) {
      return OptionalDouble.of(1);
    }
    double fits = 0;
    double fails = 1;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (fits + fails) / 2;
      if (hasRoom(middle)) {
        fits = middle;
      } else {
        fails = middle;
      }
    }
    return fits > 0 ? OptionalDouble.of(fits) : OptionalDouble.empty();
  }

  private boolean hasRoom(double share) {
    SetPointLadder upper = SetPointLadder.of(basis, true, share);
    SetPointLadder lower = SetPointLadder.of(basis, false, share);
    return upper.problem() == null
        && lower.problem() == null
        && upper.last().levelMetres() > lower.last().levelMetres();
  }

  private void findRoomProblems(List<SetPointProblem> found) {
    add(found, high.problem());
    add(found, low.problem());
    if (!found.isEmpty()) {
      return;
    }
    SetPointRow upper = high.last();
    SetPointRow lower = low.last();
    if (!(upper.levelMetres() > lower.levelMetres())) {
      found.add(
          new SetPointProblem(
              lower.setPoint(),
              SetPointProblem.Reason.ORDER,
              OptionalDouble.of(lower.levelMetres() - upper.levelMetres()),
              OptionalDouble.of(lower.volumeCubicMetres() - upper.volumeCubicMetres()),
              roomFix()));
    }
  }

  private void add(List<SetPointProblem> found, @Nullable SetPointProblem problem) {
    if (problem != null) {
      found.add(
          new SetPointProblem(
              problem.setPoint(),
              problem.reason(),
              problem.shortMetres(),
              problem.shortCubicMetres(),
              roomFix()));
    }
  }

  private String roomFix() {
    OptionalDouble share = shareThatFits();
    if (share.isEmpty()) {
      return "reduce allowances and least heights, or widen the critical levels";
    }
    DesignFlows flows = basis.flows().times(share.getAsDouble());
    return "cut the greatest flows to "
        + roundedDown(flows.inCubicMetresPerSecond() * SECONDS_PER_HOUR)
        + " m3/h in and "
        + roundedDown(flows.outCubicMetresPerSecond() * SECONDS_PER_HOUR)
        + " m3/h out, or all response times to "
        + roundedDown(100 * share.getAsDouble())
        + " %, or widen the critical levels";
  }

  // Down, so that what is told does fit.
  private static String roundedDown(double value) {
    return new BigDecimal(value).round(new MathContext(3, RoundingMode.DOWN)).toPlainString();
  }

  // The shut-off is left out: its device must not be the transmitter that raises the alarms.
  private void findUnmeasured(List<SetPointProblem> found) {
    for (SetPointRow row : rows()) {
      SetPoint setPoint = row.setPoint();
      boolean own = !setPoint.isCritical() && setPoint != SetPoint.AUTOMATIC_SHUT_OFF;
      double miss = own ? basis.window().missMetres(row.levelMetres()) : 0;
      if (miss > 0) {
        found.add(
            new SetPointProblem(
                setPoint,
                SetPointProblem.Reason.NOT_MEASURED,
                OptionalDouble.of(miss),
                OptionalDouble.empty(),
                "mount the transmitter or set its range so that it measures this level"));
      }
    }
  }

  /**
   * Returns how long it takes to reach each level of {@link #rows()}, at the present and at the
   * greatest flow: high ones by filling, low ones by drawing.
   *
   * @param level present level above the datum, in metres
   * @param flow present flow in m3/s, filling positive
   */
  public List<TimeToTarget> available(Reading level, Reading flow) {
    Content volume = Content.volume(basis.vessel());
    Reading content = level.derived(volume.at(level.value()), level.quality());
    List<TimeToTarget> times = new ArrayList<>();
    for (SetPointRow row : rows()) {
      boolean up = row.setPoint().isHigh();
      double greatest = basis.flows().towards(up);
      if (greatest > 0) {
        Target.Side side = up ? Target.Side.FROM_BELOW : Target.Side.FROM_ABOVE;
        Target target = new Target(row.setPoint().label(), row.volumeCubicMetres(), side);
        times.add(
            TimeToTarget.of(
                target,
                content,
                flow,
                new GreatestFlows(
                    up ? OptionalDouble.of(greatest) : OptionalDouble.empty(),
                    up ? OptionalDouble.empty() : OptionalDouble.of(greatest))));
      }
    }
    return List.copyOf(times);
  }
}
