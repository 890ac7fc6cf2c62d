package io.strapline.level.plan;

import io.strapline.level.loop.RawCounts;
import java.util.OptionalDouble;

/** The raw count of a card at a current. Stateless. */
final class CardCount {

  private CardCount() {}

  /**
   * Returns the count that the card gives, whole for a 16-bit card; empty when its register cannot
   * hold it.
   */
  static OptionalDouble at(double currentMilliamps, RawCounts card) {
    double perMilliamp = (card.countAt20() - card.countAt4()) / 16;
    double exact = card.countAt4() + (currentMilliamps - 4) * perMilliamp;
    double count = card.encoding() == RawCounts.Encoding.NUMBER ? exact : Math.rint(exact);
    double back = card.currentMilliamps(count);
    // A count past the register's end is refused or comes back as another current.
    boolean held = Math.abs(back - currentMilliamps) <= 0.51 / Math.abs(perMilliamp);
    return held ? OptionalDouble.of(count + 0.0) : OptionalDouble.empty();
  }
}
