package io.strapline.level.units;

/** What a quantity measures, with the unit in which the library computes. */
public enum Dimension {
  /** In metres. */
  LENGTH("a length"),
  /** In cubic metres. */
  VOLUME("a volume"),
  /** In kilograms. */
  MASS("a mass"),
  /** In kilograms per cubic metre. */
  DENSITY("a density"),
  /** In seconds. */
  TIME("a time"),
  /** In metres per second. */
  SPEED("a speed"),
  /** In cubic metres per second. */
  VOLUME_FLOW("a volume flow"),
  /** In kilograms per second. */
  MASS_FLOW("a mass flow"),
  /** In milliamps, the one exception from SI, since the loop is spoken of in nothing else. */
  CURRENT("a current"),
  /** In volts. */
  VOLTAGE("a voltage"),
  /** In ohms. */
  RESISTANCE("a resistance"),
  /** In degrees Celsius, likewise. */
  TEMPERATURE("a temperature"),
  /** In degrees. */
  ANGLE("an angle"),
  /** In percent. */
  RATIO("a ratio");

  private final String phrase;

  Dimension(String phrase) {
    this.phrase = phrase;
  }

  /** Returns the dimension in words with its article, such as "a volume flow". */
  public String phrase() {
    return phrase;
  }
}
