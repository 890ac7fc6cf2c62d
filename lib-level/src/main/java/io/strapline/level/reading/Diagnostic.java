package io.strapline.level.reading;

import io.strapline.level.internal.Check;
import java.time.Instant;

/**
 * One active diagnostic of a measuring point. Immutable.
 *
 * @param status its NE 107 status, never {@link DiagnosticStatus#NORMAL}
 * @param cause what is wrong
 * @param since source time at which it became active
 */
public record Diagnostic(DiagnosticStatus status, Cause cause, Instant since) {

  /** Refuses a diagnostic that says that nothing is wrong. */
  public Diagnostic {
    Check.present("Diagnostic.status", status, "give the NE 107 status");
    Check.present("Diagnostic.cause", cause, "give the cause");
    Check.present("Diagnostic.since", since, "give the time");
    if (status == DiagnosticStatus.NORMAL) {
      throw Check.error(
          "Diagnostic.status", "NORMAL", "", "is no diagnostic", "leave the diagnostic out");
    }
  }
}
