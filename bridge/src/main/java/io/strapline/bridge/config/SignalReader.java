package io.strapline.bridge.config;

import io.strapline.level.signal.GateSettings;
import io.strapline.level.signal.NoReturnPolicy;
import io.strapline.level.signal.SignalSettings;
import io.strapline.level.units.Dimension;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads the conditioning of a point's signal. Stateless. */
final class SignalReader {

  private static final int LONGEST_MEDIAN = 99;
  private static final int LONGEST_AVERAGE = 1000;

  private SignalReader() {}

  /** Reads gates, no-return policy and smoothing; each has its default. */
  static Optional<SignalSettings> read(Section section) {
    Optional<GateSettings> gates = gates(section);
    Optional<NoReturnPolicy> noReturn = noReturn(section);
    int median = section.optionalInteger("median", 1, LONGEST_MEDIAN).orElse(1);
    int average = section.optionalInteger("average", 1, LONGEST_AVERAGE).orElse(1);
    double lag = section.quantityOr("lag", Dimension.TIME, 0);
    return section.build(
        () ->
            new SignalSettings(gates.orElseThrow(), noReturn.orElseThrow(), median, average, lag));
  }

  private static Optional<GateSettings> gates(Section section) {
    GateSettings open = GateSettings.OPEN;
    double deadZone = section.quantityOr("dead-zone", Dimension.LENGTH, open.deadZoneMetres());
    double farLimit = section.quantityOr("far-limit", Dimension.LENGTH, open.farLimitMetres());
    OptionalDouble strength =
        section.has("least-strength")
            ? OptionalDouble.of(section.number("least-strength"))
            : OptionalDouble.empty();
    List<Double> codes = section.list("invalid-codes").stream().map(Scalar::number).toList();
    return section.build(() -> new GateSettings(deadZone, farLimit, strength, codes));
  }

  private static Optional<NoReturnPolicy> noReturn(Section signal) {
    return signal.has("no-return")
        ? signal.section("no-return", Keys.NO_RETURN).flatMap(SignalReader::policy)
        : Optional.of(SignalSettings.PLAIN.noReturn());
  }

  private static Optional<NoReturnPolicy> policy(Section section) {
    return section
        .one(Keys.NO_RETURN.names())
        .flatMap(key -> key.equals("hold") ? hold(section) : substitute(section));
  }

  private static Optional<NoReturnPolicy> hold(Section section) {
    double seconds = section.quantity("hold", Dimension.TIME);
    return section.build(() -> seconds == 0 ? NoReturnPolicy.fail() : NoReturnPolicy.hold(seconds));
  }

  private static Optional<NoReturnPolicy> substitute(Section policy) {
    Optional<Section> section = policy.section("substitute", Keys.SUBSTITUTE);
    return section.flatMap(
        keys -> {
          double after = keys.quantity("after", Dimension.TIME);
          double distance = keys.quantity("distance", Dimension.LENGTH);
          return keys.build(() -> NoReturnPolicy.substitute(after, distance));
        });
  }
}
