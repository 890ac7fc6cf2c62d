package io.strapline.bridge.app;

import io.strapline.level.point.PointSettings;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.CompiledCurve;
import io.strapline.level.vessel.LyingTank;
import io.strapline.level.vessel.TiltedTank;
import java.util.Optional;

/**
 * Replaces the shapes that are summed up by quadrature, lying tanks with heads and tilted tanks, by
 * their compiled curves, which lie within {@link CompiledCurve#BOUND} of the capacity. All other
 * shapes are closed forms and tables, fast as they are and left exact. Stateless.
 */
final class CompiledVessel {

  private CompiledVessel() {}

  /** Returns the settings with which a point runs. */
  static PointSettings in(PointSettings settings) {
    Optional<CapacityCurve> slow = settings.vessel().filter(CompiledVessel::isSlow);
    return slow.map(vessel -> settings.toBuilder().vessel(CompiledCurve.of(vessel)).build())
        .orElse(settings);
  }

  private static boolean isSlow(CapacityCurve vessel) {
    return vessel instanceof LyingTank || vessel instanceof TiltedTank;
  }
}
