package io.strapline.bridge.cli;

import io.strapline.bridge.model.SnapshotStore.PlantView;
import io.strapline.level.alarm.AlarmSnapshot;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.Quantity;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A plant as a table of one line per point. A value that must not be used is shown as dashes, never
 * as a number. Stateless.
 */
final class LiveTable {

  /** More points than this would not fit a usual screen. */
  static final int MOST_POINTS = 30;

  private LiveTable() {}

  /** Returns the lines of the table. */
  static List<String> lines(PlantView view) {
    List<String> lines = new ArrayList<>();
    lines.add(
        row(
            "TAG",
            "LEVEL m",
            "%",
            "VOLUME m3",
            "MASS t",
            "QUALITY",
            "107",
            "AGE s",
            "CAUSE",
            "ALARMS"));
    view.points().values().stream().limit(MOST_POINTS).map(LiveTable::line).forEach(lines::add);
    int more = view.points().size() - MOST_POINTS;
    if (more > 0) {
      lines.add("and " + more + " points more, see the OPC UA or Modbus server");
    }
    return lines;
  }

  private static String line(PointSnapshot point) {
    Quality quality = point.level().quality();
    return row(
        point.tag(),
        value(point, Quantity.LEVEL, 1, "%.3f"),
        value(point, Quantity.PERCENT, 1, "%.1f"),
        value(point, Quantity.VOLUME, 1, "%.2f"),
        value(point, Quantity.MASS, 0.001, "%.2f"),
        quality.level().name(),
        String.valueOf(point.status().letter()),
        String.format(Locale.ROOT, "%.1f", point.ageSeconds()),
        quality.isGood() ? "" : quality.cause().name(),
        alarms(point));
  }

  private static String row(Object... cells) {
    return String.format(Locale.ROOT, "%-12s %9s %6s %10s %9s %-9s %-3s %7s  %-22s %s", cells)
        .stripTrailing();
  }

  private static String value(PointSnapshot point, Quantity quantity, double factor, String form) {
    Optional<Reading> reading = point.reading(quantity);
    if (reading.isEmpty()) {
      return "";
    }
    return reading.get().usable().isPresent()
        ? String.format(Locale.ROOT, form, reading.get().value() * factor)
        : "---";
  }

  private static String alarms(PointSnapshot point) {
    List<String> standing = new ArrayList<>();
    for (AlarmSnapshot alarm : point.alarms()) {
      if (alarm.state().isActive() || !alarm.state().isAcknowledged()) {
        standing.add(alarm.kind() + " " + alarm.state().shortName());
      }
    }
    return String.join(", ", standing);
  }
}
