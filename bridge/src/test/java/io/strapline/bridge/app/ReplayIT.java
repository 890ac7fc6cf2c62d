package io.strapline.bridge.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings.Pace;
import io.strapline.bridge.config.SourceSettings.Replay;
import io.strapline.bridge.config.SourceSettings.ReplayFormat;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.bridge.config.SourceSettings.ValueColumn;
import io.strapline.bridge.model.RealClock;
import io.strapline.bridge.testing.Eventually;
import io.strapline.bridge.testing.Plants;
import io.strapline.bridge.testing.Recorded;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.SourceAges;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Series that real instruments recorded, run through a whole plant in the time of their file, and
 * held against values that this test reads and computes by itself. The files and where they come
 * from: see the read-me beside them; they are no part of this repository.
 */
class ReplayIT {

  private static final double LAST_USABLE_SECONDS = 5400;
  private static final double BAD_SECONDS = 9000;

  private record Row(Instant time, double value) {}

  /** Everything the plant published, by source time, in the order in which it came. */
  private static Map<Instant, List<PointSnapshot>> replay(
      PointSettings point, Signal signal, Path file, ReplayFormat format, Instant last)
      throws IOException {
    PointConfig config = Plants.point(point, new Replay(signal, file, format, Pace.FASTEST));
    PlantSettings plant = Plants.quiet(List.of(config));
    Map<Instant, List<PointSnapshot>> heard = new LinkedHashMap<>();
    try (PlantRun run = PlantRun.of(plant, RealClock.startNow(), new StandardParts())) {
      run.store().listen(snapshot -> keep(snapshot, heard));
      run.start();
      Eventually.holds(
          "the end of " + file.getFileName(),
          () -> {
            PointSnapshot now = run.store().view().point(point.tag()).orElseThrow();
            return now.sourceTime().equals(last) && now.level().quality().isBad();
          });
    }
    return heard;
  }

  private static void keep(PointSnapshot snapshot, Map<Instant, List<PointSnapshot>> heard) {
    // The one before the first sample has the time of the plant, not of the file.
    if (snapshot.sequence() > 0) {
      heard.computeIfAbsent(snapshot.sourceTime(), time -> new ArrayList<>()).add(snapshot);
    }
  }

  private static PointSnapshot first(Map<Instant, List<PointSnapshot>> heard, Row row) {
    return Objects.requireNonNull(heard.get(row.time()), () -> "nothing of " + row.time()).get(0);
  }

  /**
   * Loop currents of a sewer, 4.05 to 5.63 mA. The span of about 0.48 m is fitted from the record's
   * own height column (slope 0.02997 m/mA, 4.002 mA at zero, residuals within 0.2 mm), so that the
   * round figure 0.03 (I - 4) lies within 0.4 mm of that column.
   */
  @Test
  void loopCurrentsWithADecimalCommaBecomeTheRecordedHeights() throws IOException {
    Path file = Recorded.file("sewer_loop_current.csv");
    List<String> lines = Files.readAllLines(file);
    DateTimeFormatter pattern = DateTimeFormatter.ofPattern("dd.MM.yyyy HH:mm:ss");
    List<Row> currents = new ArrayList<>();
    List<Row> heights = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(";", -1);
      Instant time = LocalDateTime.parse(cells[0], pattern).toInstant(ZoneOffset.UTC);
      heights.add(new Row(time, Double.parseDouble(cells[1].replace(',', '.'))));
      currents.add(new Row(time, Double.parseDouble(cells[2].replace(',', '.'))));
    }
    PointSettings point =
        Plants.plumb("LT-202", 1.2)
            .range(LoopRange.ofLevel(0, 0.48))
            .ages(new SourceAges(150, 300))
            .build();
    ReplayFormat format =
        new ReplayFormat(
            ';',
            ',',
            "Date & Time",
            Optional.of("dd.MM.yyyy HH:mm:ss"),
            "UTC",
            new ValueColumn("I [mA]", 1));
    Map<Instant, List<PointSnapshot>> heard =
        replay(point, Signal.CURRENT, file, format, currents.get(currents.size() - 1).time());

    assertEquals(2010, currents.size());
    for (int i = 0; i < currents.size(); i++) {
      PointSnapshot snapshot = first(heard, currents.get(i));
      assertEquals(Quality.GOOD, snapshot.level().quality(), currents.get(i)::toString);
      double level = snapshot.level().value();
      assertEquals(0.03 * (currents.get(i).value() - 4), level, 1e-12, currents.get(i)::toString);
      assertEquals(heights.get(i).value(), level, 0.0004, currents.get(i)::toString);
    }
  }

  private static List<Row> well(int column) throws IOException {
    List<Row> rows = new ArrayList<>();
    List<String> lines = Files.readAllLines(Recorded.file("well_pressure_hourly.csv"));
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",", -1);
      if (!cells[column].isEmpty()) {
        Instant time = LocalDateTime.parse(cells[0].replace(' ', 'T')).toInstant(ZoneOffset.UTC);
        rows.add(new Row(time, Double.parseDouble(cells[column])));
      }
    }
    return rows;
  }

  private static Map<Instant, List<PointSnapshot>> replayWell(String column, List<Row> rows)
      throws IOException {
    PointSettings point =
        Plants.plumb("LT-301A", 30.98)
            .ages(new SourceAges(LAST_USABLE_SECONDS, BAD_SECONDS))
            .build();
    ReplayFormat format =
        new ReplayFormat(',', '.', "index", Optional.empty(), "UTC", new ValueColumn(column, 1));
    Path file = Recorded.file("well_pressure_hourly.csv");
    return replay(point, Signal.LEVEL, file, format, rows.get(rows.size() - 1).time());
  }

  private static void assertLevels(Map<Instant, List<PointSnapshot>> heard, List<Row> rows) {
    for (Row row : rows) {
      PointSnapshot snapshot = first(heard, row);
      assertEquals(Quality.GOOD, snapshot.level().quality(), row::toString);
      assertEquals(row.value(), snapshot.level().value(), 1e-9, row::toString);
    }
  }

  /** Checks every gap of the series, and that there is no sign of one where there is none. */
  private static int assertGaps(Map<Instant, List<PointSnapshot>> heard, List<Row> rows) {
    int gaps = 0;
    for (int i = 0; i + 1 < rows.size(); i++) {
      double gap = Duration.between(rows.get(i).time(), rows.get(i + 1).time()).toMillis() / 1000.0;
      Row row = rows.get(i);
      assertEquals(gap > LAST_USABLE_SECONDS, shows(heard, row, Cause.SOURCE_SILENT_HELD));
      assertEquals(gap > BAD_SECONDS, shows(heard, row, Cause.SOURCE_SILENT), row::toString);
      gaps += gap > LAST_USABLE_SECONDS ? 1 : 0;
    }
    return gaps;
  }

  private static boolean shows(Map<Instant, List<PointSnapshot>> heard, Row row, Cause cause) {
    return Objects.requireNonNull(heard.get(row.time())).stream()
        .anyMatch(snapshot -> snapshot.level().quality().cause() == cause);
  }

  /** Four gaps of two to three hours and one odd interval of 5441 s, says the read-me. */
  @Test
  void fourYearsOfHourlyLevelsComeThroughAndEveryGapShows() throws IOException {
    List<Row> rows = well(1);
    Map<Instant, List<PointSnapshot>> heard = replayWell("raw_level_m", rows);
    assertEquals(37_237, rows.size());
    assertEquals(rows.size(), heard.size());
    assertLevels(heard, rows);
    assertEquals(5, assertGaps(heard, rows));
    assertTrue(shows(heard, rows.get(rows.size() - 1), Cause.SOURCE_SILENT));
  }

  /** The same with the 25 samples left empty that a person has rejected. */
  @Test
  void emptyCellsAreGapsAndNeverZero() throws IOException {
    List<Row> rows = well(2);
    Map<Instant, List<PointSnapshot>> heard = replayWell("manual_validation_m", rows);
    assertEquals(37_237 - 25, rows.size());
    assertLevels(heard, rows);
    assertTrue(assertGaps(heard, rows) >= 5);
    assertTrue(
        heard.values().stream()
            .flatMap(List::stream)
            .filter(snapshot -> snapshot.level().usable().isPresent())
            .noneMatch(snapshot -> snapshot.level().value() < 29));
  }
}
