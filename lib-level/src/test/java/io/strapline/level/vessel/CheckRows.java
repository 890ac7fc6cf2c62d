package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.testing.CsvRow;

/** Compares a vessel with the rows of a check file, each at its own relative tolerance. */
final class CheckRows {

  private CheckRows() {}

  /**
   * Checks the volume of one row and, from that volume, the height back. The absolute tolerance of
   * the file is used for the empty vessel only.
   */
  static void check(CsvRow row, CapacityCurve curve) {
    double expected = row.number("volume_m3");
    double tolerance = expected == 0 ? row.number("abs_tol_m3") : row.number("rel_tol") * expected;
    double volume = curve.volumeCubicMetres(row.number("h_m"));
    assertEquals(expected, volume, tolerance, row.text("id"));
    // Near the ends of round shapes a height has little effect, so volumes are compared. A rounded
    // published volume may lie beyond the capacity by its own tolerance.
    double back = curve.volumeCubicMetres(curve.heightMetres(expected));
    double roundTrip = Math.max(1e-9 * curve.capacityCubicMetres(), tolerance);
    assertEquals(expected, back, roundTrip, row.text("id") + " inverse");
  }
}
