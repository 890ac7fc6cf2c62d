package io.strapline.level.surface;

import io.strapline.level.internal.Check;
import io.strapline.level.vessel.Section;
import io.strapline.level.vessel.StackedVessel;
import java.util.ArrayList;
import java.util.List;

/**
 * A silo or bin with its inside walls in space: plan, floor under each place, roof over it. Made
 * from an upright stack of sections that are all round or all rectangular about one axis, and that
 * first widen and then narrow upwards (hopper, shell, roof). Every plumb line through it then has
 * one stretch inside. Immutable and safe for any thread.
 *
 * <p>Outlets and sections count as centred on the axis: an eccentric outlet changes no volume of a
 * flat surface, but it does shift the floor, and that shift is not modelled.
 */
public final class SolidsVessel {

  private final StackedVessel curve;
  private final List<WallSection> walls;
  private final Outline widest;
  private final Plan plan;

  private SolidsVessel(StackedVessel curve, List<WallSection> walls) {
    this.curve = curve;
    this.walls = List.copyOf(walls);
    requireOneForm();
    List<Outline> outlines = outlines();
    widest = outlines.stream().reduce((a, b) -> b.encloses(a) ? b : a).orElseThrow();
    requireWideningThenNarrowing(outlines);
    plan = widest.plan();
  }

  /**
   * Returns the vessel with its inside walls.
   *
   * @throws IllegalArgumentException if round and rectangular sections are mixed, if it narrows and
   *     then widens upwards, or if it has a dished head
   */
  public static SolidsVessel of(StackedVessel vessel) {
    Check.present("SolidsVessel.vessel", vessel, "give the stack of sections");
    List<WallSection> walls = new ArrayList<>();
    double bottom = 0;
    for (Section section : vessel.sections()) {
      WallSection wall = WallSection.of(section, bottom);
      walls.add(wall);
      bottom = wall.topHeight();
    }
    return new SolidsVessel(vessel, walls);
  }

  private List<Outline> outlines() {
    List<Outline> outlines = new ArrayList<>();
    for (WallSection wall : walls) {
      outlines.add(wall.bottom());
      outlines.add(wall.top());
    }
    return outlines;
  }

  private void requireOneForm() {
    boolean round = walls.get(0).bottom().round();
    if (walls.stream().anyMatch(wall -> wall.bottom().round() != round)) {
      throw refused(
          "sections must be all round or all rectangular",
          "use a flat surface with a capacity table for a vessel of mixed form");
    }
  }

  private void requireWideningThenNarrowing(List<Outline> outlines) {
    boolean narrowing = false;
    for (int i = 1; i < outlines.size(); i++) {
      Outline below = outlines.get(i - 1);
      Outline above = outlines.get(i);
      boolean wider = above.encloses(below);
      boolean narrower = below.encloses(above);
      if ((!wider && !narrower) || (narrowing && !narrower)) {
        throw refused(
            "must first widen and then narrow upwards in both directions",
            "leave out inserts, or use a flat surface with a capacity table");
      }
      narrowing = narrowing || !wider;
    }
  }

  private IllegalArgumentException refused(String rule, String fix) {
    return Check.error("SolidsVessel.vessel", curve.describe(), "", rule, fix);
  }

  /** Returns the stack of sections, the curve of volume against the height of a flat surface. */
  public StackedVessel curve() {
    return curve;
  }

  /** Returns the plan at the widest height, about the axis. */
  public Plan plan() {
    return plan;
  }

  /** Returns the height from which the walls stand at the full plan, in metres. */
  public double straightFromMetres() {
    return walls.stream()
        .filter(wall -> wall.top().equals(widest))
        .mapToDouble(wall -> wall.straight() ? wall.bottomHeight() : wall.topHeight())
        .min()
        .orElse(curve.maxHeightMetres());
  }

  /** Returns the height up to which the walls stand at the full plan, in metres. */
  public double straightToMetres() {
    return walls.stream()
        .filter(wall -> wall.bottom().equals(widest))
        .mapToDouble(wall -> wall.straight() ? wall.topHeight() : wall.bottomHeight())
        .max()
        .orElse(straightFromMetres());
  }

  /**
   * Returns the height of the floor or hopper wall under a place.
   *
   * @param place in the plan
   * @return metres above the datum, in [0, full height]
   * @throws IllegalArgumentException if the place lies outside the plan
   */
  public double floorMetres(PlanPoint place) {
    plan.require("SolidsVessel.place", place);
    return floor(place.xMetres(), place.yMetres());
  }

  /**
   * Returns the height of the roof over a place; the full height under an open or flat top.
   *
   * @param place in the plan
   * @return metres above the datum, in [floor, full height]
   * @throws IllegalArgumentException if the place lies outside the plan
   */
  public double roofMetres(PlanPoint place) {
    plan.require("SolidsVessel.place", place);
    return roof(place.xMetres(), place.yMetres());
  }

  double floor(double x, double y) {
    for (WallSection wall : walls) {
      if (wall.bottom().contains(x, y)) {
        return wall.bottomHeight();
      }
      if (wall.widens() && wall.top().contains(x, y)) {
        return wall.wallHeight(x, y);
      }
    }
    return straightFromMetres();
  }

  double roof(double x, double y) {
    for (int i = walls.size() - 1; i >= 0; i--) {
      WallSection wall = walls.get(i);
      if (wall.top().contains(x, y)) {
        return wall.topHeight();
      }
      if (wall.narrows() && wall.bottom().contains(x, y)) {
        return wall.wallHeight(x, y);
      }
    }
    return straightToMetres();
  }

  List<WallSection> walls() {
    return walls;
  }

  /** Returns whether a place lies in the opening or flat top at the full height. */
  public boolean opensAt(PlanPoint place) {
    return top().contains(place.xMetres(), place.yMetres());
  }

  /** Returns the opening or flat top at the full height. */
  Outline top() {
    return walls.get(walls.size() - 1).top();
  }

  /** Returns whether the lowest section is a hopper, so that its lower edge is an outlet. */
  boolean endsInOutlet() {
    return !walls.get(0).straight();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof SolidsVessel that && curve.equals(that.curve);
  }

  @Override
  public int hashCode() {
    return curve.hashCode();
  }

  @Override
  public String toString() {
    return curve.describe();
  }
}
