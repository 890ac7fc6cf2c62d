package io.strapline.level.surface;

import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The levels of a group with estimates in place of lost ones, and what that costs. Immutable as
 * long as nobody writes to its arrays; they stay in this package.
 */
final class GroupFilling {

  private final BeamGroupSettings settings;
  private final List<PlanPoint> feet;
  private final int[] usable;
  private final int[] lost;
  private final double[] levels;
  private final double[] shares;
  private final boolean differenceKnown;
  private final double lossMetres;
  private final GroupEstimate estimate;

  /**
   * Fills in the lost levels.
   *
   * @param given levels of all beams, of no meaning where lost
   * @param complete levels when all beams were last seen in agreement
   */
  GroupFilling(
      BeamGroupSettings settings,
      List<PlanPoint> feet,
      Split split,
      double[] given,
      double @Nullable [] complete) {
    this.settings = settings;
    this.feet = feet;
    usable = split.usable();
    lost = split.lost();
    differenceKnown = complete != null || lost.length == 0;
    shares = GroupEstimate.shares(settings.vessel().plan(), feet);
    levels = given.clone();
    double added = 0;
    for (int i : lost) {
      double difference = complete == null ? 0 : complete[i] - predict(complete, i);
      levels[i] = predict(given, i) + difference;
      added += shares[i] * doubt(i, difference);
    }
    lossMetres = added;
    clamp();
    estimate = GroupEstimate.of(settings.vessel(), settings.method(), feet, levels);
  }

  /** Beams by whether they give a usable level. */
  @SuppressWarnings("ArrayRecordComponent") // passed on once, never compared
  record Split(int[] usable, int[] lost) {}

  private double predict(double[] from, int at) {
    return GroupEstimate.predict(
        settings.vessel().plan(), feetOf(usable), valuesOf(from, usable), feet.get(at));
  }

  private List<PlanPoint> feetOf(int[] indexes) {
    return IntStream.of(indexes).mapToObj(feet::get).toList();
  }

  private static double[] valuesOf(double[] values, int[] indexes) {
    return IntStream.of(indexes).mapToDouble(i -> values[i]).toArray();
  }

  /**
   * Returns how far the estimate of a lost level may be off: never more than the steepest surface
   * from the nearest other beam allows; where the difference was seen, twice that difference, as if
   * a heap had become a funnel, and at least the limit of agreement.
   */
  private double doubt(int at, double difference) {
    int nearest = nearest(at);
    double apart = feet.get(nearest).distanceMetres(feet.get(at));
    double off = Math.abs(levels[at] - levels[nearest]);
    double physical = off + settings.agreement().allowedMetres(apart);
    double seen = Math.max(settings.agreement().limitMetres(), 2 * Math.abs(difference));
    return differenceKnown ? Math.min(seen, physical) : physical;
  }

  private int nearest(int at) {
    int nearest = usable[0];
    for (int i : usable) {
      boolean nearer =
          feet.get(i).distanceMetres(feet.get(at)) < feet.get(nearest).distanceMetres(feet.get(at));
      nearest = nearer ? i : nearest;
    }
    return nearest;
  }

  private void clamp() {
    for (int i = 0; i < levels.length; i++) {
      double floor = settings.vessel().floorMetres(feet.get(i));
      double roof = settings.vessel().roofMetres(feet.get(i));
      levels[i] = Math.min(Math.max(levels[i], floor), roof);
    }
  }

  double[] levels() {
    return levels;
  }

  double[] shares() {
    return shares;
  }

  GroupEstimate estimate() {
    return estimate;
  }

  double uncertaintyMetres() {
    double own = settings.agreement().levelUncertaintyMetres();
    return own + estimate.misfitMetres() + lossMetres;
  }

  BeamLoss loss() {
    if (lost.length == 0) {
      return BeamLoss.NONE;
    }
    GroupEstimate bare =
        GroupEstimate.of(
            settings.vessel(), settings.method(), feetOf(usable), valuesOf(levels, usable));
    return new BeamLoss(
        IntStream.of(lost).mapToObj(i -> settings.beams().get(i).name()).toList(),
        differenceKnown,
        bare.levelMetres() - estimate.levelMetres(),
        bare.volumeCubicMetres() - estimate.volumeCubicMetres());
  }
}
