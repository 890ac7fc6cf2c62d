package io.strapline.level.units;

/** What a quantity measures, with the unit in which the library computes. */
public enum Dimension {
  /** In metres. */
  LENGTH,
  /** In cubic metres. */
  VOLUME,
  /** In kilograms. */
  MASS,
  /** In kilograms per cubic metre. */
  DENSITY,
  /** In seconds. */
  TIME,
  /** In metres per second. */
  SPEED,
  /** In cubic metres per second. */
  VOLUME_FLOW,
  /** In kilograms per second. */
  MASS_FLOW,
  /** In milliamps, the one exception from SI, since the loop is spoken of in nothing else. */
  CURRENT,
  /** In volts. */
  VOLTAGE,
  /** In ohms. */
  RESISTANCE,
  /** In degrees Celsius, likewise. */
  TEMPERATURE,
  /** In degrees. */
  ANGLE,
  /** In percent. */
  RATIO
}
