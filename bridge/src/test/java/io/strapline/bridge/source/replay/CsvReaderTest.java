package io.strapline.bridge.source.replay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.source.replay.CsvReader.Row;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers in brackets are those of RFC 4180, section 2. */
class CsvReaderTest {

  private static List<Row> rows(String text, char separator) throws IOException {
    List<Row> rows = new ArrayList<>();
    try (CsvReader reader = new CsvReader(new StringReader(text), separator)) {
      Optional<Row> row = reader.next();
      while (row.isPresent()) {
        rows.add(row.get());
        row = reader.next();
      }
    }
    return rows;
  }

  private static List<String> cells(String line) throws IOException {
    return rows(line, ',').get(0).cells();
  }

  /** [1], [2]: the last line may lack its end; any of the three line ends will do here. */
  @ParameterizedTest
  @ValueSource(strings = {"aaa,bbb\r\nzzz,yyy\r\n", "aaa,bbb\nzzz,yyy", "aaa,bbb\rzzz,yyy\r"})
  void splitsLinesWhateverTheirEnd(String text) throws IOException {
    List<Row> rows = rows(text, ',');
    assertEquals(2, rows.size());
    assertEquals(List.of("aaa", "bbb"), rows.get(0).cells());
    assertEquals(List.of("zzz", "yyy"), rows.get(1).cells());
    assertEquals(2, rows.get(1).line());
  }

  /** [5], [6], [7]. */
  @Test
  void quotedCellsMayHoldSeparatorsLineEndsAndQuotes() throws IOException {
    assertEquals(List.of("aaa", "b\nb,b", "c\"c"), cells("\"aaa\",\"b\r\nb,b\",\"c\"\"c\""));
  }

  @Test
  void linesAreCountedInsideQuotesToo() throws IOException {
    List<Row> rows = rows("a,\"1\n2\n3\"\nb,4\n", ',');
    assertEquals(1, rows.get(0).line());
    assertEquals(4, rows.get(1).line());
  }

  /** [4]: spaces belong to the cell. */
  @Test
  void keepsSpacesAndEmptyCells() throws IOException {
    assertEquals(List.of(" a ", "", "b", ""), cells(" a ,,b,"));
    assertEquals(List.of("", ""), cells("\"\",\"\""));
  }

  @Test
  void takesAnySeparator() throws IOException {
    assertEquals(List.of("0,0203", "4,68"), rows("0,0203;4,68", ';').get(0).cells());
    assertEquals(List.of("1", "2"), rows("1\t2", '\t').get(0).cells());
  }

  @Test
  void leavesBlankLinesOut() throws IOException {
    List<Row> rows = rows("\n\na,b\n   \n\nc,d\n\n", ',');
    assertEquals(List.of(3L, 6L), rows.stream().map(Row::line).toList());
  }

  @Test
  void aQuoteInsideAPlainCellIsPlainText() throws IOException {
    assertEquals(List.of("12 3/4\"", "x"), cells("12 3/4\",x"));
  }

  @Test
  void tellsARowWithTextBehindItsQuote() throws IOException {
    Row row = rows("\"a\"b,c\nd,e", ',').get(0);
    assertFalse(row.wellFormed());
    assertEquals(List.of("a", "c"), row.cells());
  }

  /** Otherwise one stray quote would swallow the rest of a series without a word. */
  @Test
  void aQuoteThatIsNotClosedCostsABoundedPartOfTheFile() throws IOException {
    StringBuilder text = new StringBuilder("a,\"1\n");
    for (int i = 0; i < 2000; i++) {
      text.append("b,").append(i).append('\n');
    }
    List<Row> rows = rows(text.toString(), ',');
    assertFalse(rows.get(0).wellFormed());
    assertEquals(1, rows.get(0).line());
    assertEquals(List.of("b", "1999"), rows.get(rows.size() - 1).cells());
    assertEquals(2001, rows.get(rows.size() - 1).line());
    assertTrue(rows.size() > 1000, () -> rows.size() + " rows left");
  }

  @Test
  void aQuoteThatIsOpenAtTheEndIsTold() throws IOException {
    List<Row> rows = rows("a,\"1", ',');
    assertEquals(1, rows.size());
    assertFalse(rows.get(0).wellFormed());
  }

  @Test
  void anEmptyTextHasNoRow() throws IOException {
    assertEquals(List.of(), rows("", ','));
  }
}
