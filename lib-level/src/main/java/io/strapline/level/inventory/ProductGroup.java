package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import java.util.List;

/**
 * Groups of petroleum liquids with their thermal expansion constants on both bases.
 *
 * <p>Source of the constants and of the density ranges at 60 degF: L. Bennett, Elementary orifice
 * flow measurement (open draft 2023), section on API 2540, whose ranges are those of the 2004
 * procedure; at 15 degC: values in several public implementations, equal to 1.8 times those at 60
 * degF, the density limits of crude and lubricating oils being from memory.
 *
 * <p><b>Between the printed ranges.</b> At 15 degC the ranges of refined products are printed in
 * steps of 0.5 kg/m3 and leave gaps (770.0 to 770.5 and so on). The group is chosen by the density
 * rounded to 0.5 kg/m3, half up, as the printed tables are entered; the constants are then used
 * with the density as given. At 60 degF the ranges touch, and the border belongs to the denser
 * group.
 */
public enum ProductGroup {
  /** Crude oils, tables 6A and 54A. */
  CRUDE_OIL(
      new ExpansionConstants(341.0957, 0, 0, 610.6, 1163.5),
      new ExpansionConstants(613.9723, 0, 0, 610.5, 1075.0)),
  /** Gasolines and naphthas, tables 6B and 54B. */
  GASOLINE(
      new ExpansionConstants(192.4571, 0.2438, 0, 610.6, 770.352),
      new ExpansionConstants(346.4228, 0.4388, 0, 653.0, 770.0)),
  /** Between gasolines and jet fuels, tables 6B and 54B. */
  TRANSITION(
      new ExpansionConstants(1489.0670, 0, -0.00186840, 770.352, 787.519),
      new ExpansionConstants(2680.3206, 0, -0.00336312, 770.5, 787.5)),
  /** Jet fuels and kerosene, tables 6B and 54B. */
  JET_KEROSENE(
      new ExpansionConstants(330.3010, 0, 0, 787.519, 838.313),
      new ExpansionConstants(594.5418, 0, 0, 788.0, 838.5)),
  /** Diesel, heating and fuel oils, tables 6B and 54B. */
  FUEL_OIL(
      new ExpansionConstants(103.8720, 0.2701, 0, 838.313, 1163.5),
      new ExpansionConstants(186.9696, 0.4862, 0, 839.0, 1075.0)),
  /** Lubricating oils, tables 6D and 54D. */
  LUBRICATING_OIL(
      new ExpansionConstants(0, 0.34878, 0, 800.9, 1163.5),
      new ExpansionConstants(0, 0.6278, 0, 800.0, 1164.0));

  private static final List<ProductGroup> REFINED =
      List.of(FUEL_OIL, JET_KEROSENE, TRANSITION, GASOLINE);

  @SuppressWarnings("ImmutableEnumChecker") // Immutable as its javadoc says.
  private final ExpansionConstants sixty;

  @SuppressWarnings("ImmutableEnumChecker") // Immutable as its javadoc says.
  private final ExpansionConstants fifteen;

  ProductGroup(ExpansionConstants sixty, ExpansionConstants fifteen) {
    this.sixty = sixty;
    this.fifteen = fifteen;
  }

  ExpansionConstants constants(StandardBase base) {
    return switch (base) {
      case SIXTY_FAHRENHEIT -> sixty;
      case FIFTEEN_CELSIUS -> fifteen;
    };
  }

  /** Returns whether the group holds for a density, see above for densities between the ranges. */
  public boolean covers(StandardDensity density) {
    ExpansionConstants constants = constants(density.base());
    double entry = entered(density);
    return entry >= constants.least() && entry <= constants.greatest();
  }

  /**
   * Returns the group of a refined product by its density.
   *
   * @throws IllegalArgumentException if no group holds for the density
   */
  public static ProductGroup ofRefined(StandardDensity density) {
    return REFINED.stream()
        .filter(group -> group.covers(density))
        .findFirst()
        .orElseThrow(
            () ->
                outside(
                    density,
                    GASOLINE.constants(density.base()).least(),
                    FUEL_OIL.constants(density.base()).greatest()));
  }

  /** Returns the density if the group holds for it. */
  StandardDensity checked(StandardDensity density) {
    if (!covers(density)) {
      ExpansionConstants constants = constants(density.base());
      throw outside(density, constants.least(), constants.greatest());
    }
    return density;
  }

  private static double entered(StandardDensity density) {
    double value = density.kilogramsPerCubicMetre();
    return switch (density.base()) {
      case SIXTY_FAHRENHEIT -> value;
      case FIFTEEN_CELSIUS -> Math.floor(value * 2 + 0.5) / 2;
    };
  }

  private static IllegalArgumentException outside(
      StandardDensity density, double least, double greatest) {
    return Check.error(
        "ProductGroup.density",
        density.kilogramsPerCubicMetre(),
        "kg/m3 at " + density.base().text(),
        "must lie between " + least + " and " + greatest,
        "check density and base temperature, or choose another product group");
  }
}
