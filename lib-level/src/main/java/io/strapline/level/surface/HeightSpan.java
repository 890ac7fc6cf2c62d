package io.strapline.level.surface;

import io.strapline.level.internal.Check;

/**
 * The heights between which something stands. Immutable.
 *
 * @param fromMetres lower end above the datum; finite
 * @param toMetres upper end above the datum; not below the lower end
 */
public record HeightSpan(double fromMetres, double toMetres) {

  /** Checks both ends. */
  public HeightSpan {
    fromMetres = Check.finite("HeightSpan.from", fromMetres, "m", "give the lower end");
    toMetres = Check.finite("HeightSpan.to", toMetres, "m", "give the upper end");
    if (!(fromMetres <= toMetres)) {
      throw Check.error(
          "HeightSpan.from",
          fromMetres,
          "m",
          "must not lie above to (" + toMetres + " m)",
          "exchange the ends");
    }
  }

  /** Returns how far a height lies outside, zero within. */
  double outsideMetres(double heightMetres) {
    return Math.max(Math.max(fromMetres - heightMetres, heightMetres - toMetres), 0.0);
  }
}
