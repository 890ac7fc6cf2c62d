package io.strapline.level.table;

import io.strapline.level.internal.Check;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * A calibration by liquid: a vessel is filled in metered increments, the level is read after each,
 * and the readings make its capacity table. Immutable.
 *
 * <p>This is the trade's incremental method in general terms (ISO 4269 treats it for tanks; that
 * standard was not read). Volumes are the corrected increments, added up from the volume at the
 * first reading.
 *
 * <p>Judging (this project's choice): each reading but the first and last is held against the
 * polynomial through two neighbours on either side (three neighbours next to the ends), which
 * follows any vessel whose area changes smoothly and needs no model of it. A level misread puts one
 * reading off; an increment mismetered puts all readings from there on off together. Both are
 * tested everywhere with their standard uncertainties; the one furthest beyond the factor is named,
 * set aside for judging, and the rest judged anew. All readings stay in the table: dropping one is
 * {@link #without}, and an act of its own. The first and the last increment and the first and last
 * level have too few neighbours to be judged.
 */
public final class LiquidCalibration {

  private static final int LEAST_READINGS = 4;

  private final String name;
  private final List<FillReading> readings;
  private final CalibrationFacts facts;
  private final List<CalibrationRow> rows;
  private final List<CalibrationOutlier> outliers;

  private LiquidCalibration(String name, List<FillReading> readings, CalibrationFacts facts) {
    this.name = name;
    this.readings = readings;
    this.facts = facts;
    double[] volumes = volumes();
    OutlierSearch search = new OutlierSearch(readings, volumes, facts);
    outliers = List.copyOf(search.find());
    List<CalibrationRow> found = new ArrayList<>();
    for (int i = 0; i < volumes.length; i++) {
      found.add(row(i, volumes, search));
    }
    rows = List.copyOf(found);
  }

  /**
   * Returns the calibration of these readings.
   *
   * @param name for messages, such as the vessel's
   * @param readings at least four, in the order of filling
   * @throws CapacityTableException listing every reading that is not finite, negative, or does not
   *     rise above the one before
   */
  public static LiquidCalibration of(
      String name, List<FillReading> readings, CalibrationFacts facts) {
    Check.text("LiquidCalibration.name", name, "give the vessel's name");
    Check.present("LiquidCalibration.readings", readings, "pass the readings in order");
    Check.present("LiquidCalibration.facts", facts, "give meter and uncertainties");
    List<FillReading> copy = List.copyOf(readings);
    List<TableProblem> problems = problems(copy);
    if (!problems.isEmpty()) {
      throw new CapacityTableException(name, problems);
    }
    return new LiquidCalibration(name, copy, facts);
  }

  private static List<TableProblem> problems(List<FillReading> readings) {
    List<TableProblem> problems = new ArrayList<>();
    double highest = Double.NEGATIVE_INFINITY;
    for (FillReading reading : readings) {
      String height = "height " + reading.heightMetres() + " m";
      String metered = "metered " + reading.meteredCubicMetres() + " m3";
      if (!Double.isFinite(reading.heightMetres())) {
        problems.add(problem(reading, height, "is not a finite number", "enter the level"));
      } else if (!(reading.heightMetres() > highest)) {
        String rule = "does not rise above the reading before (" + highest + " m)";
        problems.add(problem(reading, height, rule, "check the level, or join the increments"));
      } else {
        highest = reading.heightMetres();
      }
      if (!(reading.meteredCubicMetres() >= 0 && Double.isFinite(reading.meteredCubicMetres()))) {
        problems.add(problem(reading, metered, "is not zero or more", "enter what went in"));
      }
    }
    if (readings.size() < LEAST_READINGS) {
      int line = readings.isEmpty() ? 1 : readings.get(readings.size() - 1).line();
      String count = readings.size() + " readings";
      problems.add(new TableProblem(line, count, "four are needed", "add readings"));
    }
    return problems;
  }

  private static TableProblem problem(FillReading reading, String what, String rule, String fix) {
    return new TableProblem(reading.line(), what, rule, fix);
  }

  private double[] volumes() {
    double[] volumes = new double[readings.size()];
    volumes[0] = readings.get(0).meteredCubicMetres();
    for (int i = 1; i < volumes.length; i++) {
      double metered = readings.get(i).meteredCubicMetres();
      volumes[i] = volumes[i - 1] + facts.meter().trueCubicMetres(metered);
    }
    return volumes;
  }

  private CalibrationRow row(int i, double[] volumes, OutlierSearch search) {
    FillReading reading = readings.get(i);
    OptionalDouble residual =
        search
            .point(i)
            .map(stencil -> OptionalDouble.of(stencil.value()))
            .orElse(OptionalDouble.empty());
    double standard = standard(i, volumes);
    return new CalibrationRow(
        reading.line(), reading.heightMetres(), volumes[i], standard, residual);
  }

  /** Heel, factor (all together), increments (by squares) and the level by the local area. */
  private double standard(int i, double[] volumes) {
    int below = Math.max(i - 1, 0);
    int above = Math.min(i + 1, volumes.length - 1);
    double height = readings.get(above).heightMetres() - readings.get(below).heightMetres();
    double level = (volumes[above] - volumes[below]) / height * facts.levelStandardMetres();
    double factor = (volumes[i] - volumes[0]) * facts.meter().factorStandard();
    double increment = facts.meter().incrementStandardCubicMetres();
    double heel = facts.heelStandardCubicMetres();
    return Math.sqrt(heel * heel + factor * factor + i * increment * increment + level * level);
  }

  /** Returns the rows in order, all of them, with uncertainty and residual. */
  public List<CalibrationRow> rows() {
    return rows;
  }

  /** Returns the readings that do not fit, by line. They are in the table all the same. */
  public List<CalibrationOutlier> outliers() {
    return outliers;
  }

  /**
   * Returns the capacity table of all readings.
   *
   * @throws CapacityTableException if they make no table, naming the lines
   */
  public CapacityTable table(Interpolation interpolation) {
    List<CapacityRow> those =
        rows.stream()
            .map(row -> new CapacityRow(row.line(), row.heightMetres(), row.volumeCubicMetres()))
            .toList();
    return CapacityTable.of(name, those, interpolation);
  }

  /**
   * Returns the calibration without some levels. What was metered stays: the increment of a dropped
   * reading is added to that of the next.
   *
   * @param lines of readings between the first and the last
   * @throws IllegalArgumentException if a line is none of them
   */
  public LiquidCalibration without(Set<Integer> lines) {
    for (int line : lines) {
      boolean between =
          readings.subList(1, readings.size() - 1).stream().anyMatch(r -> r.line() == line);
      if (!between) {
        throw Check.error(
            "LiquidCalibration.without",
            "line " + line,
            "",
            "is no reading between the first and the last",
            "name readings between them");
      }
    }
    List<FillReading> kept = new ArrayList<>();
    double carried = 0;
    for (FillReading reading : readings) {
      carried += reading.meteredCubicMetres();
      if (!lines.contains(reading.line())) {
        kept.add(new FillReading(reading.line(), reading.heightMetres(), carried));
        carried = 0;
      }
    }
    return of(name, kept, facts);
  }
}
