package io.strapline.benchmarks;

import io.strapline.level.table.CapacityRow;
import io.strapline.level.table.CapacityTable;
import io.strapline.level.table.Interpolation;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A thousand look-ups of a volume at random levels in a capacity table of 1,000 rows, against the
 * linear spline of Apache Commons Math 3 and two plain searches over the same rows. Microseconds a
 * thousand are nanoseconds each. The median of the samples ({@code p0.50}) is the figure to
 * compare: a sample is much shorter than the time for which a busy machine takes the processor
 * away.
 */
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class CapacityLookUpBenchmark {

  private static final int ROWS = 1_000;
  private static final int LOOK_UPS = 1_000;

  /** A power of two, and too many for the processor to learn which way each search turns. */
  private static final int LEVELS = 1 << 16;

  private static final double TOP_METRES = 12;

  /** Whether the rows stand at equal steps, as in most tables, or at uneven ones. */
  @Param({"even", "uneven"})
  public String steps = "even";

  private CapacityTable table = table(rows("even"), Interpolation.LINEAR);
  private CapacityTable smooth = table(rows("even"), Interpolation.FRITSCH_CARLSON);
  private PolynomialSplineFunction spline = spline(rows("even"));
  private double[] heights = {};
  private double[] volumes = {};
  private double[] levels = {};
  private int next;

  /** Builds the same table four times over, and the levels. */
  @Setup
  public void prepare() {
    List<CapacityRow> rows = rows(steps);
    table = table(rows, Interpolation.LINEAR);
    smooth = table(rows, Interpolation.FRITSCH_CARLSON);
    spline = spline(rows);
    heights = rows.stream().mapToDouble(CapacityRow::heightMetres).toArray();
    volumes = rows.stream().mapToDouble(CapacityRow::volumeCubicMetres).toArray();
    levels = new Random(7).doubles(LEVELS, 0, heights[ROWS - 1]).toArray();
  }

  private static List<CapacityRow> rows(String steps) {
    Random random = new Random(3);
    List<CapacityRow> rows = new ArrayList<>();
    for (int i = 0; i < ROWS; i++) {
      boolean moved = steps.equals("uneven") && i > 0;
      double at = i + (moved ? random.nextDouble() * 0.9 - 0.45 : 0);
      double height = TOP_METRES * at / (ROWS - 1);
      // A cone below, then widening: any rising curve does.
      rows.add(new CapacityRow(i + 1, height, height * height * (18 - height)));
    }
    return rows;
  }

  private static CapacityTable table(List<CapacityRow> rows, Interpolation interpolation) {
    return CapacityTable.of("benchmark", rows, interpolation);
  }

  private static PolynomialSplineFunction spline(List<CapacityRow> rows) {
    return new LinearInterpolator()
        .interpolate(
            rows.stream().mapToDouble(CapacityRow::heightMetres).toArray(),
            rows.stream().mapToDouble(CapacityRow::volumeCubicMetres).toArray());
  }

  /** Returns where in the levels the next thousand begin. */
  private int from() {
    next = (next + LOOK_UPS) & (LEVELS - 1);
    return Math.min(next, LEVELS - LOOK_UPS);
  }

  /** The cost of fetching the levels and adding up, which is part of all others. */
  @Benchmark
  public double levelsOnly() {
    double sum = 0;
    for (int i = from(), end = i + LOOK_UPS; i < end; i++) {
      sum += levels[i];
    }
    return sum;
  }

  /** The library's table, straight lines. */
  @Benchmark
  public double capacityTableLinear() {
    double sum = 0;
    for (int i = from(), end = i + LOOK_UPS; i < end; i++) {
      sum += table.volumeCubicMetres(levels[i]);
    }
    return sum;
  }

  /** The library's table, monotone cubic pieces. */
  @Benchmark
  public double capacityTableFritschCarlson() {
    double sum = 0;
    for (int i = from(), end = i + LOOK_UPS; i < end; i++) {
      sum += smooth.volumeCubicMetres(levels[i]);
    }
    return sum;
  }

  /** Baseline: the linear spline of Apache Commons Math. */
  @Benchmark
  public double commonsMathLinearSpline() {
    double sum = 0;
    for (int i = from(), end = i + LOOK_UPS; i < end; i++) {
      sum += spline.value(levels[i]);
    }
    return sum;
  }

  /** Baseline: halving the rows until two are left. */
  @Benchmark
  public double plainBinarySearch() {
    double sum = 0;
    for (int i = from(), end = i + LOOK_UPS; i < end; i++) {
      sum += between(halving(levels[i]), levels[i]);
    }
    return sum;
  }

  /** Baseline: going through the rows from the lowest on. */
  @Benchmark
  public double plainScan() {
    double sum = 0;
    for (int i = from(), end = i + LOOK_UPS; i < end; i++) {
      sum += between(scanning(levels[i]), levels[i]);
    }
    return sum;
  }

  private int halving(double level) {
    int low = 0;
    int high = heights.length - 1;
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      if (heights[middle] <= level) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private int scanning(double level) {
    int low = 0;
    while (low < heights.length - 2 && heights[low + 1] <= level) {
      low++;
    }
    return low;
  }

  private double between(int low, double level) {
    double part = (level - heights[low]) / (heights[low + 1] - heights[low]);
    return volumes[low] + part * (volumes[low + 1] - volumes[low]);
  }
}
