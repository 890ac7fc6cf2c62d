package io.strapline.level.uncertainty;

/**
 * The shape of what is known about an error. The divisor turns its half-width into a standard
 * uncertainty (GUM 4.3.7, 4.3.9 and, for the U shape, H.1.3.5).
 */
public enum Distribution {
  /** Near zero more likely than far: noise, calibration certificates. */
  NORMAL(1, 3),
  /** Anything between two limits, all alike: resolution, a stated maximum error. */
  RECTANGULAR(Math.sqrt(3), 1.8),
  /** Between two limits, the middle most likely. */
  TRIANGULAR(Math.sqrt(6), 2.4),
  /** Swings between two limits, as a temperature under two-point control. */
  U_SHAPED(Math.sqrt(2), 1.5);

  private final double divisor;
  private final double kurtosis;

  Distribution(double divisor, double kurtosis) {
    this.divisor = divisor;
    this.kurtosis = kurtosis;
  }

  /** Returns the half-width over the standard uncertainty; 1 for the normal distribution. */
  public double divisor() {
    return divisor;
  }

  /** Returns the fourth central moment over the squared variance, for terms of second order. */
  double kurtosis() {
    return kurtosis;
  }
}
