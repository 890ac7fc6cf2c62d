package io.strapline.level.vessel;

/**
 * The grading of a compiled curve: cells that halve their width from octave to octave towards both
 * ends of the height, found from the bits of a double without any search. Stateless.
 *
 * <p>A height t in [0, 1] has the distance m = 1/2 - |t - 1/2| from the nearer end. With a = m +
 * {@link #OFFSET}, the exponent of a is the octave and its first {@link #BITS} digits are the cell
 * within it. Each cell is so narrow beside its distance from the end that a volume that starts with
 * a power of m is nearly straight in it.
 */
final class Octaves {

  /** Where the octaves end: closer to the end than this the cells are of one width. */
  static final double OFFSET = 0x1p-31;

  /** One half in the grading. */
  static final double MIDDLE = 0.5 + OFFSET;

  /** Digits of a that tell the cells of an octave apart. */
  private static final int BITS = 5;

  static final int SHIFT = 52 - BITS;

  /** Leaves the digits of a that name its cell. */
  static final long MASK = -1L << SHIFT;

  static final int BASE = (int) (Double.doubleToRawLongBits(OFFSET) >>> SHIFT);

  /** Cells from one end to the middle: 30 octaves, and one that begins at one half. */
  static final int CELLS = (30 << BITS) + 1;

  private Octaves() {}

  /** Returns the lower end of a cell, in terms of a; {@link #CELLS} gives the end of the last. */
  static double start(int cell) {
    return cell == CELLS ? MIDDLE : Double.longBitsToDouble((long) (BASE + cell) << SHIFT);
  }

  /** Returns the distance from the nearer end where a cell begins. */
  static double distance(int cell) {
    return start(cell) - OFFSET;
  }
}
