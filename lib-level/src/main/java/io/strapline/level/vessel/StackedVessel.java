package io.strapline.level.vessel;

import io.strapline.level.internal.Check;
import java.util.ArrayList;
import java.util.List;

/**
 * An upright vessel of sections one above the other, bottom to top: flat-bottomed silo, cylinder on
 * a cone, bin on a hopper, any profile. The datum is the lower edge of the lowest section: the
 * outlet plane, the point of a closed cone or the flat floor. Neighbouring sections may differ in
 * width (a step). Immutable and safe for any thread.
 */
public final class StackedVessel implements Vessel {

  private final List<Section> sections;

  /** Heights of the joints: entry i is the bottom of section i, the last one the full height. */
  private final double[] joints;

  /** Volumes below the joints. */
  private final double[] volumes;

  private StackedVessel(List<Section> sections) {
    this.sections = List.copyOf(sections);
    int count = this.sections.size();
    joints = new double[count + 1];
    volumes = new double[count + 1];
    for (int i = 0; i < count; i++) {
      joints[i + 1] = joints[i] + this.sections.get(i).heightMetres();
      volumes[i + 1] = volumes[i] + this.sections.get(i).volumeCubicMetres();
    }
  }

  /**
   * Returns the vessel of these sections.
   *
   * @param sections bottom to top, at least one
   * @throws IllegalArgumentException if there is none
   */
  public static StackedVessel of(List<Section> sections) {
    if (sections.isEmpty()) {
      throw Check.error(
          "StackedVessel.sections", "[]", "", "must hold a section", "give them bottom to top");
    }
    return new StackedVessel(sections);
  }

  /** Returns an upright cylinder on a flat bottom; see {@link CylinderSection} for the ranges. */
  public static StackedVessel uprightCylinder(double diameterMetres, double shellHeightMetres) {
    return of(List.of(new CylinderSection(diameterMetres, shellHeightMetres)));
  }

  /**
   * Returns an upright cylinder on a conical hopper; the shell has the cone's top diameter.
   *
   * @param cone the hopper, wider above than below
   * @param shellHeightMetres height of the straight shell above the cone
   * @throws IllegalArgumentException if the cone narrows upwards or a dimension is out of range
   */
  public static StackedVessel uprightCylinderOnCone(ConeSection cone, double shellHeightMetres) {
    if (!(cone.topDiameterMetres() > cone.bottomDiameterMetres())) {
      throw Check.error(
          "StackedVessel.cone.topDiameter",
          cone.topDiameterMetres(),
          "m",
          "must be greater than the outlet's " + Dimensions.text(cone.bottomDiameterMetres()),
          "give the outlet as bottom and the shell's diameter as top");
    }
    return of(List.of(cone, new CylinderSection(cone.topDiameterMetres(), shellHeightMetres)));
  }

  /**
   * Returns an upright tank: shell, bottom head and top head. The datum is the lowest inside point
   * of the bottom head. {@link Head.Flat} at the top is a flat cover.
   *
   * @throws IllegalArgumentException if a head cannot have the diameter of the shell
   */
  public static StackedVessel uprightTank(Shell shell, Head bottom, Head top) {
    List<Section> sections = new ArrayList<>();
    double diameter = shell.diameterMetres();
    if (!(bottom instanceof Head.Flat)) {
      sections.add(HeadSection.bottom(bottom, diameter));
    }
    sections.add(new CylinderSection(diameter, shell.lengthMetres()));
    if (!(top instanceof Head.Flat)) {
      sections.add(HeadSection.top(top, diameter));
    }
    return of(sections);
  }

  /** Returns a rectangular bin on a flat bottom; see {@link PrismSection} for the ranges. */
  public static StackedVessel rectangularBin(Rectangle plan, double heightMetres) {
    return of(List.of(new PrismSection(plan, heightMetres)));
  }

  /**
   * Returns a rectangular bin on a hopper; the bin has the hopper's top plan.
   *
   * @param hopper pyramid, wedge or chute
   * @param binHeightMetres height of the straight walls above the hopper
   * @throws IllegalArgumentException if the outlet is wider than the bin or a dimension is out of
   *     range
   */
  public static StackedVessel rectangularBinOnHopper(
      PyramidSection hopper, double binHeightMetres) {
    notWider("length", hopper.bottom().lengthMetres(), hopper.top().lengthMetres());
    notWider("width", hopper.bottom().widthMetres(), hopper.top().widthMetres());
    return of(List.of(hopper, new PrismSection(hopper.top(), binHeightMetres)));
  }

  /**
   * Returns straight walls on a transition hopper; the walls stand on the hopper's upper outline.
   *
   * @param hopper round to slot, round to square, rectangle to round
   * @param binHeightMetres height of the straight walls above the hopper
   * @throws IllegalArgumentException if the outlet is wider than the bin or a dimension is out of
   *     range
   */
  public static StackedVessel binOnTransition(TransitionSection hopper, double binHeightMetres) {
    notWider("length", hopper.bottom().lengthMetres(), hopper.top().lengthMetres());
    notWider("width", hopper.bottom().widthMetres(), hopper.top().widthMetres());
    return of(List.of(hopper, new TransitionSection(hopper.top(), hopper.top(), binHeightMetres)));
  }

  /**
   * Returns a rectangular bin on a sloped floor; the bin has the floor's plan. The height is that
   * of the straight walls above the highest corner of the floor.
   */
  public static StackedVessel rectangularBinOnSlopedFloor(
      SlopedFloorSection floor, double binHeightMetres) {
    return of(List.of(floor, new PrismSection(floor.plan(), binHeightMetres)));
  }

  private static void notWider(String side, double outlet, double bin) {
    if (!(outlet <= bin)) {
      throw Check.error(
          "StackedVessel.hopper.bottom." + side,
          outlet,
          "m",
          "must not be greater than the bin's " + Dimensions.text(bin),
          "give the outlet as bottom and the bin's plan as top");
    }
  }

  /** Returns the sections, bottom to top. */
  public List<Section> sections() {
    return sections;
  }

  @Override
  public double maxHeightMetres() {
    return joints[sections.size()];
  }

  @Override
  public double capacityCubicMetres() {
    return volumes[sections.size()];
  }

  @Override
  public double volumeCubicMetres(double heightMetres) {
    double height = Dimensions.clamp("StackedVessel.height", heightMetres, "m", maxHeightMetres());
    if (height == maxHeightMetres()) {
      return capacityCubicMetres();
    }
    int i = sectionOf(height, joints);
    double within = sections.get(i).volumeBelow(height - joints[i]);
    // The sum may be rounded up past the joint's volume, from which the next section starts.
    return Math.min(volumes[i] + within, volumes[i + 1]);
  }

  @Override
  public double surfaceSquareMetres(double heightMetres) {
    double height = Dimensions.clamp("StackedVessel.height", heightMetres, "m", maxHeightMetres());
    int i = sectionOf(height, joints);
    return sections.get(i).areaAt(height - joints[i]);
  }

  @Override
  public double heightMetres(double volumeCubicMetres) {
    double capacity = capacityCubicMetres();
    double volume = Dimensions.clamp("StackedVessel.volume", volumeCubicMetres, "m3", capacity);
    if (volume == 0 || volume == capacity) {
      return volume == 0 ? 0 : maxHeightMetres();
    }
    int i = sectionOf(volume, volumes);
    double start = joints[i] + sections.get(i).aboutHeightOf(volume - volumes[i]);
    HeightSearch search =
        new HeightSearch(this::volumeCubicMetres, this::surfaceSquareMetres, maxHeightMetres());
    return search.lowest(volume, start);
  }

  /** Returns the index of the section whose upper edge is the first not below the value. */
  private int sectionOf(double value, double[] edges) {
    int i = 0;
    while (i < sections.size() - 1 && value > edges[i + 1]) {
      i++;
    }
    return i;
  }

  @Override
  public String describe() {
    return StackDescription.of(sections);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof StackedVessel that && sections.equals(that.sections);
  }

  @Override
  public int hashCode() {
    return sections.hashCode();
  }

  @Override
  public String toString() {
    return describe();
  }
}
