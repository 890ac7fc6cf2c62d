package io.strapline.level.surface;

import io.strapline.level.internal.Check;

/**
 * One beam of several on a vessel. Immutable.
 *
 * @param name tag of its transmitter, not blank
 * @param beam where it sits and looks
 */
public record GroupBeam(String name, Beam beam) {

  /** Checks the fields. */
  public GroupBeam {
    Check.text("GroupBeam.name", name, "give the tag of the transmitter");
    Check.present("GroupBeam.beam", beam, "give the beam");
  }
}
