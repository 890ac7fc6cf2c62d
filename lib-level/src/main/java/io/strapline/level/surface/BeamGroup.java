package io.strapline.level.surface;

import io.strapline.level.internal.Check;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * One level and one volume from several beams on a vessel. Holds the levels of the last moment at
 * which all beams were usable and agreed; a new object has none. Not for more than one thread at a
 * time.
 *
 * <p>A beam without a usable level does not move the result: its level is estimated from the others
 * plus the difference it had to them when it was last seen. The quality falls, the uncertainty
 * grows, and the snapshot shows by how much leaving it out would have moved the result. See {@link
 * BeamLoss}.
 */
public final class BeamGroup {

  private final BeamGroupSettings settings;
  private final List<BeamView> views;
  private double @Nullable [] complete;
  private @Nullable BeamGroupSnapshot last;

  private BeamGroup(BeamGroupSettings settings) {
    this.settings = settings;
    views =
        settings.beams().stream().map(each -> BeamView.of(settings.vessel(), each.beam())).toList();
  }

  /** Returns a group that has seen nothing. */
  public static BeamGroup of(BeamGroupSettings settings) {
    return new BeamGroup(Check.present("BeamGroup.settings", settings, "give the settings"));
  }

  /** Returns the settings. */
  public BeamGroupSettings settings() {
    return settings;
  }

  /**
   * Takes the levels of all beams at one moment.
   *
   * <p>A beam counts as lost when its level is BAD or a substitute. The worst quality of the other
   * beams is that of the result, with three exceptions: a lost beam makes the result uncertain
   * ({@link Cause#BEAM_LOST}) and not BAD while at least the fewest beams are left; a held level is
   * used, and as long as another beam is live the result is uncertain with the same cause and not
   * held, since limits must go on being judged; beams that cannot all be right make the result
   * uncertain ({@link Cause#BEAMS_DISAGREE}). With fewer beams left the result is BAD with the last
   * values and the cause of the lost beam.
   *
   * @param levels metres above the datum, one per beam in the order of the settings
   * @throws IllegalArgumentException if there are more or fewer than beams
   */
  public BeamGroupSnapshot update(List<Reading> levels) {
    if (levels.size() != views.size()) {
      throw Check.error(
          "BeamGroup.levels",
          Integer.toString(levels.size()),
          "levels",
          "must be one per beam (" + views.size() + ")",
          "pass a BAD reading for a beam that gives nothing");
    }
    int[] usable = indexes(levels, true);
    if (usable.length < settings.agreement().fewestBeams()) {
      return badSnapshot(levels);
    }
    BeamGroupSnapshot snapshot = usableSnapshot(levels, usable);
    last = snapshot;
    return snapshot;
  }

  private static int[] indexes(List<Reading> levels, boolean usable) {
    return IntStream.range(0, levels.size())
        .filter(i -> isUsable(levels.get(i)) == usable)
        .toArray();
  }

  private static boolean isUsable(Reading level) {
    return !level.quality().isBad() && level.quality().cause() != Cause.SUBSTITUTED;
  }

  private BeamGroupSnapshot usableSnapshot(List<Reading> levels, int[] usable) {
    int[] lost = indexes(levels, false);
    double[] given = values(levels);
    List<PlanPoint> feet = feet(given, usable, lost);
    GroupFilling filling =
        new GroupFilling(settings, feet, new GroupFilling.Split(usable, lost), given, complete);
    List<BeamDisagreement> disagreements = disagreements(feet, given, usable);
    if (lost.length == 0 && disagreements.isEmpty()) {
      complete = given.clone();
    }
    boolean clamped =
        filling.estimate().cutByRoof()
            || IntStream.of(usable).anyMatch(i -> filling.levels()[i] != given[i]);
    Quality quality = quality(levels, usable, !disagreements.isEmpty(), clamped);
    return snapshot(filling, new Reading(0, quality, oldest(levels, usable)), disagreements);
  }

  private static double[] values(List<Reading> levels) {
    return levels.stream().mapToDouble(Reading::value).toArray();
  }

  /** Returns where the beams meet the surface; a lost one where it would at the mean level. */
  private List<PlanPoint> feet(double[] given, int[] usable, int[] lost) {
    double[] levels = given.clone();
    double mean = IntStream.of(usable).mapToDouble(i -> given[i]).average().orElse(0);
    for (int i : lost) {
      levels[i] = mean;
    }
    return IntStream.range(0, levels.length).mapToObj(i -> views.get(i).footAt(levels[i])).toList();
  }

  private BeamGroupSnapshot snapshot(
      GroupFilling filling, Reading carrier, List<BeamDisagreement> disagreements) {
    GroupEstimate estimate = filling.estimate();
    double uncertainty = filling.uncertaintyMetres();
    return new BeamGroupSnapshot(
        carrier.derived(estimate.levelMetres(), Quality.GOOD),
        carrier.derived(estimate.volumeCubicMetres(), Quality.GOOD),
        carrier.derived(Arrays.stream(filling.levels()).max().orElse(0), Quality.GOOD),
        carrier.derived(Arrays.stream(filling.levels()).min().orElse(0), Quality.GOOD),
        uncertainty,
        volumeOf(estimate.levelMetres(), uncertainty),
        Arrays.stream(filling.shares()).boxed().toList(),
        filling.loss(),
        disagreements);
  }

  /** Returns half the volume between the levels an uncertainty above and below. */
  private double volumeOf(double level, double uncertainty) {
    double high = settings.vessel().curve().volumeCubicMetres(level + uncertainty);
    return (high - settings.vessel().curve().volumeCubicMetres(level - uncertainty)) / 2;
  }

  private List<BeamDisagreement> disagreements(
      List<PlanPoint> feet, double[] levels, int[] usable) {
    return IntStream.of(usable)
        .boxed()
        .flatMap(
            i -> IntStream.of(usable).filter(j -> j > i).mapToObj(j -> compare(feet, levels, i, j)))
        .filter(pair -> Math.abs(pair.differenceMetres()) > pair.allowedMetres())
        .toList();
  }

  private BeamDisagreement compare(List<PlanPoint> feet, double[] levels, int i, int j) {
    double apart = feet.get(i).distanceMetres(feet.get(j));
    return new BeamDisagreement(
        settings.beams().get(i).name(),
        settings.beams().get(j).name(),
        levels[i] - levels[j],
        settings.agreement().allowedMetres(apart));
  }

  private static Quality quality(
      List<Reading> levels, int[] usable, boolean disagree, boolean clamped) {
    List<Quality> qualities = IntStream.of(usable).mapToObj(i -> levels.get(i).quality()).toList();
    boolean someHeld = qualities.stream().anyMatch(q -> q.cause().isHeld());
    boolean allHeld = qualities.stream().allMatch(q -> q.cause().isHeld());
    Quality result = disagree ? Quality.uncertain(Cause.BEAMS_DISAGREE) : Quality.GOOD;
    if (allHeld) {
      return qualities.get(0);
    }
    if (someHeld || usable.length < levels.size()) {
      result = Quality.worst(result, Quality.uncertain(Cause.BEAM_LOST));
    }
    for (Quality quality : qualities) {
      result = quality.cause().isHeld() ? result : Quality.worst(result, quality);
    }
    return clamped ? Quality.worst(result, Quality.uncertain(Cause.OUTSIDE_VESSEL)) : result;
  }

  private static Instant oldest(List<Reading> levels, int[] usable) {
    return IntStream.of(usable)
        .mapToObj(i -> levels.get(i).time())
        .min(Instant::compareTo)
        .orElseThrow();
  }

  private BeamGroupSnapshot badSnapshot(List<Reading> levels) {
    int[] lost = indexes(levels, false);
    Quality worst = levels.get(lost[0]).quality();
    for (int i : lost) {
      worst = Quality.worst(worst, levels.get(i).quality());
    }
    Instant time = oldest(levels, IntStream.range(0, levels.size()).toArray());
    Quality bad = Quality.bad(worst.cause());
    BeamGroupSnapshot known = last;
    return new BeamGroupSnapshot(
        new Reading(known == null ? 0 : known.equivalentLevel().value(), bad, time),
        new Reading(known == null ? 0 : known.volume().value(), bad, time),
        new Reading(known == null ? 0 : known.highest().value(), bad, time),
        new Reading(known == null ? 0 : known.lowest().value(), bad, time),
        settings.vessel().curve().maxHeightMetres(),
        settings.vessel().curve().capacityCubicMetres(),
        known == null ? List.of() : known.shares(),
        new BeamLoss(names(lost), false, 0, 0),
        List.of());
  }

  private List<String> names(int[] indexes) {
    return IntStream.of(indexes).mapToObj(i -> settings.beams().get(i).name()).toList();
  }
}
