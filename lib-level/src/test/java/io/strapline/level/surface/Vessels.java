package io.strapline.level.surface;

import io.strapline.level.vessel.ConeSection;
import io.strapline.level.vessel.CylinderSection;
import io.strapline.level.vessel.PrismSection;
import io.strapline.level.vessel.PyramidSection;
import io.strapline.level.vessel.Rectangle;
import io.strapline.level.vessel.StackedVessel;
import java.util.List;

/** Vessels that several tests use. */
final class Vessels {

  /** Cement silo: shell 6 m wide and 18 m high on a cone 3.2 m high with an outlet of 0.4 m. */
  static final SolidsVessel SILO =
      SolidsVessel.of(StackedVessel.uprightCylinderOnCone(new ConeSection(0.4, 6, 3.2), 18));

  /** Surge bin: 4 m x 3 m, 5 m high, on a hopper 2 m high with an outlet of 1 m x 0.5 m. */
  static final SolidsVessel BIN =
      SolidsVessel.of(
          StackedVessel.rectangularBinOnHopper(
              new PyramidSection(new Rectangle(1, 0.5), new Rectangle(4, 3), 2), 5));

  /** Spout, cone, ledge, shell and conical roof. */
  static final SolidsVessel STEPPED =
      SolidsVessel.of(
          StackedVessel.of(
              List.of(
                  new CylinderSection(0.3, 0.3),
                  new ConeSection(0.3, 3, 2.7),
                  new CylinderSection(3.6, 8),
                  new ConeSection(3.6, 0.8, 0.9))));

  /** Box on a wedge with a ledge, under a roof that narrows to a smaller box. */
  static final SolidsVessel BUNKER =
      SolidsVessel.of(
          StackedVessel.of(
              List.of(
                  new PyramidSection(new Rectangle(3, 0), new Rectangle(3, 2), 1.5),
                  new PrismSection(new Rectangle(4, 3), 4),
                  new PyramidSection(new Rectangle(4, 3), new Rectangle(1, 2), 1),
                  new PrismSection(new Rectangle(0.8, 0.8), 0.5))));

  private Vessels() {}

  static List<SolidsVessel> all() {
    return List.of(SILO, BIN, STEPPED, BUNKER);
  }
}
