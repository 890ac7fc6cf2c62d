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
import io.strapline.level.point.Sample;
import io.strapline.level.vessel.ConeSection;
import io.strapline.level.vessel.StackedVessel;
import java.time.Instant;
import java.util.List;
import java.util.Locale;

/** A silo's loop current becomes level, volume, mass, alarms and status. */
public final class SiloLevel {

  private SiloLevel() {}

  /** Prints what a loop current of 12 mA means. */
  public static void main(String[] args) {
    PointSettings silo =
        PointSettings.builder("LT-101")
            .mounting(Mounting.plumb(21.9)) // the transmitter's zero, metres above the outlet
            .range(LoopRange.ofDistance(21.5, 1.0)) // metres of distance at 4 mA and at 20 mA
            .vessel(StackedVessel.uprightCylinderOnCone(new ConeSection(0.4, 6, 3.2), 18))
            .density(1350) // kg/m3
            .alarms(highHighAt(19.8))
            .build();
    Instant start = Instant.parse("2026-01-05T08:00:00Z");
    MeasuringPoint point = MeasuringPoint.of(silo, start);

    PointSnapshot now = point.accept(Sample.current(start, 12.0));

    now.readings()
        .forEach(
            (quantity, reading) ->
                System.out.printf(
                    Locale.ROOT,
                    "%-12s %10.3f %-2s %s%n",
                    quantity,
                    reading.value(),
                    quantity.unit(),
                    reading.quality().level()));
    System.out.println("NE 107 status: " + now.status() + ", alarms: " + now.alarms().size());
  }

  private static AlarmSettings highHighAt(double metres) {
    AlarmHandling urgent = new AlarmHandling(1, false);
    AlarmLimit limit = new AlarmLimit(AlarmKind.HIGH_HIGH, metres, 0.2, 2, 5, urgent);
    return new AlarmSettings(List.of(limit), 0, urgent);
  }
}
