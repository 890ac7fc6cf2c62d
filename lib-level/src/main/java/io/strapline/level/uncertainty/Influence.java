package io.strapline.level.uncertainty;

/** What an error acts on, and the unit in which its uncertainty is given. */
public enum Influence {
  /** The measured distance along the beam: transmitter, loop, converter, noise. In metres. */
  DISTANCE("m"),
  /** The angle between beam and plumb line. In degrees. */
  TILT("deg"),
  /** The height of the transmitter's reference point above the datum. In metres. */
  REFERENCE_HEIGHT("m"),
  /** The surface where the beam meets it against the flat surface: heap, waves, foam. In metres. */
  SURFACE("m"),
  /** The capacity table or geometry, the same at every height. In cubic metres. */
  VOLUME("m3"),
  /** The capacity table or geometry, in proportion to the volume. As a part: 0.001 for 0.1 %. */
  VOLUME_PART("1"),
  /** The density or bulk density. In kilograms per cubic metre. */
  DENSITY("kg/m3"),
  /** The product's temperature, through the density. In kelvins. */
  TEMPERATURE("K");

  private final String unit;

  Influence(String unit) {
    this.unit = unit;
  }

  /** Returns the unit of the source's uncertainty, in ASCII. */
  public String unit() {
    return unit;
  }
}
