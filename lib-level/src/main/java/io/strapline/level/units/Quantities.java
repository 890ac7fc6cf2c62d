package io.strapline.level.units;

/** Reads and writes quantities with their unit, strictly. Stateless. */
public final class Quantities {

  private Quantities() {}

  /**
   * Reads a quantity such as {@code 6 m}, {@code 1.35 t/m3}, {@code 7 ft 4 1/2 in} or {@code 18'
   * 6"}.
   *
   * @param text number and unit; nothing is guessed
   * @param dimension what the quantity must be
   * @return the value in the SI unit of the dimension (see {@link Dimension})
   * @throws IllegalArgumentException telling what is not understood and which units are
   */
  public static double parse(String text, Dimension dimension) {
    throw new UnsupportedOperationException(text + dimension);
  }
}
