package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import java.util.List;

/**
 * Book stock against measured stock over a period. Immutable.
 *
 * <p>{@code book = opening + received - issued}; {@code difference = measured - book}, negative for
 * a loss; {@code threshold} by the rule on the amount issued. A difference larger than the
 * threshold is out of balance; one that equals it is not. The threshold says when to look, not why:
 * meters, temperature, density and the capacity table err too. Only the difference of the whole
 * period is judged: daily differences cancel.
 *
 * @param book stock by the books at the end
 * @param measured stock measured at the end
 * @param difference measured less book
 * @param threshold largest difference allowed
 * @param verdict what to make of it
 */
public record StockBalance(
    double book, double measured, double difference, double threshold, Verdict verdict) {

  /** What a balance says. */
  public enum Verdict {
    /** The difference is within the threshold. */
    IN_BALANCE,
    /** Less in the vessel than the books say, by more than the threshold. */
    SHORT,
    /** More in the vessel than the books say, by more than the threshold. */
    OVER
  }

  /**
   * Returns the balance of a period.
   *
   * @param opening measured stock at the start, finite, zero or more
   * @param days one entry for each stock-taking, in order, at least one
   * @param rule largest difference allowed
   */
  public static StockBalance of(double opening, List<StockDay> days, BalanceRule rule) {
    Check.notNegative("StockBalance.opening", opening, "", "give the measured stock at the start");
    Check.between(
        "StockBalance.days",
        Check.present("StockBalance.days", days, "give the days").size(),
        "",
        1,
        Integer.MAX_VALUE,
        "give at least one day");
    CompensatedSum received = CompensatedSum.ZERO;
    CompensatedSum issued = CompensatedSum.ZERO;
    for (StockDay day : days) {
      received = received.plus(day.received());
      issued = issued.plus(day.issued());
    }
    double book = opening + received.value() - issued.value();
    return judged(book, days.get(days.size() - 1).measured(), rule.threshold(issued.value()));
  }

  /**
   * Compares what a meter counted with what the level says has moved over the same period, by the
   * same rule on the metered amount: the meter's amount stands as book.
   *
   * @param metered amount by meter, without a sign, finite, zero or more
   * @param byLevel amount by level, for example of {@link Totals}, finite, zero or more
   * @param rule largest difference allowed
   */
  public static StockBalance meter(double metered, double byLevel, BalanceRule rule) {
    Check.notNegative("StockBalance.metered", metered, "", "give the amount without a sign");
    Check.notNegative("StockBalance.byLevel", byLevel, "", "give the amount without a sign");
    return judged(metered, byLevel, rule.threshold(metered));
  }

  private static StockBalance judged(double book, double measured, double threshold) {
    double difference = measured - book;
    Verdict verdict = Verdict.IN_BALANCE;
    if (Math.abs(difference) > threshold) {
      verdict = difference < 0 ? Verdict.SHORT : Verdict.OVER;
    }
    return new StockBalance(book, measured, difference, threshold, verdict);
  }
}
