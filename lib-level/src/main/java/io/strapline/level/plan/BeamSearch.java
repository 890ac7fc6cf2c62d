package io.strapline.level.plan;

import io.strapline.level.surface.Beam;
import io.strapline.level.surface.BeamView;
import io.strapline.level.surface.Clearance;
import io.strapline.level.surface.PlanPoint;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Bounded search over tilt and azimuth: a grid, then the neighbours of the best at ever smaller
 * steps. On a tie the aim found first stays, so that the result is always the same.
 */
final class BeamSearch {

  private static final int TILT_STEP_DEGREES = 1;
  private static final int AZIMUTH_STEP_DEGREES = 5;
  private static final int HALVINGS = 20;
  private static final int MOST_MOVES = 20;
  private static final double PENALTY_PER_METRE = 0.001;

  private final BeamPlanBasis basis;
  private @Nullable BeamAim lowest;
  private @Nullable BeamAim clearest;

  BeamSearch(BeamPlanBasis basis) {
    this.basis = basis;
    for (double tilt = 0; tilt <= basis.mostTiltDegrees(); tilt += TILT_STEP_DEGREES) {
      for (int azimuth = 0; azimuth < 360; azimuth += AZIMUTH_STEP_DEGREES) {
        look(tilt, azimuth);
      }
    }
    refine();
  }

  /** Returns the aim that sees lowest among those that clear the obstacles. */
  @Nullable BeamAim lowest() {
    return lowest;
  }

  /** Returns the aim with the widest tightest gap on the grid. */
  @Nullable BeamAim clearest() {
    return clearest;
  }

  static BeamAim aim(BeamPlanBasis basis, double tilt, double azimuth) {
    BeamView view = BeamView.of(basis.vessel(), basis.mounting().aimed(tilt, azimuth));
    return new BeamAim(tilt, azimuth, view.end(), view.clearances(basis.obstacles()));
  }

  /** Takes an aim if it is better than the best so far, and tells whether it was. */
  private boolean look(double tilt, double azimuth) {
    double turned = ((azimuth % 360) + 360) % 360;
    if (!(tilt >= 0 && tilt <= basis.mostTiltDegrees()) || !enters(tilt, turned)) {
      return false;
    }
    BeamAim aim = aim(basis, tilt, turned);
    BeamAim widest = clearest;
    clearest = widest == null || gap(aim) > gap(widest) ? aim : widest;
    BeamAim before = lowest;
    if (!aim.clears(basis.leastClearMetres()) || (before != null && score(aim) >= score(before))) {
      return false;
    }
    lowest = aim;
    return true;
  }

  /** A beam above the vessel's top must come through the opening. */
  private boolean enters(double tilt, double azimuth) {
    double top = basis.vessel().curve().maxHeightMetres();
    Beam beam = basis.mounting().aimed(tilt, azimuth);
    return beam.heightMetres() <= top || basis.vessel().opensAt(beam.footAt(top));
  }

  private static double gap(BeamAim aim) {
    OptionalDouble least = aim.clearances().stream().mapToDouble(Clearance::clearMetres).min();
    return least.orElse(Double.POSITIVE_INFINITY);
  }

  private static double score(BeamAim aim) {
    double off = aim.end().place().distanceMetres(PlanPoint.CENTRE);
    return aim.end().levelMetres() + PENALTY_PER_METRE * off;
  }

  private void refine() {
    double tiltStep = TILT_STEP_DEGREES;
    double azimuthStep = AZIMUTH_STEP_DEGREES;
    for (int i = 0; i < HALVINGS; i++) {
      tiltStep /= 2;
      azimuthStep /= 2;
      int moves = 0;
      while (moves < MOST_MOVES && moved(tiltStep, azimuthStep)) {
        moves++;
      }
    }
  }

  /** Tries the eight neighbours of the best. */
  private boolean moved(double tiltStep, double azimuthStep) {
    BeamAim from = lowest;
    boolean moved = false;
    for (int i = -1; from != null && i <= 1; i++) {
      for (int j = -1; j <= 1; j++) {
        moved |= look(from.tiltDegrees() + i * tiltStep, from.azimuthDegrees() + j * azimuthStep);
      }
    }
    return moved;
  }
}
