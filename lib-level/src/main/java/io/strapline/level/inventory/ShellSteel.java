package io.strapline.level.inventory;

/**
 * Steels of tank shells with their coefficients of linear expansion. Source: petroleum inspection
 * training handbook quoting API MPMS 12.1.1, and constants of a public spreadsheet citing the same.
 */
public enum ShellSteel {
  /** Mild carbon steel, metric coefficient as printed. */
  MILD_CARBON(0.00000620, 0.0000112),
  /** Mild carbon steel, metric coefficient as the correction tables use it: 1.8 x 0.0000062. */
  MILD_CARBON_AS_TABULATED(0.00000620, 0.00001116),
  /** Stainless steel 304. */
  STAINLESS_304(0.00000960, 0.0000173),
  /** Stainless steel 316. */
  STAINLESS_316(0.00000883, 0.0000159),
  /** Stainless steel 17-4PH. */
  STAINLESS_17_4PH(0.00000600, 0.0000108);

  private final double perFahrenheit;
  private final double perCelsius;

  ShellSteel(double perFahrenheit, double perCelsius) {
    this.perFahrenheit = perFahrenheit;
    this.perCelsius = perCelsius;
  }

  /** Returns the coefficient per degree of the base's own scale. */
  public double perDegree(StandardBase base) {
    return switch (base) {
      case SIXTY_FAHRENHEIT -> perFahrenheit;
      case FIFTEEN_CELSIUS -> perCelsius;
    };
  }
}
