package io.strapline.level.surface;

import io.strapline.level.internal.Check;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Several beams on one vessel. Immutable.
 *
 * @param vessel with its inside walls
 * @param beams two or more, each with its own name and each entering the vessel; no two may meet
 *     the surface at the same place. For a fitted plane three or more that do not stand in line:
 *     their root mean square distance from the best line must be at least 5 % of the root of the
 *     plan's area, at every level
 * @param method how levels become a volume
 * @param agreement what the beams may differ by
 */
public record BeamGroupSettings(
    SolidsVessel vessel, List<GroupBeam> beams, GroupMethod method, BeamAgreement agreement) {

  private static final double LEAST_APART_METRES = 0.001;
  private static final int LEVELS = 20;

  /** Checks the beams against the vessel and each other. */
  public BeamGroupSettings {
    Check.present("BeamGroupSettings.vessel", vessel, "give the vessel");
    Check.present("BeamGroupSettings.beams", beams, "give the beams");
    Check.present("BeamGroupSettings.method", method, "give the method");
    Check.present("BeamGroupSettings.agreement", agreement, "say what the beams may differ by");
    beams = List.copyOf(beams);
    requireCount(beams.size(), method, agreement);
    requireNames(beams);
    beams.forEach(each -> BeamView.requireInside(vessel, each.beam()));
    for (int i = 0; i <= LEVELS; i++) {
      double level = vessel.curve().maxHeightMetres() * i / LEVELS;
      requirePlaces(vessel, feet(vessel, beams, level), method, level);
    }
  }

  private static void requireCount(int count, GroupMethod method, BeamAgreement agreement) {
    int fewest =
        switch (method) {
          case AREA_WEIGHTED -> 2;
          case FITTED_PLANE -> 3;
        };
    Check.between(
        "BeamGroupSettings.beams",
        count,
        "beams",
        Math.max(fewest, agreement.fewestBeams()),
        BeamAgreement.MOST_BEAMS,
        "give more beams, another method or a smaller number of fewest beams");
  }

  private static void requireNames(List<GroupBeam> beams) {
    Set<String> names = new HashSet<>();
    for (GroupBeam each : beams) {
      if (!names.add(each.name())) {
        throw Check.error(
            "GroupBeam.name", each.name(), "", "is used twice", "give each beam its own tag");
      }
    }
  }

  static List<PlanPoint> feet(SolidsVessel vessel, List<GroupBeam> beams, double level) {
    return beams.stream().map(each -> BeamView.of(vessel, each.beam()).footAt(level)).toList();
  }

  private static void requirePlaces(
      SolidsVessel vessel, List<PlanPoint> feet, GroupMethod method, double level) {
    for (int i = 1; i < feet.size(); i++) {
      requireApart(feet.subList(0, i), feet.get(i), level);
    }
    PlaneFit fit = new PlaneFit(feet);
    if (method == GroupMethod.FITTED_PLANE && !fit.spans(vessel.plan())) {
      throw Check.error(
          "BeamGroupSettings.beams",
          fit.widthMetres(),
          "m off their best line at level " + level + " m",
          "must stand off a line by "
              + PlaneFit.LEAST_WIDTH_SHARE * Math.sqrt(vessel.plan().areaSquareMetres())
              + " m for a plane",
          "move a beam out of the line or use AREA_WEIGHTED");
    }
  }

  private static void requireApart(List<PlanPoint> others, PlanPoint foot, double level) {
    for (PlanPoint other : others) {
      if (!(other.distanceMetres(foot) >= LEAST_APART_METRES)) {
        throw Check.error(
            "BeamGroupSettings.beams",
            foot.describe(),
            "m at level " + level + " m",
            "is the place of two beams",
            "move or aim one of them");
      }
    }
  }
}
