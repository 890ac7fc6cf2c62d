package io.strapline.bridge.source.replay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.SourceSettings.Pace;
import io.strapline.bridge.config.SourceSettings.Replay;
import io.strapline.bridge.config.SourceSettings.ReplayFormat;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.bridge.config.SourceSettings.ValueColumn;
import io.strapline.bridge.source.replay.SeriesReader.Entry;
import io.strapline.bridge.testing.Refused;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SeriesReaderTest {

  @TempDir Path folder;

  private Replay series(String text) throws IOException {
    Path file = folder.resolve("series.csv");
    Files.writeString(file, text, StandardCharsets.UTF_8);
    return replay(file);
  }

  private static Replay replay(Path file) {
    ReplayFormat format =
        new ReplayFormat(
            ',', '.', "time", Optional.empty(), "UTC", new ValueColumn("Höhe [mm]", 0.001));
    return new Replay(Signal.LEVEL, file, format, Pace.FASTEST);
  }

  @Test
  void anEmptyCellIsATimeWithoutASampleAndAnUnreadableRowIsCountedAndNeitherIsZero()
      throws IOException {
    Replay series =
        series(
            """
            \uFEFFtime,note,Höhe [mm]
            2026-03-01T06:00:00Z,"all, well",1500

            2026-03-01T06:00:01Z,,
            2026-03-01T06:00:02Z,,---
            2026-03-01T06:00:03Z
            not a time,,1500
            2026-03-01T06:00:04Z,"open,1500
            2026-03-01T06:00:05Z,x",7,
            2026-03-01T06:00:06Z,,2000
            """);
    List<Entry> entries = new ArrayList<>();
    try (SeriesReader reader = SeriesReader.open(series)) {
      Optional<Entry> entry = reader.next();
      while (entry.isPresent()) {
        entries.add(entry.get());
        entry = reader.next();
      }
      assertEquals(1, reader.emptyRows());
      assertEquals(3, reader.unreadableRows());
    }
    assertEquals(
        List.of(
            new Entry(2, Instant.parse("2026-03-01T06:00:00Z"), 1.5),
            new Entry(8, Instant.parse("2026-03-01T06:00:04Z"), 0.007),
            new Entry(10, Instant.parse("2026-03-01T06:00:06Z"), 2)),
        entries);
  }

  @Test
  void namesTheColumnsThereAreWhenOneIsMissing() throws IOException {
    Replay series = series("time;Höhe [mm]\n");
    String refused = Refused.message(IOException.class, () -> SeriesReader.open(series));
    assertTrue(refused.contains("has no column \"time\""), refused);
    assertTrue(refused.contains("it has \"time;Höhe [mm]\""), refused);
    assertTrue(refused.contains("series.csv"), refused);
  }

  @Test
  void refusesAColumnThatIsThereTwice() throws IOException {
    Replay series = series("time,Höhe [mm],Höhe [mm]\n");
    String refused = Refused.message(IOException.class, () -> SeriesReader.open(series));
    assertTrue(refused.contains("two columns \"Höhe [mm]\""), refused);
  }

  @Test
  void namesAFileThatIsMissingEmptyOrAFolder() throws IOException {
    Replay absent = replay(folder.resolve("nowhere.csv"));
    String missing = Refused.message(IOException.class, () -> SeriesReader.open(absent));
    assertTrue(missing.contains("nowhere.csv: no such file"), missing);
    Replay directory = replay(folder);
    String isFolder = Refused.message(IOException.class, () -> SeriesReader.open(directory));
    assertTrue(isFolder.contains("is a folder"), isFolder);
    Replay blank = series("\n\n");
    String empty = Refused.message(IOException.class, () -> SeriesReader.open(blank));
    assertTrue(empty.contains("has no header line"), empty);
  }
}
