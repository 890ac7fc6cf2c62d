package io.strapline.bridge.cli;

import io.strapline.level.loop.LoopLimits;
import io.strapline.level.loop.LoopLimits.Recovery;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.Sample;

/** Runs one sample through a measuring point as the running bridge would. Stateless. */
final class OneOff {

  private OneOff() {}

  /** Returns the snapshot after one sample; a failure current counts at once. */
  static PointSnapshot run(PointSettings settings, Sample sample) {
    return MeasuringPoint.of(atOnce(settings), sample.time()).accept(sample);
  }

  /** A single current cannot be confirmed by a second one. */
  private static PointSettings atOnce(PointSettings settings) {
    LoopLimits usual = settings.loopLimits();
    LoopLimits limits =
        new LoopLimits(
            usual.failureLow(),
            usual.underRange(),
            usual.overRange(),
            usual.failureHigh(),
            0,
            new Recovery(usual.recovery().hysteresisMilliamps(), 0));
    return settings.toBuilder().loopLimits(limits).build();
  }
}
