package io.strapline.benchmarks;

import io.strapline.level.vessel.CompiledCurve;
import io.strapline.level.vessel.Head;
import io.strapline.level.vessel.LyingTank;
import io.strapline.level.vessel.Shell;
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
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A thousand volumes of a lying tank with spherical dishes at random levels: the compiled curve,
 * good to 1e-9 of the capacity, against the exact formulas, the closed form that textbooks give,
 * the linear spline of Apache Commons Math 3 and a plain look-up in an even grid of straight lines.
 * The last two have 1,000 rows and are off by up to 8e-6 of the capacity. Microseconds a thousand
 * are nanoseconds each; compare the medians ({@code p0.50}).
 */
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class CompiledCurveBenchmark {

  private static final int ROWS = 1_000;
  private static final int LOOK_UPS = 1_000;

  /** A power of two, and too many for the processor to learn which way each branch turns. */
  private static final int LEVELS = 1 << 16;

  private static final double RADIUS = 1.25;
  private static final double LENGTH = 6;
  private static final double DEPTH = 0.4;

  private final LyingTank tank =
      LyingTank.of(
          new Shell(2 * RADIUS, LENGTH),
          new Head.SphericalDish(DEPTH),
          new Head.SphericalDish(DEPTH));

  private final CompiledCurve compiled = CompiledCurve.of(tank);
  private final double[] grid = grid();
  private final PolynomialSplineFunction spline = spline();
  private final double[] levels = new Random(7).doubles(LEVELS, 0, 2 * RADIUS).toArray();
  private final double[] some = new double[LOOK_UPS];
  private final double[] out = new double[LOOK_UPS];
  private int next;

  private double[] grid() {
    double[] volumes = new double[ROWS + 1];
    for (int i = 0; i <= ROWS; i++) {
      volumes[i] = tank.volumeCubicMetres(2 * RADIUS * i / ROWS);
    }
    return volumes;
  }

  private PolynomialSplineFunction spline() {
    double[] heights = new double[ROWS + 1];
    for (int i = 0; i <= ROWS; i++) {
      heights[i] = 2 * RADIUS * i / ROWS;
    }
    return new LinearInterpolator().interpolate(heights, grid);
  }

  /** Refuses to measure a baseline that gives something else. */
  @Setup
  public void allAgree() {
    for (double level : new double[] {0.1, 0.7, 1.25, 1.9, 2.4}) {
      double volume = tank.volumeCubicMetres(level);
      near(volume, closedForm(level), 1e-9);
      near(volume, plain(level), 1e-4);
      near(volume, compiled.volumeCubicMetres(level), 1e-7);
    }
  }

  private static void near(double expected, double got, double slack) {
    if (!(Math.abs(expected - got) <= slack)) {
      throw new IllegalStateException(got + " m3 where " + expected + " m3 is right");
    }
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

  /** The compiled curve, one at a time. */
  @Benchmark
  public double compiledCurve() {
    double sum = 0;
    for (int i = from(), end = i + LOOK_UPS; i < end; i++) {
      sum += compiled.volumeCubicMetres(levels[i]);
    }
    return sum;
  }

  /** The compiled curve, a thousand at once; the levels are copied first. */
  @Benchmark
  public double[] compiledCurveAtOnce() {
    System.arraycopy(levels, from(), some, 0, LOOK_UPS);
    compiled.volumes(some, out);
    return out;
  }

  /** The way back, volume to height. */
  @Benchmark
  public double compiledCurveInverse() {
    double sum = 0;
    double scale = compiled.capacityCubicMetres() / (2 * RADIUS);
    for (int i = from(), end = i + LOOK_UPS; i < end; i++) {
      sum += compiled.heightMetres(levels[i] * scale);
    }
    return sum;
  }

  /** Limit: a plain look-up in an even grid, with its ends guarded. */
  @Benchmark
  public double plainEvenGrid() {
    double sum = 0;
    for (int i = from(), end = i + LOOK_UPS; i < end; i++) {
      sum += plain(levels[i]);
    }
    return sum;
  }

  private double plain(double level) {
    if (!(level > 0 && level < 2 * RADIUS)) {
      return level <= 0 ? 0 : grid[ROWS];
    }
    double at = level * (ROWS / (2 * RADIUS));
    int row = (int) at;
    return grid[row] + (at - row) * (grid[row + 1] - grid[row]);
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

  /** Baseline: the closed form, segment and dishes; it loses its digits near empty. */
  @Benchmark
  public double closedFormOfTheDishedTank() {
    double sum = 0;
    for (int i = from(), end = i + LOOK_UPS; i < end; i++) {
      sum += closedForm(levels[i]);
    }
    return sum;
  }

  /** For comparison: the library's exact formulas, good near empty too. */
  @Benchmark
  public double exactTank() {
    double sum = 0;
    for (int i = from(), end = i + LOOK_UPS; i < end; i++) {
      sum += tank.volumeCubicMetres(levels[i]);
    }
    return sum;
  }

  private static double closedForm(double level) {
    double y = RADIUS - level;
    double s = Math.sqrt(level * (2 * RADIUS - level));
    double segment = RADIUS * RADIUS * Math.acos(y / RADIUS) - y * s;
    return segment * LENGTH + 2 * (dish(RADIUS, 0) - dish(y, s));
  }

  /** Integral over y of (S^2 - y^2) atan(s / m) - m s, the level sections of the dish. */
  private static double dish(double y, double s) {
    double sphere = (DEPTH * DEPTH + RADIUS * RADIUS) / (2 * DEPTH);
    double m = sphere - DEPTH;
    double square = sphere * sphere;
    double lean = Math.atan2(m * y, sphere * s);
    double angle = Math.asin(y / RADIUS);
    return (square * y - y * y * y / 3) * Math.atan2(s, m)
        + 2 / 3.0 * square * sphere * lean
        - m / 3 * ((2 * square - RADIUS * RADIUS / 2) * angle + y * s / 2)
        - m / 2 * (y * s + RADIUS * RADIUS * angle);
  }
}
