package io.strapline.level.vessel;

import java.util.List;

/** Wider one way and narrower the other way: the area both rises and falls. */
class TwistedHopperTest extends VesselContract {

  @Override
  protected Vessel curve() {
    return StackedVessel.of(
        List.of(new PyramidSection(new Rectangle(0.3, 4), new Rectangle(3, 0.5), 2)));
  }
}
