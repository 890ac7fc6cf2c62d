package io.strapline.level.inventory;

import io.strapline.level.internal.Check;

/**
 * One line of a stock record: what came in and went out by meter, weighbridge or delivery note, and
 * what was measured in the vessel at the end. All in the same unit. Immutable.
 *
 * @param received amount that came in, finite, zero or more
 * @param issued amount that went out, finite, zero or more
 * @param measured stock measured at the end, finite, zero or more
 */
public record StockDay(double received, double issued, double measured) {

  /** Refuses amounts below zero. */
  public StockDay {
    received = Check.notNegative("StockDay.received", received, "", "give what came in");
    issued = Check.notNegative("StockDay.issued", issued, "", "give what went out, without a sign");
    measured = Check.notNegative("StockDay.measured", measured, "", "give the measured stock");
  }
}
