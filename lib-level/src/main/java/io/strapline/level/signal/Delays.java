package io.strapline.level.signal;

import io.strapline.level.internal.Check;

/** What the delays of all stages have in common. Stateless. */
final class Delays {

  private Delays() {}

  static double checkedInterval(double sampleIntervalSeconds) {
    return Check.positive(
        "SignalFilter.sampleInterval",
        sampleIntervalSeconds,
        "s",
        "enter the time between two samples");
  }
}
