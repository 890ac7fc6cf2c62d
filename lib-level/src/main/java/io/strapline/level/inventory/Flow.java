package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import io.strapline.level.reading.Reading;

/**
 * The flow into (positive) or out of (negative) a vessel, with the limit of what the signal can
 * tell. Immutable. The unit is that of the {@link Content} per second: m3/s or kg/s.
 *
 * @param rate the flow, zero inside the dead zone, with the worst quality of the samples in the
 *     window and the time of the newest
 * @param resolutionLimit flow that one resolution step of the level over the window makes, at the
 *     present height; zero or more
 * @param deadZone flow at or below which {@code rate} is zero; zero or more
 * @param unsuppressed the flow before the dead zone
 */
public record Flow(Reading rate, double resolutionLimit, double deadZone, double unsuppressed) {

  /** Refuses limits that are not finite. */
  public Flow {
    Check.present("Flow.rate", rate, "give the reading");
    Check.notNegative("Flow.resolutionLimit", resolutionLimit, "", "give the limit");
    Check.notNegative("Flow.deadZone", deadZone, "", "give the dead zone");
    unsuppressed = Check.finite("Flow.unsuppressed", unsuppressed, "", "give the slope");
  }

  /** Returns which way the content moves; still when the flow is BAD. */
  public FlowDirection direction() {
    return rate.quality().isBad() ? FlowDirection.STILL : FlowDirection.of(rate.value());
  }
}
