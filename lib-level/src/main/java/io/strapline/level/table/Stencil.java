package io.strapline.level.table;

/**
 * A weighted sum of a few volumes that would be zero on a smooth curve, with its standard
 * uncertainty. Immutable.
 *
 * @param value of the sum, in cubic metres
 * @param standard its standard uncertainty, in cubic metres
 */
record Stencil(double value, double standard) {

  /**
   * Returns the sum. Level errors are independent from reading to reading and act by the local
   * area; the errors of increments add up from reading to reading, so that between two readings the
   * sum of all weights above counts (derived here).
   *
   * @param volumes weighted, from below
   * @param weights adding up to zero
   * @param increments how many increments lie between each reading and the one before
   */
  static Stencil of(double[] volumes, double[] weights, int[] increments, Spread spread) {
    double value = 0;
    double level = 0;
    double metered = 0;
    double above = 0;
    for (int i = volumes.length - 1; i >= 0; i--) {
      value += weights[i] * volumes[i];
      level += weights[i] * weights[i];
      above += weights[i];
      if (i > 0) {
        metered += increments[i] * above * above;
      }
    }
    double byLevel = spread.areaSquareMetres() * spread.levelMetres();
    double variance =
        byLevel * byLevel * level
            + metered * spread.incrementCubicMetres() * spread.incrementCubicMetres();
    return new Stencil(value, Math.sqrt(variance));
  }

  /** Standard uncertainties of a level and an increment, and the area that joins them. */
  record Spread(double areaSquareMetres, double levelMetres, double incrementCubicMetres) {}

  double timesStandard() {
    return standard > 0 ? value / standard : 0;
  }
}
