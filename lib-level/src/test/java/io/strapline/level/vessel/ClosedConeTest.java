package io.strapline.level.vessel;

import java.util.List;

/** A cone that stands on its point, the worst case near empty. */
class ClosedConeTest extends VesselContract {

  @Override
  protected Vessel curve() {
    return StackedVessel.of(List.of(new ConeSection(0, 2.4, 2.1)));
  }
}
