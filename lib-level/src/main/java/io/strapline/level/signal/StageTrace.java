package io.strapline.level.signal;

import io.strapline.level.internal.Check;
import io.strapline.level.reading.Cause;
import java.util.Locale;

/**
 * What one stage did to one sample. Immutable.
 *
 * @param stage which
 * @param effect what it did
 * @param cause why; {@link Cause#NONE} when it passed
 * @param outputMetres distance that the stage gave on, finite
 */
public record StageTrace(Stage stage, Effect effect, Cause cause, double outputMetres) {

  /** What a stage did to a sample. */
  public enum Effect {
    /** The output follows the sample. */
    PASSED,
    /** The sample does not count; the last value, or a substitute, went out in its place. */
    HELD,
    /** The output follows the sample only as far as the limit lets it. */
    LIMITED,
    /** The sample does not count, and no value stands in for it here. */
    REJECTED
  }

  /** Checks that all parts are there. */
  public StageTrace {
    Check.present("StageTrace.stage", stage, "give the stage");
    Check.present("StageTrace.effect", effect, "give the effect");
    Check.present("StageTrace.cause", cause, "give the cause, NONE for none");
    outputMetres =
        Check.finite("StageTrace.output", outputMetres, "m", "give the distance that went on");
  }

  /** Returns the trace in one line, such as {@code median: PASSED 3.200 m}. */
  public String text() {
    String why = cause == Cause.NONE ? "" : " (" + cause.text() + ")";
    return String.format(Locale.ROOT, "%s: %s %.3f m%s", stage.text(), effect, outputMetres, why);
  }
}
