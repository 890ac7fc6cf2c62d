package io.strapline.bridge.publish.modbus;

/** How a value lies in registers. */
public enum WireType {
  /** 0 to 65535. */
  UINT16("uint16", 1, 0, 65_535, 65_535),
  /** 16 single bits, bit 0 the lowest. */
  BITS16("bits", 1, 0, 65_535, 65_535),
  /** -32767 to 32767; -32768 says that there is no value. */
  INT16("int16", 1, -32_767, 32_767, -32_768),
  /** 0 to 4294967295. */
  UINT32("uint32", 2, 0, 4_294_967_295L, 4_294_967_295L),
  /** -2147483647 to 2147483647; -2147483648 says that there is no value. */
  INT32("int32", 2, -2_147_483_647, 2_147_483_647, -2_147_483_648),
  /** IEEE 754 single; a quiet NaN says that there is no value. */
  FLOAT32("float32", 2, 0, 0, 0),
  /** IEEE 754 double; a quiet NaN says that there is no value. */
  FLOAT64("float64", 4, 0, 0, 0),
  /** 16 characters of US-ASCII, two to a register, filled with zeros. */
  TEXT16("text16", 8, 0, 0, 0);

  private final String label;
  private final int width;
  private final long least;
  private final long greatest;
  private final long none;

  WireType(String label, int width, long least, long greatest, long none) {
    this.label = label;
    this.width = width;
    this.least = least;
    this.greatest = greatest;
    this.none = none;
  }

  /** Returns the name in lists, such as {@code int16}. */
  public String label() {
    return label;
  }

  /** Returns the number of registers, 1 to 8. */
  public int width() {
    return width;
  }

  /** Returns whether the order of words and bytes concerns this type. */
  public boolean isOrdered() {
    return width > 1 && this != TEXT16;
  }

  /**
   * Narrows a number to an integer type: rounded to the nearest, ties to even; beyond the range the
   * end of the range and a mark; NaN gives the number that says that there is no value. This is the
   * only place where a measured value becomes an integer.
   */
  Narrowed narrow(double number) {
    if (Double.isNaN(number)) {
      return new Narrowed(none, false);
    }
    double rounded = Math.rint(number);
    if (rounded >= least && rounded <= greatest) {
      return new Narrowed((long) rounded, false);
    }
    return new Narrowed(rounded < least ? least : greatest, true);
  }

  /**
   * An integer that fits its registers.
   *
   * @param value the integer
   * @param saturated whether the number lay outside the range
   */
  record Narrowed(long value, boolean saturated) {}
}
