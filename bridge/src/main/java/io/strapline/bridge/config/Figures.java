package io.strapline.bridge.config;

import java.util.Locale;

/** Writes numbers for people, with their unit. Stateless. */
final class Figures {

  private Figures() {}

  /** Returns a length to the millimetre. */
  static String metres(double metres) {
    return String.format(Locale.ROOT, "%.3f m", metres + 0.0);
  }

  /** Returns a volume to the litre. */
  static String cubicMetres(double cubicMetres) {
    return String.format(Locale.ROOT, "%.3f m3", cubicMetres + 0.0);
  }
}
