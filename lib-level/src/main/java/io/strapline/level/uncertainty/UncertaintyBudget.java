package io.strapline.level.uncertainty;

import io.strapline.level.internal.Check;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * An uncertainty budget: a result, what makes it unsure and how much, by the law of propagation of
 * uncertainty. Immutable.
 *
 * @param result what was found, with its unit
 * @param contributions one line per source, each name once
 * @param correlations sources that err together; all others are independent
 * @param coverageFactor k of the expanded uncertainty, in [1, 10]; 2 covers about 95 % when no
 *     single rectangular source prevails and the degrees of freedom are many (GUM 6.3.3)
 * @param doubts why the straight-line model of the law may not hold here; empty when it does
 */
public record UncertaintyBudget(
    Measurand result,
    List<Contribution> contributions,
    List<Correlation> correlations,
    double coverageFactor,
    List<String> doubts) {

  /**
   * The quantity of a budget.
   *
   * @param name such as volume
   * @param value its value, finite
   * @param unit in ASCII
   */
  public record Measurand(String name, double value, String unit) {

    /** Checks the fields. */
    public Measurand {
      Check.text("Measurand.name", name, "name the quantity");
      value = Check.finite("Measurand.value", value, unit, "judge the reading's quality first");
    }
  }

  /** Checks the fields. */
  public UncertaintyBudget {
    Check.present("UncertaintyBudget.result", result, "give the result");
    contributions = List.copyOf(contributions);
    correlations = List.copyOf(correlations);
    doubts = List.copyOf(doubts);
    Check.between(
        "UncertaintyBudget.coverageFactor", coverageFactor, "", 1, 10, "give k, usually 2");
    CorrelationMatrix.of(contributions, correlations);
  }

  /** Returns the combined standard uncertainty, in the result's unit (GUM 5.1.2 and 5.2.2). */
  public double combined() {
    return Math.sqrt(CorrelationMatrix.of(contributions, correlations).variance(contributions));
  }

  /** Returns the expanded uncertainty: the combined one times k (GUM 6.2.1). */
  public double expanded() {
    return coverageFactor * combined();
  }

  /** Returns the expanded uncertainty in percent of the result; empty when the result is zero. */
  public OptionalDouble expandedPercent() {
    return result.value() == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(100 * expanded() / Math.abs(result.value()));
  }

  /**
   * Returns a line's share of the variance in percent, as if it stood alone. With correlations the
   * shares need not add up to 100.
   */
  public double sharePercent(Contribution line) {
    double combined = combined();
    double part = combined == 0 ? 0 : line.inResult() / combined;
    return 100 * part * part;
  }

  /**
   * Returns the effective degrees of freedom by the formula of Welch and Satterthwaite (GUM G.4.1,
   * equation G.2b); empty when all lines are exactly known, when nothing is uncertain, or when
   * correlations are stated, for which the formula does not hold.
   */
  public OptionalDouble effectiveDegreesOfFreedom() {
    double sum = 0;
    for (Contribution line : contributions) {
      sum += Math.pow(line.inResult(), 4) / line.standard().degreesOfFreedom();
    }
    return sum > 0 && correlations.isEmpty()
        ? OptionalDouble.of(Math.pow(combined(), 4) / sum)
        : OptionalDouble.empty();
  }

  /** Returns whether the law of propagation, which takes the model as straight, may not hold. */
  public boolean linearisationDoubtful() {
    return !doubts.isEmpty();
  }

  /** Returns the budget as plain text, one line per source, doubts last. */
  public String text() {
    StringBuilder text = new StringBuilder();
    add(text, "%s %s %s%n", result.name(), number(result.value()), result.unit());
    add(
        text,
        "%-28s %-4s %-12s %12s %12s %12s %7s%n",
        "source",
        "type",
        "shape",
        "standard",
        "sensitivity",
        "in result",
        "share");
    for (Contribution line : contributions) {
      add(
          text,
          "%-28s %-4s %-12s %12s %12s %12s %5.1f %%%n",
          line.name(),
          line.type(),
          line.distribution().name().toLowerCase(Locale.ROOT).replace('_', '-'),
          number(line.standard().value()),
          number(line.sensitivity()),
          number(line.inResult()),
          sharePercent(line));
    }
    for (Correlation pair : correlations) {
      add(text, "%s and %s correlated, %s%n", pair.first(), pair.second(), pair.coefficient());
    }
    add(text, "combined standard uncertainty %s %s%n", number(combined()), result.unit());
    String k = number(coverageFactor);
    add(text, "expanded uncertainty (k = %s) %s %s%n", k, number(expanded()), result.unit());
    doubts.forEach(doubt -> add(text, "doubtful: %s%n", doubt));
    return text.toString();
  }

  private static void add(StringBuilder text, String format, Object... values) {
    text.append(String.format(Locale.ROOT, format.replace("%n", "\n"), values));
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.4g", value);
  }
}
