package io.strapline.level.inventory;

/**
 * Constants of one product group on one base: {@code alpha = K0 / rho^2 + K1 / rho + K2}, alpha per
 * degree of the base's scale. Immutable.
 *
 * @param k0 in (kg/m3)^2 per degree
 * @param k1 in kg/m3 per degree
 * @param k2 per degree
 * @param least least density of the group at the base, kg/m3
 * @param greatest greatest density of the group at the base, kg/m3
 */
record ExpansionConstants(double k0, double k1, double k2, double least, double greatest) {

  double alpha(double density) {
    return (k0 / density + k1) / density + k2;
  }
}
