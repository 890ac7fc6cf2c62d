package io.strapline.level.table;

import java.util.List;

/**
 * The parts that a fraction block adds to the main rows of a range. Immutable.
 *
 * @param line where it begins
 * @param from lowest main row it serves, as written
 * @param to main row from which on it serves no more, as written
 * @param parts lengths and volumes in the units of the main rows, each greater than zero
 */
record FractionBlock(int line, double from, double to, List<Entry> parts) {

  boolean serves(double written) {
    return written >= from && written < to;
  }

  boolean overlaps(FractionBlock other) {
    return from < other.to && other.from < to;
  }
}
