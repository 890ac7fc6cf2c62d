package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.level.units.Dimension;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.ConeSection;
import io.strapline.level.vessel.CylinderSection;
import io.strapline.level.vessel.PyramidSection;
import io.strapline.level.vessel.Rectangle;
import io.strapline.level.vessel.StackedVessel;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads a vessel that was measured at several heights. Stateless. */
final class ProfileReader {

  /**
   * One row.
   *
   * @param keys where it stands
   * @param height above the datum
   * @param round whether it gives a diameter
   * @param length diameter, or length
   * @param width diameter, or width
   */
  private record Row(Section keys, double height, boolean round, double length, double width) {}

  private ProfileReader() {}

  /** Returns the vessel of the list at the key {@code profile}; empty after a problem. */
  static Optional<? extends CapacityCurve> read(Section vessel) {
    List<Row> rows =
        vessel.sections("profile", Keys.PROFILE).stream().map(ProfileReader::row).toList();
    if (rows.size() < 2 && vessel.isSound()) {
      vessel.error(
          "profile",
          Reason.MISSING,
          "needs two rows at least",
          "give a row at the bottom and one at the top");
    }
    if (!vessel.isSound()) {
      return Optional.empty();
    }
    refuseFirst(rows.get(0));
    List<io.strapline.level.vessel.Section> sections = new ArrayList<>();
    for (int i = 1; i < rows.size(); i++) {
      between(rows.get(i - 1), rows.get(i)).ifPresent(sections::add);
    }
    return vessel.build(() -> StackedVessel.of(sections));
  }

  private static Row row(Section keys) {
    double height = keys.quantity("height", Dimension.LENGTH);
    boolean round = keys.one(List.of("diameter", "length")).filter("diameter"::equals).isPresent();
    if (round) {
      if (keys.has("width")) {
        keys.error("width", Reason.CONFLICT, "stands beside diameter", "keep one of the two");
      }
      double diameter = keys.quantity("diameter", Dimension.LENGTH);
      return new Row(keys, height, true, diameter, diameter);
    }
    double length = keys.has("length") ? keys.quantity("length", Dimension.LENGTH) : Double.NaN;
    double width = keys.has("length") ? keys.quantity("width", Dimension.LENGTH) : Double.NaN;
    return new Row(keys, height, false, length, width);
  }

  private static void refuseFirst(Row first) {
    if (first.height != 0) {
      first.keys.error(
          "height",
          Reason.OUT_OF_RANGE,
          "must be 0 m in the first row",
          "measure from the lowest inside point");
    }
  }

  /** Returns what lies between two rows; a height given twice makes a step and no section. */
  private static Optional<? extends io.strapline.level.vessel.Section> between(Row low, Row high) {
    if (high.round != low.round) {
      String key = high.round ? "diameter" : "length";
      high.keys.error(
          key,
          Reason.CONFLICT,
          "is of another kind than the row before",
          "give all rows a diameter, or all a length and a width");
    }
    if (!(high.height >= low.height)) {
      high.keys.error(
          "height",
          Reason.CONFLICT,
          "must not be less than that of the row before, " + Figures.metres(low.height),
          "give the rows bottom to top");
    }
    double height = high.height - low.height;
    return height == 0 ? Optional.empty() : high.keys.build(() -> section(low, high, height));
  }

  private static io.strapline.level.vessel.Section section(Row low, Row high, double height) {
    if (!high.round) {
      Rectangle bottom = new Rectangle(low.length, low.width);
      return new PyramidSection(bottom, new Rectangle(high.length, high.width), height);
    }
    return low.length == high.length
        ? new CylinderSection(high.length, height)
        : new ConeSection(low.length, high.length, height);
  }
}
