package io.strapline.level.plan;

import io.strapline.level.surface.BeamSpot;
import io.strapline.level.surface.BeamTarget;
import io.strapline.level.surface.Clearance;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * One aim of a beam and what comes of it. Immutable.
 *
 * @param tiltDegrees between the beam and the plumb line
 * @param azimuthDegrees towards which it is tilted, anticlockwise from the x axis, in [0, 360)
 * @param end where the beam ends in the empty vessel; its level is the lowest that can be seen
 * @param clearances to each obstacle, in the order of the basis
 */
public record BeamAim(
    double tiltDegrees, double azimuthDegrees, BeamSpot end, List<Clearance> clearances) {

  /** Copies the list. */
  public BeamAim {
    clearances = List.copyOf(clearances);
  }

  /** Returns whether the beam goes through the outlet. */
  public boolean reachesOutlet() {
    return end.target() == BeamTarget.OUTLET;
  }

  /** Returns the tightest clearance; nothing without obstacles. */
  public Optional<Clearance> tightest() {
    return clearances.stream().min(Comparator.comparingDouble(Clearance::clearMetres));
  }

  /** Returns whether every obstacle is cleared by a gap. */
  public boolean clears(double leastMetres) {
    return clearances.stream().allMatch(each -> each.clearMetres() >= leastMetres);
  }
}
