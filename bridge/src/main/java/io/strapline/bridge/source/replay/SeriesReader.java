package io.strapline.bridge.source.replay;

import io.strapline.bridge.config.SourceSettings.Replay;
import java.io.BufferedReader;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Reads a recorded series entry by entry, never as a whole. A row with an empty value cell is a
 * time at which the device sent nothing: it is counted and gives no entry. A row that cannot be
 * read is counted and logged with its line number and gives no entry either; nothing ever becomes
 * zero. Not thread-safe.
 */
final class SeriesReader implements Closeable {

  private static final Logger LOG = LoggerFactory.getLogger(SeriesReader.class);

  /** Rows that are logged one by one; later ones are only counted. */
  private static final int LOGGED_ROWS = 10;

  private final Path file;
  private final SeriesFormat format;
  private final CsvReader rows;
  private final int timePlace;
  private final int valuePlace;
  private @Nullable Instant previous;
  private long empty;
  private long unreadable;

  private SeriesReader(Replay settings, CsvReader rows) throws IOException {
    file = settings.file();
    format = new SeriesFormat(settings.format());
    this.rows = rows;
    List<String> header = header();
    timePlace = place(header, settings.format().timeColumn());
    valuePlace = place(header, settings.format().value().header());
  }

  /**
   * One value of the series. Immutable.
   *
   * @param line in the file, from 1
   * @param time of the file
   * @param value metres, mA or counts, finite
   */
  record Entry(long line, Instant time, double value) {}

  /**
   * Opens the file and finds its columns.
   *
   * @throws IOException naming the file, and the columns there are when one is missing
   */
  static SeriesReader open(Replay settings) throws IOException {
    CsvReader rows = new CsvReader(text(settings.file()), settings.format().separator());
    try {
      return new SeriesReader(settings, rows);
    } catch (IOException | RuntimeException wrong) {
      rows.close();
      throw wrong;
    }
  }

  private static BufferedReader text(Path file) throws IOException {
    try {
      if (Files.isDirectory(file)) {
        throw new IOException("recorded series " + file + ": is a folder; give a CSV file");
      }
      InputStream bytes = Files.newInputStream(file);
      // A stray byte in a comment column must not end a series: bad bytes become U+FFFD.
      return new BufferedReader(new InputStreamReader(bytes, StandardCharsets.UTF_8));
    } catch (NoSuchFileException absent) {
      throw new IOException("recorded series " + file + ": no such file; correct the path", absent);
    }
  }

  private List<String> header() throws IOException {
    CsvReader.Row row =
        rows.next()
            .orElseThrow(() -> new IOException("recorded series " + file + ": has no header line"));
    List<String> names = new ArrayList<>();
    row.cells().forEach(cell -> names.add(cell.replace("\uFEFF", "").strip()));
    return names;
  }

  private int place(List<String> header, String column) throws IOException {
    int place = header.indexOf(column.strip());
    if (place < 0) {
      throw new IOException(
          "recorded series "
              + file
              + ": has no column \""
              + column
              + "\"; it has \""
              + String.join("\", \"", header)
              + "\". Correct the column or the separator");
    }
    if (header.lastIndexOf(column.strip()) != place) {
      throw new IOException(
          "recorded series " + file + ": has two columns \"" + column + "\"; rename one of them");
    }
    return place;
  }

  /** Returns the next entry, or nothing at the end of the file. */
  Optional<Entry> next() throws IOException {
    Optional<CsvReader.Row> row = rows.next();
    while (row.isPresent()) {
      Optional<Entry> entry = entry(row.get());
      if (entry.isPresent()) {
        return entry;
      }
      row = rows.next();
    }
    return Optional.empty();
  }

  private Optional<Entry> entry(CsvReader.Row row) {
    List<String> cells = row.cells();
    if (!row.wellFormed() || cells.size() <= Math.max(timePlace, valuePlace)) {
      return unreadable(row, "is cut short or has a quote that is not closed");
    }
    String cell = cells.get(valuePlace);
    if (cell.isBlank()) {
      empty++;
      return Optional.empty();
    }
    OptionalDouble value = format.value(cell);
    if (value.isEmpty()) {
      return unreadable(row, "value \"" + cell + "\" is no number of the configured form");
    }
    return timed(row, value.getAsDouble());
  }

  private Optional<Entry> timed(CsvReader.Row row, double value) {
    String cell = row.cells().get(timePlace);
    try {
      Instant time = format.time(cell, previous);
      previous = time;
      return Optional.of(new Entry(row.line(), time, value));
    } catch (DateTimeException wrong) {
      return unreadable(row, "time \"" + cell + "\" is not of the configured form");
    }
  }

  private Optional<Entry> unreadable(CsvReader.Row row, String why) {
    unreadable++;
    if (unreadable <= LOGGED_ROWS) {
      LOG.warn("{} line {} left out: {}", file.getFileName(), row.line(), why);
    }
    if (unreadable == LOGGED_ROWS) {
      LOG.warn("{}: further lines that are left out are only counted", file.getFileName());
    }
    return Optional.empty();
  }

  /** Returns how many rows had an empty value. */
  long emptyRows() {
    return empty;
  }

  /** Returns how many rows could not be read. */
  long unreadableRows() {
    return unreadable;
  }

  @Override
  public void close() throws IOException {
    rows.close();
  }
}
