package io.strapline.bridge.source.replay;

import java.io.Closeable;
import java.io.IOException;
import java.io.PushbackReader;
import java.io.Reader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Splits comma-separated text into rows, one at a time, by RFC 4180: cells in double quotes may
 * hold the separator, line ends and doubled quotes. Any separator and any line end will do. Blank
 * lines are left out. Not thread-safe.
 */
final class CsvReader implements Closeable {

  /** Greatest length of a cell; a longer one is a quote that somebody forgot to close. */
  static final int LONGEST_CELL = 4096;

  private static final int END = -1;

  private final PushbackReader text;
  private final char separator;
  private long line = 1;

  CsvReader(Reader text, char separator) {
    this.text = new PushbackReader(text);
    this.separator = separator;
  }

  /**
   * A row. Immutable.
   *
   * @param line number of its first line, from 1
   * @param cells without their quotes
   * @param wellFormed false when a quote is not closed or has text behind it
   */
  record Row(long line, List<String> cells, boolean wellFormed) {

    /** Copies the list. */
    Row {
      cells = List.copyOf(cells);
    }

    private boolean isBlank() {
      return wellFormed && cells.size() == 1 && cells.get(0).isBlank();
    }
  }

  /** Returns the next row, or nothing at the end of the text. */
  Optional<Row> next() throws IOException {
    while (peek() != END) {
      Row row = new RowSplitter().row();
      if (!row.isBlank()) {
        return Optional.of(row);
      }
    }
    return Optional.empty();
  }

  private int peek() throws IOException {
    int next = text.read();
    if (next != END) {
      text.unread(next);
    }
    return next;
  }

  /** Reads one character; every kind of line end is read as a line feed. */
  private int read() throws IOException {
    int next = text.read();
    if (next == '\r') {
      if (peek() == '\n') {
        text.read();
      }
      next = '\n';
    }
    line += next == '\n' ? 1 : 0;
    return next;
  }

  @Override
  public void close() throws IOException {
    text.close();
  }

  private final class RowSplitter {
    private final long first = line;
    private final List<String> cells = new ArrayList<>();
    private final StringBuilder cell = new StringBuilder();
    private boolean wellFormed = true;

    private Row row() throws IOException {
      int end;
      do {
        end = peek() == '"' ? quoted() : plain();
        cells.add(cell.toString());
        cell.setLength(0);
      } while (end == separator);
      return new Row(first, cells, wellFormed);
    }

    private int plain() throws IOException {
      int next = read();
      while (next != separator && next != '\n' && next != END) {
        append(next);
        next = read();
      }
      return next;
    }

    private int quoted() throws IOException {
      read();
      while (cell.length() < LONGEST_CELL) {
        int next = read();
        if (next == '"' && peek() != '"') {
          return behindQuote();
        }
        if (next == END) {
          break;
        }
        append(next == '"' ? read() : next);
      }
      wellFormed = false;
      return plain();
    }

    private int behindQuote() throws IOException {
      int length = cell.length();
      int end = plain();
      wellFormed &= cell.substring(length).isBlank();
      cell.setLength(length);
      return end;
    }

    private void append(int character) {
      if (cell.length() < LONGEST_CELL) {
        cell.append((char) character);
      } else {
        wellFormed = false;
      }
    }
  }
}
