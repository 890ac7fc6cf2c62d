package io.strapline.level.plan;

import io.strapline.level.loop.LoopRange;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The sheet for checking a current loop, from the surface to the control system: what current,
 * count and level belong to each point, and where the two ends of the loop disagree. Immutable.
 *
 * <p>Points: 0, 25, 50, 75 and 100 % of the transmitter's span (4, 8, 12, 16 and 20 mA), every
 * level asked for, and the two failure limits, 3.6 and 21 mA by default (open PLC engineering
 * course, module 14 "Analog Signals and Process I/O", sections 1.1 and 1.4: ranges must agree). The
 * sheet is arithmetic; the check itself is done with instruments, by people, under the site's
 * permit.
 */
public final class LoopCheck {

  private static final int[] PERCENTS = {0, 25, 50, 75, 100};

  /** A micrometre: what is less is rounding. */
  private static final double ROUNDING_METRES = 1e-6;

  private final LoopSides sides;
  private final List<LoopCheckRow> rows;
  private final List<LoopCheckProblem> problems;

  private LoopCheck(LoopSides sides, List<CheckLevel> levels) {
    this.sides = sides;
    List<LoopCheckRow> all = new ArrayList<>();
    for (int percent : PERCENTS) {
      all.add(atCurrent(percent + " %", 4 + 16 * percent / 100.0));
    }
    for (CheckLevel level : levels) {
      all.add(row(level.name(), sides.currentMilliamps(level.levelMetres()), level.levelMetres()));
    }
    all.add(atCurrent("low failure limit", sides.limits().failureLow()));
    all.add(atCurrent("high failure limit", sides.limits().failureHigh()));
    rows = List.copyOf(all);
    problems = findProblems(rows.subList(PERCENTS.length, PERCENTS.length + levels.size()));
  }

  /**
   * Returns the sheet.
   *
   * @param levels set points and other levels to check, in the order wanted; may be empty
   */
  public static LoopCheck of(LoopSides sides, List<CheckLevel> levels) {
    return new LoopCheck(sides, List.copyOf(levels));
  }

  /** Returns all points: percents, levels, failure limits. */
  public List<LoopCheckRow> rows() {
    return rows;
  }

  /** Returns what is wrong, empty when nothing was found. */
  public List<LoopCheckProblem> problems() {
    return problems;
  }

  private LoopCheckRow atCurrent(String name, double currentMilliamps) {
    return row(name, currentMilliamps, sides.meantMetres(currentMilliamps));
  }

  private LoopCheckRow row(String name, double current, double level) {
    LoopCheckRow.Signal signal =
        new LoopCheckRow.Signal(
            current,
            LoopRange.percentOfCurrent(current),
            sides.card().map(card -> CardCount.at(current, card)).orElse(OptionalDouble.empty()),
            sides.limits().classify(current));
    double distance = sides.mounting().distanceMetres(level);
    return new LoopCheckRow(
        name,
        signal,
        new LoopCheckRow.Surface(distance, level),
        signal.band().isFailure() ? LoopCheckRow.Shown.FAULT : shown(current, level));
  }

  private LoopCheckRow.Shown shown(double current, double level) {
    double shown = sides.shownMetres(current);
    double error = shown - level;
    return new LoopCheckRow.Shown(
        OptionalDouble.of(shown),
        OptionalDouble.of(error),
        OptionalDouble.of(100 * error / sides.receiverSpanMetres()),
        OptionalDouble.of(sides.surfaceWhenShown(level)));
  }

  private List<LoopCheckProblem> findProblems(List<LoopCheckRow> levels) {
    List<LoopCheckProblem> found = new ArrayList<>();
    worst().ifPresent(row -> found.add(rangesDiffer(row)));
    for (LoopCheckRow row : levels) {
      double alarm = sides.alarmMilliamps(row.surface().levelMetres());
      if (!row.signal().isMeasurement()) {
        found.add(notSignalled(row));
      } else if (!LoopCheckRow.Signal.isMeasurement(sides.limits().classify(alarm))) {
        found.add(notShown(row, alarm));
      }
    }
    for (LoopCheckRow row : rows) {
      if (sides.card().isPresent() && row.signal().rawCount().isEmpty()) {
        found.add(notCounted(row));
      }
    }
    return List.copyOf(found);
  }

  private static double errorSize(LoopCheckRow row) {
    return Math.abs(row.shown().errorMetres().orElse(0));
  }

  private Optional<LoopCheckRow> worst() {
    return rows.stream()
        .max(Comparator.comparingDouble(LoopCheck::errorSize))
        .filter(row -> errorSize(row) > ROUNDING_METRES);
  }

  private LoopCheckProblem rangesDiffer(LoopCheckRow row) {
    String text =
        String.format(
            Locale.ROOT,
            "transmitter %s, receiver %s: at %s the receiver is off by %+.4f m; set both to"
                + " the same range",
            words(sides.transmitter()),
            words(sides.receiver()),
            row.name(),
            row.shown().errorMetres().orElse(0));
    return new LoopCheckProblem(LoopCheckProblem.Kind.RANGES_DIFFER, row.name(), text);
  }

  private static String words(LoopRange range) {
    return String.format(
        Locale.ROOT,
        "%s %s m at 4 mA, %s m at 20 mA",
        range.measure().name().toLowerCase(Locale.ROOT),
        range.lowerMetres(),
        range.upperMetres());
  }

  private LoopCheckProblem notSignalled(LoopCheckRow row) {
    String text =
        String.format(
            Locale.ROOT,
            "%s at %.4f m would need %.3f mA, the transmitter measures from %s to %s mA; widen its"
                + " range or move the level",
            row.name(),
            row.surface().levelMetres(),
            row.signal().currentMilliamps(),
            sides.limits().underRange(),
            sides.limits().overRange());
    return new LoopCheckProblem(LoopCheckProblem.Kind.NOT_SIGNALLED, row.name(), text);
  }

  private LoopCheckProblem notShown(LoopCheckRow row, double alarmMilliamps) {
    String text =
        String.format(
            Locale.ROOT,
            "%s at %.4f m: the receiver would show it at %.3f mA only, the transmitter measures from"
                + " %s to %s mA, so an alarm there never comes; set both to the same range",
            row.name(),
            row.surface().levelMetres(),
            alarmMilliamps,
            sides.limits().underRange(),
            sides.limits().overRange());
    return new LoopCheckProblem(LoopCheckProblem.Kind.NOT_SHOWN, row.name(), text);
  }

  private static LoopCheckProblem notCounted(LoopCheckRow row) {
    String text =
        String.format(
            Locale.ROOT,
            "%s: the register cannot hold the count at %.3f mA, so the receiver cannot tell it;"
                + " choose another encoding or scaling of the card",
            row.name(),
            row.signal().currentMilliamps());
    return new LoopCheckProblem(LoopCheckProblem.Kind.NOT_COUNTED, row.name(), text);
  }
}
