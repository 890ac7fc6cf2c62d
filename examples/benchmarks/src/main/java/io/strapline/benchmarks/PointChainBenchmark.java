package io.strapline.benchmarks;

import io.strapline.level.alarm.AlarmHandling;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.alarm.AlarmSettings;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.Sample;
import io.strapline.level.signal.GateSettings;
import io.strapline.level.signal.NoReturnPolicy;
import io.strapline.level.signal.SignalSettings;
import io.strapline.level.table.CapacityRow;
import io.strapline.level.table.CapacityTable;
import io.strapline.level.table.Interpolation;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/**
 * A hundred times a loop current in and a snapshot out: the whole chain of a measuring point with a
 * capacity table of 1,000 rows, median, lag, density and four level alarms, against the bare
 * arithmetic from current to mass. Divide by a hundred; compare the medians ({@code p0.50}).
 */
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 8, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class PointChainBenchmark {

  private static final int ROWS = 1_000;
  private static final int SAMPLES = 100;
  private static final int CURRENTS = 1 << 12;
  private static final double DENSITY = 1_350;
  private static final Instant START = Instant.parse("2026-01-05T08:00:00Z");

  private final Mounting mounting = Mounting.plumb(13);
  private final LoopRange range = LoopRange.ofDistance(13, 1);
  private final CapacityTable table = table();
  private final MeasuringPoint point = MeasuringPoint.of(settings(), START);
  private final double[] currents = currents();
  private long next;

  private static CapacityTable table() {
    List<CapacityRow> rows = new ArrayList<>();
    for (int i = 0; i < ROWS; i++) {
      double height = 12.0 * i / (ROWS - 1);
      rows.add(new CapacityRow(i + 1, height, height * height * (18 - height)));
    }
    return CapacityTable.of("benchmark", rows, Interpolation.LINEAR);
  }

  private PointSettings settings() {
    GateSettings gates = new GateSettings(0.3, 14, OptionalDouble.empty(), List.of());
    return PointSettings.builder("LT-101")
        .mounting(mounting)
        .vessel(table)
        .range(range)
        .signal(new SignalSettings(gates, NoReturnPolicy.hold(10), 3, 1, 5))
        .density(DENSITY)
        .alarms(
            new AlarmSettings(
                List.of(
                    limit(AlarmKind.HIGH_HIGH, 11),
                    limit(AlarmKind.HIGH, 10),
                    limit(AlarmKind.LOW, 2),
                    limit(AlarmKind.LOW_LOW, 1)),
                0,
                AlarmHandling.DEFAULT))
        .build();
  }

  private static AlarmLimit limit(AlarmKind kind, double setPointMetres) {
    return new AlarmLimit(kind, setPointMetres, 0.1, 3, 3, AlarmHandling.DEFAULT);
  }

  /** A slow fill and draw between 5 and 19 mA with a little noise. */
  private static double[] currents() {
    Random random = new Random(11);
    double[] currents = new double[CURRENTS];
    for (int i = 0; i < CURRENTS; i++) {
      double wave = Math.sin(2 * Math.PI * i / CURRENTS);
      currents[i] = 12 + 7 * wave + 0.02 * random.nextGaussian();
    }
    return currents;
  }

  private double current() {
    next++;
    return currents[(int) (next & (CURRENTS - 1))];
  }

  /** Sample made, judged, conditioned, computed, alarms judged, snapshot returned. */
  @Benchmark
  public void sampleToSnapshot(Blackhole blackhole) {
    for (int i = 0; i < SAMPLES; i++) {
      double current = current();
      blackhole.consume(point.accept(Sample.current(START.plusSeconds(next), current)));
    }
  }

  /** Baseline: the straight sums from current to mass, without quality, time or alarms. */
  @Benchmark
  public void bareArithmetic(Blackhole blackhole) {
    for (int i = 0; i < SAMPLES; i++) {
      double level = mounting.levelMetres(range.valueMetres(current()));
      blackhole.consume(DENSITY * table.volumeCubicMetres(level));
    }
  }
}
