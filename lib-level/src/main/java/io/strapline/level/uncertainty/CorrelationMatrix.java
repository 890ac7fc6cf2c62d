package io.strapline.level.uncertainty;

import io.strapline.level.internal.Check;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** The correlations of a budget's lines, checked to be possible together. Immutable. */
final class CorrelationMatrix {

  /** How far below zero rounding may take a variance of zero. */
  private static final double ROUNDING = 1e-9;

  private final double[][] coefficients;

  private CorrelationMatrix(double[][] coefficients) {
    this.coefficients = coefficients;
  }

  static CorrelationMatrix of(List<Contribution> lines, List<Correlation> correlations) {
    requireNames(lines, correlations);
    int size = lines.size();
    double[][] coefficients = new double[size][size];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        coefficients[i][j] = i == j ? 1 : between(lines.get(i), lines.get(j), correlations);
      }
    }
    requirePossible(coefficients);
    return new CorrelationMatrix(coefficients);
  }

  private static double between(Contribution a, Contribution b, List<Correlation> correlations) {
    double coefficient = 0;
    for (Correlation correlation : correlations) {
      if (correlation.names(a.name(), b.name())) {
        coefficient = correlation.coefficient();
      }
    }
    return coefficient;
  }

  private static void requireNames(List<Contribution> lines, List<Correlation> correlations) {
    Set<String> names = new HashSet<>();
    for (Contribution line : lines) {
      if (!names.add(line.name())) {
        throw error("source", line.name(), "is there twice", "give each source its own name");
      }
    }
    Set<Set<String>> pairs = new HashSet<>();
    for (Correlation correlation : correlations) {
      for (String name : List.of(correlation.first(), correlation.second())) {
        if (!names.contains(name)) {
          throw error("correlation", name, "is no source", "use the name of a source");
        }
      }
      if (!pairs.add(Set.of(correlation.first(), correlation.second()))) {
        String pair = correlation.first() + ", " + correlation.second();
        throw error("correlation", pair, "is stated twice", "remove one of the two");
      }
    }
  }

  /** Cholesky's decomposition: no combination of the errors may have a variance below zero. */
  private static void requirePossible(double[][] matrix) {
    int size = matrix.length;
    double[][] root = new double[size][size];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j <= i; j++) {
        double rest = matrix[i][j];
        for (int k = 0; k < j; k++) {
          rest -= root[i][k] * root[j][k];
        }
        boolean possible = i == j ? rest >= -ROUNDING : root[j][j] > 0 || Math.abs(rest) < 1e-6;
        if (!possible) {
          throw error(
              "correlations",
              "as stated",
              "cannot all be true together",
              "check their signs and sizes; three sources cannot all be opposite to each other");
        }
        root[i][j] = i == j ? Math.sqrt(Math.max(rest, 0)) : root[j][j] > 0 ? rest / root[j][j] : 0;
      }
    }
  }

  private static IllegalArgumentException error(
      String what, String value, String rule, String fix) {
    return Check.error("UncertaintyBudget." + what, value, "", rule, fix);
  }

  /** GUM equations (13) and (16): the sum over all pairs of lines. */
  double variance(List<Contribution> lines) {
    double variance = 0;
    for (int i = 0; i < coefficients.length; i++) {
      for (int j = 0; j < coefficients.length; j++) {
        variance += coefficients[i][j] * lines.get(i).signed() * lines.get(j).signed();
      }
    }
    return Math.max(variance, 0);
  }
}
