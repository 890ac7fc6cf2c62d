package io.strapline.level.signal;

/** Stages of conditioning, in the order in which a sample goes through them. */
public enum Stage {
  /** What counts as a measurement. */
  GATES("gates"),
  /** What the point gives while there is no measurement. */
  NO_RETURN("no-return policy"),
  /** When a sudden change is believed. */
  OBSTRUCTION("obstruction gate"),
  /** Median of the last samples. */
  MEDIAN("median"),
  /** How fast the surface can move. */
  RATE_LIMITS("rate limits"),
  /** Mean of the last samples. */
  AVERAGE("moving average"),
  /** First-order lag. */
  LAG("lag");

  private final String text;

  Stage(String text) {
    this.text = text;
  }

  /** Returns the stage in words. */
  public String text() {
    return text;
  }
}
