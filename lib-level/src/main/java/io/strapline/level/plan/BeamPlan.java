package io.strapline.level.plan;

import io.strapline.level.internal.Check;
import io.strapline.level.surface.BeamView;
import io.strapline.level.surface.Clearance;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Proposes the tilt and azimuth with which a beam sees lowest while it clears the obstacles. The
 * same basis always gives the same proposal. Immutable and safe for any thread.
 *
 * <p>Search: every degree of tilt and every five degrees of azimuth, then the neighbours of the
 * best at half the step again and again. An aim counts by its lowest level plus a millimetre for
 * each metre between its end and the vessel's axis, so that among aims into the outlet the one
 * through its middle wins. A gap narrower than the grid may be missed: the proposal is then safe,
 * but not the lowest.
 */
public final class BeamPlan {

  private final BeamPlanBasis basis;
  private final @Nullable BeamAim best;
  private final @Nullable BeamAim widest;

  private BeamPlan(BeamPlanBasis basis) {
    this.basis = basis;
    BeamSearch search = new BeamSearch(basis);
    best = search.lowest();
    widest = search.clearest();
  }

  /** Returns the plan for a basis. */
  public static BeamPlan of(BeamPlanBasis basis) {
    return new BeamPlan(Check.present("BeamPlan.basis", basis, "give the basis"));
  }

  /** Returns what the plan was made from. */
  public BeamPlanBasis basis() {
    return basis;
  }

  /** Returns the proposal; nothing when no aim found clears every obstacle. */
  public Optional<BeamAim> proposal() {
    return Optional.ofNullable(best);
  }

  /** Returns the beam straight down, to compare with. */
  public BeamAim plumb() {
    return aim(0, 0);
  }

  /**
   * Returns any aim within the vessel, with its end and its clearances.
   *
   * @param tiltDegrees in [0, 80]
   * @param azimuthDegrees in [-360, 360]
   * @throws IllegalArgumentException if the beam does not enter the vessel with this aim
   */
  public BeamAim aim(double tiltDegrees, double azimuthDegrees) {
    return BeamSearch.aim(basis, tiltDegrees, azimuthDegrees);
  }

  /** Returns the proposal in a few plain lines, with {@link BeamView#CAUTION}. */
  public String text() {
    BeamAim aim = best;
    return (aim == null ? refusal() : proposalText(aim))
        + System.lineSeparator()
        + BeamView.CAUTION;
  }

  private String refusal() {
    BeamAim aim = widest;
    Clearance tightest = aim == null ? null : aim.tightest().orElse(null);
    if (aim == null || tightest == null) {
      return "No aim enters the vessel.";
    }
    return String.format(
        Locale.ROOT,
        "No aim clears every obstacle by %.3f m. Best: tilt %.1f deg to azimuth %.1f deg, %.3f m"
            + " from %s. Move the beam or the obstacle, or accept a smaller gap.",
        basis.leastClearMetres(),
        aim.tiltDegrees(),
        aim.azimuthDegrees(),
        tightest.clearMetres(),
        tightest.obstacle());
  }

  private static String proposalText(BeamAim aim) {
    return String.format(
        Locale.ROOT,
        "Tilt %.2f deg to azimuth %.1f deg: lowest level seen %.3f m, on the %s, %.3f m along the"
            + " beam, spot %.3f m wide.",
        aim.tiltDegrees(),
        aim.azimuthDegrees(),
        aim.end().levelMetres(),
        aim.end().target().name().toLowerCase(Locale.ROOT),
        aim.end().distanceMetres(),
        aim.end().widthMetres());
  }
}
