package io.strapline.level.loop;

import io.strapline.level.internal.Check;
import io.strapline.level.reading.Quality;

/**
 * A judged loop current. Immutable.
 *
 * @param band band of the current as it came
 * @param state whether a failure is being confirmed or stands
 * @param currentMilliamps the current to use, in mA: the one that came while {@code OK}, else the
 *     last one that was {@code OK}, else 4 mA; always finite
 * @param quality of the value made from {@code currentMilliamps}
 */
public record LoopSignal(LoopBand band, State state, double currentMilliamps, Quality quality) {

  /** State of the fault confirmation. */
  public enum State {
    /** The current is a measurement. */
    OK,
    /** A failure current is being confirmed. */
    SUSPECT,
    /** The failure is confirmed and has not yet recovered. */
    FAULT
  }

  /** Refuses a current that is not finite and missing parts. */
  public LoopSignal {
    Check.present("LoopSignal.band", band, "give the band");
    Check.present("LoopSignal.state", state, "give the state");
    currentMilliamps =
        Check.finite(
            "LoopSignal.current", currentMilliamps, "mA", "pass the current that is to be used");
    Check.present("LoopSignal.quality", quality, "give the quality");
  }
}
