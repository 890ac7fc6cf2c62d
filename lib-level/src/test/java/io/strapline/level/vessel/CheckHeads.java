package io.strapline.level.vessel;

import io.strapline.level.testing.CsvRow;

/** Reads a head from the columns of a check file. */
final class CheckHeads {

  private CheckHeads() {}

  static Head of(CsvRow row, String side) {
    return switch (row.text(side + "_head")) {
      case "flat" -> new Head.Flat();
      case "cone", "conical" -> new Head.Conical(row.number(side + "_depth_m"));
      case "guppy" -> new Head.EccentricConical(row.number(side + "_depth_m"));
      case "hemispherical" -> new Head.Hemispherical();
      case "ellipsoidal" -> new Head.Ellipsoidal(row.number(side + "_depth_m"));
      case "spherical_dish" -> new Head.SphericalDish(row.number(side + "_depth_m"));
      case "torispherical" ->
          new Head.Torispherical(row.number(side + "_f"), row.number(side + "_k"));
      default -> throw new IllegalArgumentException(row.text(side + "_head"));
    };
  }
}
