package io.strapline.level.surface;

import io.strapline.level.internal.Check;

/**
 * Settings of the surface correction of one beam. Immutable.
 *
 * @param vessel with its inside walls
 * @param beam whose level is corrected; it must enter the vessel
 * @param piling where and how steeply solids pile up and run out; both places in the plan
 * @param choice how the shape is chosen
 */
public record SurfaceSettings(SolidsVessel vessel, Beam beam, Piling piling, ShapeChoice choice) {

  /** Checks that everything lies in the vessel. */
  public SurfaceSettings {
    Check.present("SurfaceSettings.vessel", vessel, "give the vessel");
    Check.present("SurfaceSettings.beam", beam, "give the beam");
    Check.present("SurfaceSettings.piling", piling, "give fill and draw point");
    Check.present("SurfaceSettings.choice", choice, "say how the shape is chosen");
    vessel.plan().require("Piling.fillPoint", piling.fillPoint());
    vessel.plan().require("Piling.drawPoint", piling.drawPoint());
    BeamView.requireInside(vessel, beam);
  }
}
