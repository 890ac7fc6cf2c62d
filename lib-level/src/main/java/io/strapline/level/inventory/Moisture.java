package io.strapline.level.inventory;

import io.strapline.level.internal.Check;

/**
 * Moisture of a bulk material, on either basis. Immutable.
 *
 * <p>Wet basis {@code w = m_water / m_total}, dry basis {@code d = m_water / m_dry}. With {@code
 * m_total = m_water + m_dry} follows {@code d = w / (1 - w)} and {@code w = d / (1 + d)} (derived
 * here).
 *
 * @param wetBasis fraction, not percent, in [0, 1)
 */
public record Moisture(double wetBasis) {

  /** No moisture. */
  public static final Moisture DRY = new Moisture(0);

  /** Refuses what cannot be a moisture on the wet basis. */
  public Moisture {
    if (!(wetBasis >= 0 && wetBasis < 1)) {
      throw Check.error(
          "Moisture.wetBasis",
          wetBasis,
          "",
          "must be zero or more and less than one",
          "give water over total mass as a fraction, 0.15 for 15 %");
    }
    wetBasis += 0.0;
  }

  /**
   * Returns the moisture given as water over total mass.
   *
   * @param fraction in [0, 1)
   * @throws IllegalArgumentException if the fraction is out of its range
   */
  public static Moisture ofWetBasis(double fraction) {
    return new Moisture(fraction);
  }

  /**
   * Returns the moisture given as water over dry mass.
   *
   * @param fraction in [0, 100]; above one for material that is mostly water
   * @throws IllegalArgumentException if the fraction is out of its range
   */
  public static Moisture ofDryBasis(double fraction) {
    Check.between(
        "Moisture.dryBasis",
        fraction,
        "",
        0,
        100,
        "give water over dry mass as a fraction, 0.25 for 25 %");
    return new Moisture(fraction / (1 + fraction));
  }

  /** Returns water over dry mass, a fraction of zero or more. */
  public double dryBasis() {
    return wetBasis / (1 - wetBasis);
  }

  /**
   * Returns the dry mass in a wet mass, in kilograms.
   *
   * @param wetKilograms finite, zero or more
   */
  public double dryKilograms(double wetKilograms) {
    return mass("wetMass", wetKilograms) * (1 - wetBasis);
  }

  /**
   * Returns the water in a wet mass, in kilograms.
   *
   * @param wetKilograms finite, zero or more
   */
  public double waterKilograms(double wetKilograms) {
    return mass("wetMass", wetKilograms) * wetBasis;
  }

  /**
   * Returns the wet mass that holds a dry mass, in kilograms.
   *
   * @param dryKilograms finite, zero or more
   */
  public double wetKilograms(double dryKilograms) {
    return mass("dryMass", dryKilograms) / (1 - wetBasis);
  }

  /**
   * Returns what a wet mass of this moisture weighs at another moisture, the dry mass being the
   * same, in kilograms.
   *
   * @param wetKilograms finite, zero or more
   */
  public double kilogramsAt(Moisture other, double wetKilograms) {
    return other.wetKilograms(dryKilograms(wetKilograms));
  }

  private static double mass(String name, double kilograms) {
    return Check.notNegative("Moisture." + name, kilograms, "kg", "give a mass in kilograms");
  }
}
