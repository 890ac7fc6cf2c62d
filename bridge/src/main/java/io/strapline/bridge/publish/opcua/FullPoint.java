package io.strapline.bridge.publish.opcua;

import io.strapline.level.alarm.AlarmHandling;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.alarm.AlarmSettings;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.signal.GateSettings;
import io.strapline.level.signal.SignalSettings;
import io.strapline.level.vessel.CapacityCurve;
import java.util.List;
import java.util.OptionalDouble;

/** A measuring point that computes everything there is: what the type declares. Stateless. */
final class FullPoint {

  private FullPoint() {}

  /** Returns its settings: a vessel of 10 m, density 1000 kg/m3, all alarms. */
  static PointSettings settings(String tag) {
    GateSettings gates = new GateSettings(0.5, 10, OptionalDouble.of(1), List.of());
    SignalSettings plain = SignalSettings.PLAIN;
    return PointSettings.builder(tag)
        .mounting(Mounting.plumb(10))
        .vessel(new Unit())
        .range(LoopRange.ofLevel(0, 10))
        .density(1000)
        .signal(new SignalSettings(gates, plain.noReturn(), 1, 1, 0))
        .alarms(new AlarmSettings(limits(), 0, AlarmHandling.DEFAULT))
        .build();
  }

  private static List<AlarmLimit> limits() {
    return List.of(
        limit(AlarmKind.HIGH_HIGH, 9),
        limit(AlarmKind.HIGH, 8),
        limit(AlarmKind.LOW, 2),
        limit(AlarmKind.LOW_LOW, 1));
  }

  private static AlarmLimit limit(AlarmKind kind, double setPointMetres) {
    return new AlarmLimit(kind, setPointMetres, 0, 0, 0, AlarmHandling.DEFAULT);
  }

  /** A vessel of 10 m with 1 m3 per metre. */
  private record Unit() implements CapacityCurve {

    @Override
    public double maxHeightMetres() {
      return 10;
    }

    @Override
    public double capacityCubicMetres() {
      return 10;
    }

    @Override
    public double volumeCubicMetres(double heightMetres) {
      return Math.max(0, Math.min(heightMetres, 10));
    }

    @Override
    public double heightMetres(double volumeCubicMetres) {
      return volumeCubicMetres(volumeCubicMetres);
    }
  }
}
