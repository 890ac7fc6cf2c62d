package io.strapline.bridge.config;

import io.strapline.level.units.Dimension;
import io.strapline.level.vessel.ConeSection;
import java.util.List;
import java.util.Optional;

/** Reads how steep a cone is: by its height or by an angle of its wall. Stateless. */
final class ConeReader {

  private static final String TO_VERTICAL = "half-angle-to-vertical";
  private static final String TO_HORIZONTAL = "wall-angle-to-horizontal";
  private static final List<String> WAYS = List.of("height", TO_VERTICAL, TO_HORIZONTAL);

  private ConeReader() {}

  /**
   * Returns the cone between two diameters; empty after a problem.
   *
   * @param section with the keys of the height and of the two angles
   * @param bottom diameter at the lower edge, NaN after a problem
   * @param top diameter at the upper edge, NaN after a problem
   */
  static Optional<ConeSection> read(Section section, double bottom, double top) {
    Optional<String> way =
        WAYS.stream().anyMatch(section::has) ? section.one(WAYS) : Optional.of("height");
    if (way.isEmpty()) {
      return Optional.empty();
    }
    Dimension dimension = way.get().equals("height") ? Dimension.LENGTH : Dimension.ANGLE;
    double size = section.quantity(way.get(), dimension);
    return Double.isNaN(bottom) || Double.isNaN(top)
        ? Optional.empty()
        : section.build(() -> of(way.get(), bottom, top, size));
  }

  private static ConeSection of(String way, double bottom, double top, double size) {
    if (way.equals(TO_VERTICAL)) {
      return ConeSection.withHalfAngleToVertical(bottom, top, size);
    }
    return way.equals(TO_HORIZONTAL)
        ? ConeSection.withWallAngleToHorizontal(bottom, top, size)
        : new ConeSection(bottom, top, size);
  }
}
