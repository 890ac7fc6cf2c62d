package io.strapline.bridge.publish.opcua;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.loop.LoopRange;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.DiagnosticStatus;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class QuantityVariablesTest {

  @Test
  void publishesExactlyWhatThePointComputes() {
    PointSettings bare = PointSettings.builder("A").mounting(Mounting.plumb(5)).build();
    PointSettings ranged =
        PointSettings.builder("B")
            .mounting(Mounting.plumb(5))
            .range(LoopRange.ofLevel(0, 5))
            .build();
    for (PointSettings settings : List.of(bare, ranged, FullPoint.settings("C"))) {
      MeasuringPoint point = MeasuringPoint.of(settings, TestPlant.START);
      OptionalDouble strength =
          settings.signal().gates().leastStrength().isPresent()
              ? OptionalDouble.of(50)
              : OptionalDouble.empty();
      Sample sample =
          new Sample(
              TestPlant.at(1), Sample.Kind.DISTANCE, 4, strength, DiagnosticStatus.NORMAL, false);
      assertEquals(
          point.accept(sample).readings().keySet(),
          QuantityVariables.configured(settings),
          settings.tag());
    }
  }
}
