package io.strapline.level.vessel;

/** Walls that meet in a line below: the volume starts with the square of the height. */
class WedgeHopperTest extends VesselContract {

  @Override
  protected Vessel curve() {
    PyramidSection wedge = new PyramidSection(new Rectangle(0, 2), new Rectangle(3, 2), 1.5);
    return StackedVessel.rectangularBinOnHopper(wedge, 5);
  }
}
