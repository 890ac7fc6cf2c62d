package io.strapline.level.loop;

import io.strapline.level.internal.Check;
import io.strapline.level.loop.CalibrationReading.Direction;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;

/**
 * The readings of one calibration, before or after adjustment: usually 0, 25, 50, 75 and 100 % of
 * span, rising then falling, for several cycles (common practice, no source). Immutable.
 *
 * @param span of the output
 * @param readings in the order taken; two points or more, at most {@value #MAX_POINTS}; each point
 *     once in a cycle and direction
 */
public record CalibrationRun(CalibrationSpan span, List<CalibrationReading> readings) {

  /** Most points of one run. */
  public static final int MAX_POINTS = 101;

  /** Checks the readings against each other. */
  public CalibrationRun {
    Check.present("CalibrationRun.span", span, "give the span of the output");
    readings = List.copyOf(Check.present("CalibrationRun.readings", readings, "give the readings"));
    Set<List<Object>> seen = new HashSet<>();
    Set<Double> points = new HashSet<>();
    for (int i = 0; i < readings.size(); i++) {
      CalibrationReading one = readings.get(i);
      points.add(one.ideal());
      if (!seen.add(List.of(one.cycle(), one.direction(), one.ideal()))) {
        throw Check.error(
            "CalibrationRun.readings[" + i + "].ideal",
            one.ideal(),
            span.unit(),
            "must occur once in cycle " + one.cycle() + " " + one.direction(),
            "count the cycles up");
      }
    }
    Check.between(
        "CalibrationRun.points",
        points.size(),
        "",
        2,
        MAX_POINTS,
        "give readings at several points, such as 0, 25, 50, 75 and 100 %");
  }

  /** Returns the error of a reading in percent of span, as the decimal number it is. */
  public BigDecimal errorPercent(CalibrationReading reading) {
    return span.errorPercent(reading.reading(), reading.ideal());
  }

  /** Works out all figures. */
  public CalibrationFigures figures() {
    List<Point> points = points();
    double[] x = points.stream().mapToDouble(point -> point.percent).toArray();
    double[] y = points.stream().mapToDouble(Point::average).toArray();
    double measured = 0;
    for (double average : y) {
      measured = Math.abs(average) > Math.abs(measured) ? average : measured;
    }
    return new CalibrationFigures(
        inaccuracy(),
        measured,
        largest(points.stream().map(Point::hysteresis).toList()),
        largest(points.stream().map(Point::spread).toList()),
        Conformity.of(x, y));
  }

  private CalibrationFigures.Inaccuracy inaccuracy() {
    double most = 0;
    double least = 0;
    for (CalibrationReading reading : readings) {
      double error = errorPercent(reading).doubleValue();
      most = Math.max(most, error);
      least = Math.min(least, error);
    }
    return new CalibrationFigures.Inaccuracy(most, least);
  }

  private static OptionalDouble largest(List<OptionalDouble> values) {
    return values.stream()
        .filter(OptionalDouble::isPresent)
        .mapToDouble(OptionalDouble::getAsDouble)
        .max();
  }

  private List<Point> points() {
    TreeMap<Double, Point> byPercent = new TreeMap<>();
    for (CalibrationReading reading : readings) {
      double percent = span.percent(reading.ideal());
      Point point = byPercent.computeIfAbsent(percent, Point::new);
      List<Double> side = reading.direction() == Direction.UP ? point.up : point.down;
      side.add(errorPercent(reading).doubleValue());
    }
    return List.copyOf(byPercent.values());
  }

  /** Errors at one point. */
  private static final class Point {

    private final double percent;
    private final List<Double> up = new ArrayList<>();
    private final List<Double> down = new ArrayList<>();

    private Point(double percent) {
      this.percent = percent;
    }

    private static OptionalDouble mean(List<Double> errors) {
      return errors.stream().mapToDouble(Double::doubleValue).average();
    }

    /** Mean of both directions, so that a direction read more often does not weigh more. */
    private double average() {
      double rising = mean(up).orElseGet(() -> mean(down).orElseThrow());
      double falling = mean(down).orElse(rising);
      return (rising + falling) / 2;
    }

    private OptionalDouble hysteresis() {
      boolean both = !up.isEmpty() && !down.isEmpty();
      return both
          ? OptionalDouble.of(Math.abs(mean(up).orElseThrow() - mean(down).orElseThrow()))
          : OptionalDouble.empty();
    }

    private OptionalDouble spread() {
      return largest(List.of(spread(up), spread(down)));
    }

    private static OptionalDouble spread(List<Double> errors) {
      if (errors.size() < 2) {
        return OptionalDouble.empty();
      }
      double most = errors.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
      double least = errors.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
      return OptionalDouble.of(most - least);
    }
  }
}
