package io.strapline.level.surface;

import io.strapline.level.internal.Check;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What a beam sees of a vessel: where it ends in the empty vessel, where it meets a surface, how
 * near it passes obstacles. The axis of the beam decides where it lands; its width counts for the
 * clearance to obstacles. {@link #CAUTION} belongs beside what is shown to people. Immutable and
 * safe for any thread.
 */
public final class BeamView {

  /** What stands beside every aim; the device's own papers and local rules go first. */
  public static final String CAUTION =
      "Laser: do not look into the beam or its reflections, nor with optical instruments. Keep to"
          + " the laser class and the instructions on the device (IEC 60825-1) and to local rules."
          + " Work at height and in vessels only under the site's permits.";

  /** Step of the slope of a surface, small against any vessel, large against rounding. */
  private static final double SLOPE_STEP_METRES = 1e-5;

  private final SolidsVessel vessel;
  private final Beam beam;
  private final BeamSpot end;

  private BeamView(SolidsVessel vessel, Beam beam) {
    this.vessel = vessel;
    this.beam = beam;
    end = BeamPath.end(vessel, beam);
  }

  /**
   * Returns the view of a beam in an empty vessel.
   *
   * @throws IllegalArgumentException if the beam does not enter the vessel
   */
  public static BeamView of(SolidsVessel vessel, Beam beam) {
    requireInside(vessel, beam);
    return new BeamView(vessel, beam);
  }

  /** Refuses a beam that starts in a wall or does not come through the top of the vessel. */
  static void requireInside(SolidsVessel vessel, Beam beam) {
    Check.present("BeamView.vessel", vessel, "give the vessel");
    Check.present("BeamView.beam", beam, "give the beam");
    double full = vessel.curve().maxHeightMetres();
    if (beam.heightMetres() > full) {
      requireThroughTop(vessel, beam, full);
      return;
    }
    vessel.plan().require("Beam.position", beam.position());
    requireHeight(beam, vessel.floorMetres(beam.position()), vessel.roofMetres(beam.position()));
  }

  private static void requireThroughTop(SolidsVessel vessel, Beam beam, double full) {
    PlanPoint entry = beam.footAt(full);
    if (!vessel.opensAt(entry)) {
      throw Check.error(
          "Beam.position",
          entry.describe(),
          "m",
          "must lie in the opening at the vessel's top, where the beam enters",
          "move the beam towards the axis, mount it lower or tilt it less");
    }
  }

  private static void requireHeight(Beam beam, double floor, double roof) {
    Check.between(
        "Beam.height",
        beam.heightMetres(),
        "m",
        floor,
        roof,
        "mount the beam between floor and roof at its place, or above the vessel's top");
  }

  /** Returns the vessel. */
  public SolidsVessel vessel() {
    return vessel;
  }

  /** Returns the beam. */
  public Beam beam() {
    return beam;
  }

  /** Returns where the beam ends in the empty vessel. */
  public BeamSpot end() {
    return end;
  }

  /** Returns the lowest level that the beam can see, metres above the datum. */
  public double lowestLevelMetres() {
    return end.levelMetres();
  }

  /**
   * Returns the place in plan where the beam passes a level; where the level lies above the vessel
   * or below the beam's end, the place where the beam enters or ends.
   */
  public PlanPoint footAt(double levelMetres) {
    double top = Math.min(vessel.curve().maxHeightMetres(), beam.heightMetres());
    double within = Math.min(Math.max(levelMetres, end.levelMetres()), top);
    return beam.placeAt(beam.distanceMetres(within));
  }

  /** Returns whether the axis of the beam goes through the outlet. */
  public boolean reachesOutlet() {
    return end.target() == BeamTarget.OUTLET;
  }

  /**
   * Returns where the beam meets a surface first, or its end in the empty vessel if the surface
   * lies below that.
   */
  public BeamSpot on(Surface surface) {
    if (isUnder(surface, 0)) {
      return BeamPath.spot(beam, BeamTarget.SURFACE, 0);
    }
    double first = Double.POSITIVE_INFINITY;
    for (double distance : surface.crossings(beam)) {
      if (distance >= 0 && distance < first && isUnder(surface, distance)) {
        first = distance;
      }
    }
    return first <= end.distanceMetres() ? BeamPath.spot(beam, BeamTarget.SURFACE, first) : end;
  }

  /** Returns whether the beam is at or below the surface; a crossing counts as at it. */
  private boolean isUnder(Surface surface, double distance) {
    PlanPoint place = beam.placeAt(distance);
    double slack = Plan.SNAP * Math.max(vessel.curve().maxHeightMetres(), beam.heightMetres());
    return beam.levelMetres(distance) <= surface.heightMetres(place) + slack;
  }

  /**
   * Returns the angle of incidence on a surface: between the beam and the normal of the surface
   * where the beam meets it, in degrees in [0, 180]; above 90 the beam meets it from behind.
   * Nothing if the beam ends on wall or floor before.
   */
  public OptionalDouble incidenceDegrees(Surface surface) {
    BeamSpot spot = on(surface);
    if (spot.target() != BeamTarget.SURFACE) {
      return OptionalDouble.empty();
    }
    double x = spot.place().xMetres();
    double y = spot.place().yMetres();
    double e = SLOPE_STEP_METRES;
    double slopeX = (surface.height(x + e, y) - surface.height(x - e, y)) / (2 * e);
    double slopeY = (surface.height(x, y + e) - surface.height(x, y - e)) / (2 * e);
    double against = beam.down() + slopeX * beam.alongX() + slopeY * beam.alongY();
    double cosine = against / Math.sqrt(1 + slopeX * slopeX + slopeY * slopeY);
    return OptionalDouble.of(Math.toDegrees(Math.acos(Math.min(Math.max(cosine, -1.0), 1.0))));
  }

  /** Returns how near the beam passes each obstacle on its way through the empty vessel. */
  public List<Clearance> clearances(List<? extends Obstacle> obstacles) {
    return obstacles.stream()
        .map(obstacle -> Clearance.of(beam, end.distanceMetres(), obstacle))
        .toList();
  }
}
