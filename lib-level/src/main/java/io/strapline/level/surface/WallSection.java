package io.strapline.level.surface;

import io.strapline.level.internal.Check;
import io.strapline.level.vessel.ConeSection;
import io.strapline.level.vessel.CylinderSection;
import io.strapline.level.vessel.PrismSection;
import io.strapline.level.vessel.PyramidSection;
import io.strapline.level.vessel.Section;

/**
 * The walls of one section of a stack, with the height of its lower edge.
 *
 * @param bottom inside at the lower edge
 * @param top inside at the upper edge
 * @param bottomHeight of the lower edge above the datum, metres
 * @param height of the section, metres
 */
record WallSection(Outline bottom, Outline top, double bottomHeight, double height) {

  static WallSection of(Section section, double bottomHeight) {
    double height = section.heightMetres();
    if (section instanceof CylinderSection cylinder) {
      Outline wall = Outline.circle(cylinder.diameterMetres());
      return new WallSection(wall, wall, bottomHeight, height);
    }
    if (section instanceof ConeSection cone) {
      Outline low = Outline.circle(cone.bottomDiameterMetres());
      return new WallSection(low, Outline.circle(cone.topDiameterMetres()), bottomHeight, height);
    }
    if (section instanceof PrismSection prism) {
      Outline wall = Outline.of(prism.plan());
      return new WallSection(wall, wall, bottomHeight, height);
    }
    if (section instanceof PyramidSection taper) {
      Outline low = Outline.of(taper.bottom());
      return new WallSection(low, Outline.of(taper.top()), bottomHeight, height);
    }
    throw Check.error(
        "SolidsVessel.vessel",
        section.describe(),
        "",
        "must be a cylinder, a cone, straight walls or a pyramid hopper",
        "for a tank with heads use a flat surface and the vessel's own volume");
  }

  double topHeight() {
    return bottomHeight + height;
  }

  boolean widens() {
    return top.encloses(bottom);
  }

  boolean narrows() {
    return bottom.encloses(top);
  }

  boolean straight() {
    return widens() && narrows();
  }

  /** Returns the height of the wall over a place between the two outlines. */
  double wallHeight(double x, double y) {
    double share =
        bottom.round() ? share(Math.hypot(x, y), bottom.halfX(), top.halfX()) : sloping(x, y);
    return bottomHeight + height * Math.min(Math.max(share, 0.0), 1.0);
  }

  /**
   * Returns how far up the wall stands. Where it widens, both sides must have passed the place, so
   * the greater share counts; where it narrows, the place is lost at the first of them.
   */
  private double sloping(double x, double y) {
    double alongX = share(Math.abs(x), bottom.halfX(), top.halfX());
    double alongY = share(Math.abs(y), bottom.halfY(), top.halfY());
    return widens() ? Math.max(alongX, alongY) : Math.min(alongX, alongY);
  }

  /** Returns on which side of the ridge between two walls a place lies; zero on it. */
  double besideRidge(double x, double y) {
    return share(Math.abs(x), bottom.halfX(), top.halfX())
        - share(Math.abs(y), bottom.halfY(), top.halfY());
  }

  private double share(double distance, double low, double high) {
    if (low == high) {
      return widens() ? 0 : 1;
    }
    return (distance - low) / (high - low);
  }
}
