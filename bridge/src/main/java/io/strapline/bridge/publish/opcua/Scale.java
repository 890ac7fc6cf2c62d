package io.strapline.bridge.publish.opcua;

import io.strapline.level.units.Unit;
import java.util.Optional;

/**
 * Unit and ranges of an analog value. Immutable.
 *
 * @param unit engineering unit
 * @param range what the value spans in operation (EURange); empty when the configuration bounds it
 *     nowhere
 * @param instrumentRange what the instrument can measure (InstrumentRange)
 */
record Scale(Unit unit, Optional<Span> range, Optional<Span> instrumentRange) {

  static Scale of(Unit unit) {
    return new Scale(unit, Optional.empty(), Optional.empty());
  }

  static Scale of(Unit unit, Span range) {
    return new Scale(unit, Optional.of(range).filter(Span::isProper), Optional.empty());
  }

  Scale withInstrumentRange(Span span) {
    return new Scale(unit, range, Optional.of(span).filter(Span::isProper));
  }
}
