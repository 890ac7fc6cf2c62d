package io.strapline.level.alarm;

import io.strapline.level.internal.Check;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * All alarms of one measuring point. Immutable.
 *
 * @param limits at most one per kind; set points in the strict order low-low, low, high, high-high;
 *     no deadband reaches the next limit of the opposite side; kept in the order of {@link
 *     AlarmKind}
 * @param badSignalOnDelaySeconds how long the signal must be BAD, finite, zero or more
 * @param badSignalHandling priority and latching of the bad-signal alarm
 * @param greatestShelveSeconds longest time for which an alarm may be shelved, in [0, {@value
 *     #SHELVE_LIMIT_SECONDS}]; zero means that none may be
 */
public record AlarmSettings(
    List<AlarmLimit> limits,
    double badSignalOnDelaySeconds,
    AlarmHandling badSignalHandling,
    double greatestShelveSeconds) {

  /** Nothing may be shelved for longer than thirty days. */
  public static final double SHELVE_LIMIT_SECONDS = 2_592_000;

  /** One shift of eight hours (common practice, no source). */
  public static final double ONE_SHIFT_SECONDS = 28_800;

  /** No limit; the bad-signal alarm at once. */
  public static final AlarmSettings NONE = new AlarmSettings(List.of(), 0, AlarmHandling.DEFAULT);

  /**
   * Checks the limits against each other.
   *
   * @throws IllegalArgumentException naming the limit that breaks a rule
   */
  public AlarmSettings {
    limits = sorted(limits);
    checkOrder(limits);
    checkDeadbands(limits);
    badSignalOnDelaySeconds =
        Check.notNegative(
            "AlarmSettings.badSignalOnDelay", badSignalOnDelaySeconds, "s", "enter 0 for no delay");
    Check.present(
        "AlarmSettings.badSignalHandling", badSignalHandling, "give priority and latching");
    greatestShelveSeconds =
        Check.between(
            "AlarmSettings.greatestShelve",
            greatestShelveSeconds,
            "s",
            0,
            SHELVE_LIMIT_SECONDS,
            "enter how long an alarm may be shelved at most, 0 for not at all");
  }

  /** Alarms that may be shelved for {@link #ONE_SHIFT_SECONDS} at most. */
  public AlarmSettings(
      List<AlarmLimit> limits, double badSignalOnDelaySeconds, AlarmHandling badSignalHandling) {
    this(limits, badSignalOnDelaySeconds, badSignalHandling, ONE_SHIFT_SECONDS);
  }

  private static List<AlarmLimit> sorted(List<AlarmLimit> limits) {
    Check.present("AlarmSettings.limits", limits, "give an empty list for no limit");
    for (int i = 0; i < limits.size(); i++) {
      Check.present("AlarmSettings.limits[" + i + "]", limits.get(i), "give the limit");
    }
    List<AlarmLimit> sorted = new ArrayList<>(limits);
    sorted.sort(Comparator.comparing(AlarmLimit::kind));
    return List.copyOf(sorted);
  }

  // The kinds stand in falling order of their set points, so neighbours tell everything.
  private static void checkOrder(List<AlarmLimit> sorted) {
    for (int i = 1; i < sorted.size(); i++) {
      AlarmLimit upper = sorted.get(i - 1);
      AlarmLimit lower = sorted.get(i);
      if (upper.kind() == lower.kind()) {
        throw Check.error(
            "AlarmSettings.limits",
            lower.kind().name(),
            "",
            "must not occur twice",
            "keep one limit of this kind");
      }
      if (!(lower.setPointMetres() < upper.setPointMetres())) {
        throw error(
            lower,
            "setPoint",
            lower.setPointMetres(),
            "must be less than that of " + upper.kind() + " (" + upper.setPointMetres() + " m)");
      }
    }
  }

  private static void checkDeadbands(List<AlarmLimit> sorted) {
    for (AlarmLimit high : sorted) {
      for (AlarmLimit low : sorted) {
        if (high.kind().isHigh() && !low.kind().isHigh()) {
          checkDeadbands(high, low);
        }
      }
    }
  }

  private static void checkDeadbands(AlarmLimit high, AlarmLimit low) {
    if (!(high.clearPointMetres() > low.setPointMetres())) {
      throw deadbandError(high, low);
    }
    if (!(low.clearPointMetres() < high.setPointMetres())) {
      throw deadbandError(low, high);
    }
  }

  private static IllegalArgumentException deadbandError(AlarmLimit limit, AlarmLimit opposite) {
    return error(
        limit,
        "deadband",
        limit.deadbandMetres(),
        "must not reach the set point of "
            + opposite.kind()
            + " ("
            + opposite.setPointMetres()
            + " m), or both would stand at once");
  }

  private static IllegalArgumentException error(
      AlarmLimit limit, String field, double value, String rule) {
    String fix = "check the set points and deadbands of both limits";
    return Check.error("AlarmLimit." + field + " of " + limit.kind(), value, "m", rule, fix);
  }
}
