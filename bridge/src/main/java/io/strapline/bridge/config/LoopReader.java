package io.strapline.bridge.config;

import io.strapline.level.loop.LoopLimits;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.loop.LoopRange.Measure;
import io.strapline.level.loop.RawCounts;
import io.strapline.level.loop.RawCounts.Encoding;
import io.strapline.level.units.Dimension;
import java.util.Optional;

/** Reads what a loop current and a raw count mean. Stateless. */
final class LoopReader {

  private LoopReader() {}

  /** Reads what 4 and 20 mA mean. */
  static Optional<LoopRange> range(Section section) {
    Measure measure = section.choice("measures", Labels.all(Measure.class));
    double at4 = section.quantity("at-4mA", Dimension.LENGTH);
    double at20 = section.quantity("at-20mA", Dimension.LENGTH);
    return section.build(() -> new LoopRange(measure, at4, at20));
  }

  /** Reads by which limits a current is judged; each has its default. */
  static Optional<LoopLimits> limits(Section section) {
    LoopLimits usual = LoopLimits.NE43;
    double failureLow = section.quantityOr("failure-low", Dimension.CURRENT, usual.failureLow());
    double underRange = section.quantityOr("under-range", Dimension.CURRENT, usual.underRange());
    double overRange = section.quantityOr("over-range", Dimension.CURRENT, usual.overRange());
    double failureHigh = section.quantityOr("failure-high", Dimension.CURRENT, usual.failureHigh());
    double confirmation =
        section.quantityOr("confirmation", Dimension.TIME, usual.confirmationSeconds());
    LoopLimits.Recovery recovery = recovery(section).orElse(usual.recovery());
    return section.build(
        () ->
            new LoopLimits(failureLow, underRange, overRange, failureHigh, confirmation, recovery));
  }

  private static Optional<LoopLimits.Recovery> recovery(Section limits) {
    Optional<Section> section = limits.section("recovery", Keys.RECOVERY);
    return section.flatMap(
        keys -> {
          LoopLimits.Recovery usual = LoopLimits.NE43.recovery();
          double hysteresis =
              keys.quantityOr("hysteresis", Dimension.CURRENT, usual.hysteresisMilliamps());
          double time = keys.quantityOr("time", Dimension.TIME, usual.seconds());
          return keys.build(() -> new LoopLimits.Recovery(hysteresis, time));
        });
  }

  /** Reads how raw counts become a current. */
  static Optional<RawCounts> rawCounts(Section section) {
    Encoding encoding = section.choice("encoding", Labels.all(Encoding.class));
    double at4 = section.number("at-4mA");
    double at20 = section.number("at-20mA");
    return section.build(() -> new RawCounts(encoding, at4, at20));
  }
}
