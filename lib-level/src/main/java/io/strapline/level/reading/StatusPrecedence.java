package io.strapline.level.reading;

import io.strapline.level.internal.Check;
import java.util.EnumSet;
import java.util.List;

/**
 * Which NE 107 status prevails when several are active. Immutable. Published descriptions agree on
 * failure before function check; they differ on the order of out of specification and maintenance.
 *
 * @param order the four statuses, the prevailing first; {@link DiagnosticStatus#NORMAL} always
 *     comes last and is left out
 */
public record StatusPrecedence(List<DiagnosticStatus> order) {

  /** F before C before S before M. */
  public static final StatusPrecedence DEFAULT =
      of(
          DiagnosticStatus.FAILURE,
          DiagnosticStatus.FUNCTION_CHECK,
          DiagnosticStatus.OUT_OF_SPECIFICATION,
          DiagnosticStatus.MAINTENANCE_REQUIRED);

  private static final int STATUSES = 4;

  /**
   * Checks that each of the four statuses stands there once.
   *
   * @throws IllegalArgumentException if one is missing, stands there twice or is NORMAL
   */
  public StatusPrecedence {
    order = List.copyOf(Check.present("StatusPrecedence.order", order, "give the four statuses"));
    EnumSet<DiagnosticStatus> all = EnumSet.noneOf(DiagnosticStatus.class);
    all.addAll(order);
    boolean complete = order.size() == STATUSES && all.size() == STATUSES;
    if (!complete || all.contains(DiagnosticStatus.NORMAL)) {
      throw Check.error(
          "StatusPrecedence.order",
          order.toString(),
          "",
          "must hold each of the four statuses once and no NORMAL",
          "give such as F, C, S, M");
    }
  }

  /** Returns an order, the prevailing first. */
  public static StatusPrecedence of(DiagnosticStatus... order) {
    return new StatusPrecedence(List.of(order));
  }

  /** Returns the status that prevails when both are active. */
  public DiagnosticStatus worst(DiagnosticStatus a, DiagnosticStatus b) {
    return rank(a) <= rank(b) ? a : b;
  }

  /** Returns the place of a status in the order, 0 for the prevailing one, 4 for NORMAL. */
  public int rank(DiagnosticStatus status) {
    return status == DiagnosticStatus.NORMAL ? STATUSES : order.indexOf(status);
  }
}
