package io.strapline.level.point;

import io.strapline.level.internal.Check;

/**
 * How long a silent source is borne with. Immutable.
 *
 * @param lastUsableSeconds older than this: UNCERTAIN, last usable value; greater than zero
 * @param badSeconds older than this: BAD; at least {@code lastUsableSeconds}
 */
public record SourceAges(double lastUsableSeconds, double badSeconds) {

  /** 10 s and 30 s: this project's choice, for a transmitter that measures every second or so. */
  public static final SourceAges DEFAULT = new SourceAges(10, 30);

  /** Checks the order of the two limits. */
  public SourceAges {
    Check.positive("SourceAges.lastUsable", lastUsableSeconds, "s", "enter a few sample intervals");
    Check.positive("SourceAges.bad", badSeconds, "s", "enter more than the last-usable age");
    if (badSeconds < lastUsableSeconds) {
      throw Check.error(
          "SourceAges.bad",
          badSeconds,
          "s",
          "must not be less than lastUsable (" + lastUsableSeconds + " s)",
          "swap the two or enter a greater age");
    }
  }
}
