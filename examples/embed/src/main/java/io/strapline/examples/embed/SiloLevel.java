package io.strapline.examples.embed;

import io.strapline.level.alarm.AlarmHandling;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.alarm.AlarmSettings;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.Quantity;
import io.strapline.level.point.Sample;
import io.strapline.level.vessel.StackedVessel;
import java.time.Instant;
import java.util.List;

/** A silo's 4-20 mA signal becomes level, volume, mass and alarms. */
public final class SiloLevel {

  private SiloLevel() {}

  /** Prints what one loop current means. */
  public static void main(String[] args) {
    AlarmLimit highHigh =
        new AlarmLimit(AlarmKind.HIGH_HIGH, 19.8, 0.2, 2, 5, AlarmHandling.DEFAULT);
    PointSettings settings =
        PointSettings.builder("LT-101")
            .mounting(Mounting.plumb(21.9))
            .range(LoopRange.ofDistance(21.5, 1.0))
            .vessel(StackedVessel.cylinderOnCone(6.0, 18.0, 0.4, 3.2))
            .density(1350)
            .alarms(new AlarmSettings(List.of(highHigh), 0, AlarmHandling.DEFAULT))
            .build();
    Instant time = Instant.parse("2026-01-05T08:00:00Z");
    MeasuringPoint point = MeasuringPoint.of(settings, time);

    PointSnapshot snapshot = point.accept(Sample.current(time, 12.0));

    snapshot.readings().forEach(SiloLevel::print);
    System.out.println("status " + snapshot.status() + ", alarms " + snapshot.alarms());
  }

  private static void print(Quantity quantity, io.strapline.level.reading.Reading reading) {
    System.out.printf(
        "%-12s %10.3f %-3s %s%n",
        quantity, reading.value(), quantity.unit(), reading.quality().level());
  }
}
