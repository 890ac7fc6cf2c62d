package io.strapline.level.table;

import io.strapline.level.table.CalibrationOutlier.Kind;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Finds the readings of a calibration that do not fit their neighbours; see {@link
 * LiquidCalibration}.
 */
final class OutlierSearch {

  private static final int SIDE = 2;

  private final List<FillReading> readings;
  private final CalibrationFacts facts;
  private final double[] heights;

  /** Volumes as judged: those above a doubtful increment are shifted by its size. */
  private final double[] volumes;

  private final boolean[] doubtful;

  OutlierSearch(List<FillReading> readings, double[] volumes, CalibrationFacts facts) {
    this.readings = readings;
    this.facts = facts;
    this.volumes = volumes.clone();
    heights = readings.stream().mapToDouble(FillReading::heightMetres).toArray();
    doubtful = new boolean[volumes.length];
  }

  /** Sets the worst aside, judges the others anew, and so on while any is beyond the factor. */
  List<CalibrationOutlier> find() {
    List<CalibrationOutlier> outliers = new ArrayList<>();
    boolean[] shifted = new boolean[volumes.length];
    for (int round = 0; round < volumes.length; round++) {
      Optional<Finding> worst = worst(shifted);
      if (worst.isEmpty()) {
        break;
      }
      Finding finding = worst.get();
      outliers.add(finding.outlier(readings));
      if (finding.kind() == Kind.LEVEL_READING) {
        doubtful[finding.index()] = true;
      } else {
        shifted[finding.index()] = true;
        for (int i = finding.index(); i < volumes.length; i++) {
          volumes[i] -= finding.stencil().value();
        }
      }
    }
    outliers.sort(Comparator.comparingInt(CalibrationOutlier::line));
    return outliers;
  }

  private record Finding(int index, Kind kind, Stencil stencil) {

    CalibrationOutlier outlier(List<FillReading> readings) {
      return new CalibrationOutlier(
          readings.get(index).line(), kind, stencil.value(), stencil.timesStandard());
    }

    double size() {
      return Math.abs(stencil.timesStandard());
    }
  }

  private Optional<Finding> worst(boolean[] shifted) {
    List<Finding> findings = new ArrayList<>();
    for (int i = 1; i < volumes.length; i++) {
      if (!doubtful[i]) {
        int at = i;
        point(i).ifPresent(found -> findings.add(new Finding(at, Kind.LEVEL_READING, found)));
        if (!shifted[i]) {
          step(i).ifPresent(found -> findings.add(new Finding(at, Kind.METERED_INCREMENT, found)));
        }
      }
    }
    return findings.stream()
        .filter(finding -> finding.size() > facts.outlierFactor())
        .max(Comparator.comparingDouble(Finding::size));
  }

  /** Returns the volume less that of the polynomial through two neighbours on either side. */
  Optional<Stencil> point(int index) {
    int[] below = neighbours(index, -1);
    int[] above = neighbours(index, 1);
    if (below.length == 0 || above.length == 0 || below.length + above.length < SIDE + 1) {
      return Optional.empty();
    }
    int[] all = joined(below, new int[] {index}, above);
    double[] weights = new double[all.length];
    for (int j = 0; j < all.length; j++) {
      weights[j] = all[j] == index ? 1 : -lagrange(all, j, index);
    }
    return Optional.of(stencil(all, weights));
  }

  /** Lagrange's weight of the reading j for the height of the reading at index. */
  private double lagrange(int[] all, int j, int index) {
    double weight = 1;
    for (int other : all) {
      if (other != all[j] && other != index) {
        weight *= (heights[index] - heights[other]) / (heights[all[j]] - heights[other]);
      }
    }
    return weight;
  }

  /**
   * Returns the step below a reading: that which makes the third divided difference of two readings
   * below and two from there on vanish.
   */
  private Optional<Stencil> step(int index) {
    int[] below = neighbours(index, -1);
    int[] above = neighbours(index, 1);
    if (below.length < SIDE || above.length < 1) {
      return Optional.empty();
    }
    int[] all = joined(below, new int[] {index}, Arrays.copyOf(above, 1));
    double[] weights = new double[all.length];
    double upper = 0;
    for (int j = 0; j < all.length; j++) {
      weights[j] = 1;
      for (int other : all) {
        weights[j] /= other == all[j] ? 1 : heights[all[j]] - heights[other];
      }
      upper += j >= SIDE ? weights[j] : 0;
    }
    for (int j = 0; j < all.length; j++) {
      weights[j] /= upper;
    }
    return Optional.of(stencil(all, weights));
  }

  /** Up to two readings on a side that are not doubtful, from below. */
  private int[] neighbours(int index, int direction) {
    int[] found = new int[SIDE];
    int count = 0;
    for (int i = index + direction; count < SIDE && i >= 0 && i < volumes.length; i += direction) {
      if (!doubtful[i]) {
        found[count++] = i;
      }
    }
    int[] those = Arrays.copyOf(found, count);
    Arrays.sort(those);
    return those;
  }

  private static int[] joined(int[] below, int[] middle, int[] above) {
    int[] all = Arrays.copyOf(below, below.length + middle.length + above.length);
    System.arraycopy(middle, 0, all, below.length, middle.length);
    System.arraycopy(above, 0, all, below.length + middle.length, above.length);
    return all;
  }

  private Stencil stencil(int[] all, double[] weights) {
    double[] those = new double[all.length];
    int[] increments = new int[all.length];
    for (int j = 0; j < all.length; j++) {
      those[j] = volumes[all[j]];
      increments[j] = j == 0 ? 0 : all[j] - all[j - 1];
    }
    int last = all[all.length - 1];
    double area = (volumes[last] - volumes[all[0]]) / (heights[last] - heights[all[0]]);
    Stencil.Spread spread =
        new Stencil.Spread(
            area, facts.levelStandardMetres(), facts.meter().incrementStandardCubicMetres());
    return Stencil.of(those, weights, increments, spread);
  }
}
