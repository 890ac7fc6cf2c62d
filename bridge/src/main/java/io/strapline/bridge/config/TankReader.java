package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.level.units.Dimension;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.ConeSection;
import io.strapline.level.vessel.CylinderSection;
import io.strapline.level.vessel.HeadSection;
import io.strapline.level.vessel.LyingCylinder;
import io.strapline.level.vessel.LyingTank;
import io.strapline.level.vessel.Outline;
import io.strapline.level.vessel.Shell;
import io.strapline.level.vessel.Sphere;
import io.strapline.level.vessel.StackedVessel;
import io.strapline.level.vessel.TiltedTank;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads round vessels: standing, lying and spherical. Stateless. */
final class TankReader {

  /** An end of a lying tank. */
  enum End {
    LEFT,
    RIGHT
  }

  private TankReader() {}

  /** Returns a cylinder that stands, with what closes it below and above. */
  static Optional<? extends CapacityCurve> upright(Section section) {
    Optional<Bore> bore = Bore.read(section);
    double height = section.quantity("height", Dimension.LENGTH);
    bore.ifPresent(known -> section.build(() -> new CylinderSection(known.insideMetres(), height)));
    EndHead below = EndHead.at("bottom-head", section, bore);
    EndHead above = EndHead.at("top-head", section, bore);
    Optional<Section> bottom = section.section("bottom", Keys.CYLINDER_BOTTOM);
    refuseBoth(section, "bottom", "bottom-head");
    Optional<? extends io.strapline.level.vessel.Section> hopper =
        bottom.flatMap(keys -> hopper(keys, bore));
    return section.build(
        () -> standing(bore.orElseThrow().insideMetres(), height, hopper, below, above));
  }

  private static StackedVessel standing(
      double diameter,
      double height,
      Optional<? extends io.strapline.level.vessel.Section> hopper,
      EndHead below,
      EndHead above) {
    List<io.strapline.level.vessel.Section> sections = new ArrayList<>();
    hopper.ifPresent(sections::add);
    if (!below.isFlat()) {
      sections.add(HeadSection.bottom(below.head(), diameter));
    }
    Shell shell = below.lengthened(new Shell(diameter, height), above);
    sections.add(new CylinderSection(diameter, shell.lengthMetres()));
    if (!above.isFlat()) {
      sections.add(HeadSection.top(above.head(), diameter));
    }
    return StackedVessel.of(sections);
  }

  private static Optional<? extends io.strapline.level.vessel.Section> hopper(
      Section bottom, Optional<Bore> bore) {
    Optional<String> kind = bottom.one(Keys.CYLINDER_BOTTOM.names());
    if (kind.filter("transition"::equals).isPresent()) {
      Optional<Outline> shell = bore.map(known -> Outline.circle(known.insideMetres()));
      return bottom
          .section("transition", Keys.TRANSITION)
          .flatMap(keys -> Transitions.below(keys, shell));
    }
    return kind.flatMap(cone -> bottom.section(cone, Keys.CONE))
        .flatMap(keys -> cone(keys, bore.map(Bore::insideMetres).orElse(Double.NaN)));
  }

  private static Optional<ConeSection> cone(Section keys, double shell) {
    double outlet = keys.quantityOr("outlet-diameter", Dimension.LENGTH, 0);
    if (outlet >= shell) {
      keys.error(
          "outlet-diameter",
          Reason.CONFLICT,
          "must be less than the vessel above it, " + Figures.metres(shell),
          "write the size of the outlet, which is the narrow end");
    }
    return ConeReader.read(keys, outlet, shell);
  }

  /** Returns a cylinder that lies. */
  static Optional<? extends CapacityCurve> lying(Section section) {
    Optional<Bore> bore = Bore.read(section);
    double length = section.quantity("length", Dimension.LENGTH);
    bore.ifPresent(known -> section.build(() -> new LyingCylinder(known.insideMetres(), length)));
    refuseBoth(section, "heads", "left-head");
    refuseBoth(section, "heads", "right-head");
    boolean both = section.has("heads");
    EndHead left = EndHead.at(both ? "heads" : "left-head", section, bore);
    EndHead right = EndHead.at(both ? "heads" : "right-head", section, bore);
    Optional<Section> tilt = section.section("tilt", Keys.TILT);
    if (tilt.isPresent()) {
      Optional<Shell> shell =
          section.build(
              () -> left.lengthened(new Shell(bore.orElseThrow().insideMetres(), length), right));
      return tilted(tilt.get(), shell, left, right);
    }
    return section.build(() -> lying(bore.orElseThrow().insideMetres(), length, left, right));
  }

  private static Optional<TiltedTank> tilted(
      Section tilt, Optional<Shell> shell, EndHead left, EndHead right) {
    double angle = tilt.quantity("angle", Dimension.ANGLE);
    End low = tilt.choice("low-end", Labels.all(End.class));
    double gauge = tilt.quantity("gauge-position", Dimension.LENGTH);
    EndHead lower = low == End.LEFT ? left : right;
    EndHead upper = low == End.LEFT ? right : left;
    return shell.flatMap(
        straight ->
            tilt.build(() -> TiltedTank.of(straight, lower.head(), upper.head(), angle, gauge)));
  }

  private static CapacityCurve lying(double diameter, double length, EndHead left, EndHead right) {
    if (left.isFlat() && right.isFlat()) {
      return new LyingCylinder(diameter, length);
    }
    Shell shell = left.lengthened(new Shell(diameter, length), right);
    return LyingTank.of(shell, left.head(), right.head());
  }

  /** Returns a sphere. */
  static Optional<? extends CapacityCurve> sphere(Section section) {
    Optional<Bore> bore = Bore.read(section);
    return section.build(() -> new Sphere(bore.orElseThrow().insideMetres()));
  }

  private static void refuseBoth(Section section, String one, String other) {
    if (section.has(one) && section.has(other)) {
      section.error(other, Reason.CONFLICT, "stands beside " + one, "keep one of the two");
    }
  }
}
