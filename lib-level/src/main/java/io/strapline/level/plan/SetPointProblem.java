package io.strapline.level.plan;

import io.strapline.level.internal.Check;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Why set points do not fit the vessel. Immutable.
 *
 * @param setPoint the one that does not fit
 * @param reason in what way
 * @param shortMetres by how many metres of level, zero or more; empty when it is a matter of volume
 *     alone
 * @param shortCubicMetres by how much volume, zero or more; empty when it is a matter of level
 *     alone
 * @param fix what to change
 */
public record SetPointProblem(
    SetPoint setPoint,
    Reason reason,
    OptionalDouble shortMetres,
    OptionalDouble shortCubicMetres,
    String fix) {

  /** In what way a set point does not fit. */
  public enum Reason {
    /** The flow of the response time is more than what lies up to the opposite critical level. */
    NO_ROOM_FOR_VOLUME("the volume of the response time does not fit the vessel"),
    /** Allowance or least height put it beyond the opposite critical level. */
    NO_ROOM_FOR_HEIGHT("allowance or least height leave no room"),
    /** The lowest of the high ones is not above the highest of the low ones. */
    ORDER("must lie below the set points from above"),
    /** The transmitter cannot measure there. */
    NOT_MEASURED("lies where the transmitter cannot measure");

    private final String text;

    Reason(String text) {
      this.text = text;
    }
  }

  /** Checks that all parts are there. */
  public SetPointProblem {
    Check.present("SetPointProblem.setPoint", setPoint, "name the set point");
    Check.present("SetPointProblem.reason", reason, "give the reason");
    Check.text("SetPointProblem.fix", fix, "say what to change");
  }

  /** Returns the problem in one line: set point, rule, by how much, fix. */
  public String text() {
    return setPoint.label() + ": " + reason.text + amount() + "; " + fix;
  }

  private String amount() {
    String metres = amount(shortMetres, "m");
    String volume = amount(shortCubicMetres, "m3");
    String between = metres.isEmpty() || volume.isEmpty() ? "" : ", ";
    return " (short of " + metres + between + volume + ")";
  }

  private static String amount(OptionalDouble value, String unit) {
    return value.isPresent()
        ? String.format(Locale.ROOT, "%.3f %s", value.getAsDouble(), unit)
        : "";
  }
}
