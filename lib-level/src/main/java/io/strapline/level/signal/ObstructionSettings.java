package io.strapline.level.signal;

import io.strapline.level.internal.Check;

/**
 * When a sudden change of the distance is believed. Immutable.
 *
 * @param near doubt of readings nearer than the surface: dust, a falling stream, an object
 * @param far doubt of readings farther than the surface: a second return, a gap in the surface
 * @param bandMetres two readings agree when they differ by no more than this; finite, greater than
 *     zero
 * @param acceptAfterSeconds a run of doubted readings ends after this time at the latest, whether
 *     they agree or not; finite, greater than zero; should span the M samples that must agree
 */
public record ObstructionSettings(
    Doubt near, Doubt far, double bandMetres, double acceptAfterSeconds) {

  /**
   * What it takes to believe a change in one direction. Immutable.
   *
   * @param beyondMetres a change by more than this is doubted; finite, greater than zero
   * @param agreeing M, how many readings must agree, the newest among them; more than half of
   *     {@code of}, so that the old surface and the new one cannot both be confirmed
   * @param of N, among how many of the last readings; 1 to 99; with 1 of 1 nothing is doubted
   */
  public record Doubt(double beyondMetres, int agreeing, int of) {

    static final int MOST = 99;

    /** Checks the numbers. */
    public Doubt {
      Check.positive(
          "ObstructionSettings.beyond",
          beyondMetres,
          "m",
          "enter more than the surface moves between two samples");
      Check.between(
          "ObstructionSettings.of", of, "", 1, MOST, "enter among how many readings to look");
      if (!(agreeing <= of && 2 * agreeing > of)) {
        throw Check.error(
            "ObstructionSettings.agreeing",
            Integer.toString(agreeing),
            "",
            "must be more than half of the " + of + " readings looked at and no more than all",
            "enter " + (of / 2 + 1) + " to " + of);
      }
    }
  }

  /**
   * Checks the settings.
   *
   * @throws IllegalArgumentException naming the setting that breaks its rule
   */
  public ObstructionSettings {
    Check.present("ObstructionSettings.near", near, "say when nearer readings are doubted");
    Check.present("ObstructionSettings.far", far, "say when farther readings are doubted");
    Check.positive(
        "ObstructionSettings.band",
        bandMetres,
        "m",
        "enter how far readings of one surface lie apart, such as six times the noise");
    Check.positive(
        "ObstructionSettings.acceptAfter",
        acceptAfterSeconds,
        "s",
        "enter after what time a change is believed without agreement");
  }
}
