package io.strapline.bridge.publish.opcua;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import io.strapline.level.loop.LoopRange;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.signal.GateSettings;
import io.strapline.level.signal.NoReturnPolicy;
import io.strapline.level.signal.SignalSettings;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class RangesTest {

  @Test
  void spansTheVesselWhereThereIsOne() {
    Ranges ranges = new Ranges(FullPoint.settings("LT-1"));
    assertEquals(new Span(0, 10), ranges.level());
    assertEquals(new Span(0, 10), ranges.volume());
    assertEquals(new Span(0, 10_000), ranges.mass());
  }

  @Test
  void spansTheDistanceToTheFarLimit() {
    Ranges ranges = new Ranges(FullPoint.settings("LT-1"));
    assertEquals(new Span(0, 10), ranges.distance());
    assertEquals(new Span(0.5, 10), ranges.measurableDistance());
  }

  @Test
  void spansTheDistanceToTheDatumWithoutAFarLimit() {
    Ranges ranges = new Ranges(builder().mounting(new Mounting(6, 60)).build());
    assertEquals(12, ranges.distance().high(), 1e-9); // 6 m / cos 60 deg
    assertEquals(6, ranges.ullage().high(), 1e-9);
    assertFalse(ranges.measurableDistance().isProper());
  }

  @Test
  void spansTheLevelsOfADistanceRangeWithoutAVessel() {
    PointSettings settings =
        builder().mounting(Mounting.plumb(20)).range(LoopRange.ofDistance(18, 2)).build();
    assertEquals(new Span(2, 18), new Ranges(settings).level());
  }

  @Test
  void spansTheBeamWithoutVesselAndRange() {
    GateSettings gates = new GateSettings(0, 150, OptionalDouble.empty(), List.of());
    PointSettings settings =
        builder()
            .mounting(Mounting.plumb(0))
            .signal(new SignalSettings(gates, NoReturnPolicy.hold(1), 1, 1, 0))
            .build();
    assertEquals(new Span(-150, 0), new Ranges(settings).level());
  }

  @Test
  void hasNoRangeWhereNothingBoundsTheBeam() {
    PointSettings settings = builder().mounting(Mounting.plumb(0)).build();
    assertFalse(new Ranges(settings).distance().isProper());
  }

  private static PointSettings.Builder builder() {
    return PointSettings.builder("ZT-1");
  }
}
