package io.strapline.level.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.Refusal;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CapacityTableReaderTest {

  private static final String SUMP =
      """
      # Slurry sump LT-202

      height [m];volume [m3]
      0.00;0.000
      0.10;0.350

      # a comment between
      0.20;0.80
      """;

  @Test
  void readsThePlainForm() {
    CapacityTable table = CapacityTable.read(SUMP, "sump.csv");

    assertEquals(3, table.size());
    assertEquals(0.2, table.maxHeightMetres());
    assertEquals(0.8, table.capacityCubicMetres());
    assertEquals(0.175, table.volumeCubicMetres(0.05), 1e-15);
    assertEquals(Interpolation.LINEAR, table.interpolation());
  }

  @Test
  void convertsTheUnitsOfTheHeader() {
    CapacityTable table = CapacityTable.read("height [mm]\tvolume [L]\n0\t0\n2000\t10700\n", "t");

    assertEquals(2, table.maxHeightMetres());
    assertEquals(10.7, table.capacityCubicMetres(), 1e-12);
  }

  @Test
  void readsColumnsInEitherOrderWithEitherLineEndAndMark() {
    CapacityTable table =
        CapacityTable.read("\uFEFFVolume[m3] , HEIGHT [m]\r\n0,0\r\n5,2\r\n", "t");

    assertEquals(2, table.maxHeightMetres());
    assertEquals(5, table.capacityCubicMetres());
  }

  // "20,33" became 2033, "1.355,90" became 1,35 and "9,99" became 999.
  @Test
  void readsDecimalCommasAndDeclaredGroups() {
    String text =
        """
        # decimal: comma
        # grouping: point
        height [m];volume [L]
        0,10;9,99
        0,20;20,33
        0,30;1.355,90
        """;

    List<CapacityRow> rows = CapacityTableReader.of(text).rows();

    assertEquals(0.00999, rows.get(0).volumeCubicMetres(), 1e-15);
    assertEquals(0.02033, rows.get(1).volumeCubicMetres(), 1e-15);
    assertEquals(1.3559, rows.get(2).volumeCubicMetres(), 1e-15);
  }

  @Test
  void takesTheOneMarkThatCanOnlyBeADecimalMark() {
    CapacityTable table = CapacityTable.read("height [m];volume [m3]\n0,5;1,355\n1,0;2,710\n", "t");

    assertEquals(0.5, table.minHeightMetres());
    assertEquals(1.355, table.heelCubicMetres());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1.355;20,33 | 3 | points and commas",
        "1;1.355 | 3 | between thousands",
        "1;1,355 | 3 | between thousands",
        "1;1.355.900 | 3 | between thousands"
      })
  void refusesMarksThatAreNotClear(String row, int line, String rule) {
    TableProblem problem = only("height [mm];volume [L]\n0;0\n" + row + "\n");

    assertEquals(line, problem.line());
    assertTrue(problem.rule().contains(rule), problem::text);
    assertTrue(problem.fix().contains("# decimal: point or # decimal: comma"), problem::text);
  }

  @Test
  void readsTheSameRowOnceTheMarkIsDeclared() {
    String rows = "height [mm];volume [L]\n0;0\n1;1.355\n";

    assertEquals(
        1.355e-3,
        CapacityTable.read("# decimal: point\n" + rows, "t").capacityCubicMetres(),
        1e-15);
    assertEquals(
        1.355,
        CapacityTable.read("# Decimal: Comma\n#grouping:point\n" + rows, "t")
            .capacityCubicMetres());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "20,33",
        "1.355,90",
        "1e3",
        "NaN",
        "0x10",
        "",
        "1.",
        ".5",
        "\"5\"",
        "1 000",
        "--1"
      })
  void namesACellThatIsNoNumber(String cell) {
    TableProblem problem =
        only("# decimal: point\nheight [m];volume [m3]\n0;0\n1;" + cell + "\n2;3\n");

    assertEquals(4, problem.line());
    assertEquals("volume \"" + cell + "\"", problem.value());
    assertTrue(problem.fix().contains("20.33"), problem::text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1.35.5,9", "12.34,5", "1234.567,8", "1.3555,1", "0.123,4"})
  void refusesGroupsThatAreNotThousands(String cell) {
    String head = "# decimal: comma\n# grouping: point\nheight [m];volume [L]\n0;0\n1;";

    assertEquals(5, only(head + cell + "\n2;900000\n").line());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "height;volume [m3] | height",
        "height [m];volume | volume",
        "height [furlong];volume [m3] | furlong",
        "height [m3];volume [m3] | height",
        "height [m];volume [gal] | gal",
        "depth [m];volume [m3] | depth",
        "height [m];height [m] | height",
        "0;0 | 0",
        "height [m];volume [m3];note | 3 columns",
        "height [m] volume [m3] | separator",
        "height [m];volume, total [m3] | separator"
      })
  void refusesAHeaderThatLeavesColumnOrUnitOpen(String header, String named) {
    List<TableProblem> problems = CapacityTableReader.of(header + "\n0;0\n1;1\n").problems();

    assertEquals(1, problems.get(0).line());
    assertTrue(problems.get(0).text().contains(named), problems.get(0)::text);
    assertTrue(problems.get(0).fix().contains("height [m];volume [m3]"), problems.get(0)::text);
  }

  @Test
  void namesRowsWithTooFewOrTooManyCells() {
    List<TableProblem> problems =
        CapacityTableReader.of("height [m];volume [m3]\n0;0\n1\n2;2;2\n3;3;\n4;4\n").problems();

    assertEquals(List.of(3, 4, 5), problems.stream().map(TableProblem::line).toList());
  }

  // A decimal comma between commas makes four cells.
  @Test
  void refusesDecimalCommasBetweenCommas() {
    assertEquals(3, only("height [m],volume [m3]\n0,0\n0,5,1,5\n2,2\n").line());
    assertEquals(
        "the declarations", only("# decimal: comma\nheight [m],volume [m3]\n0,0\n1,1\n").value());
  }

  @Test
  void namesWrongDeclarations() {
    assertEquals(1, only("# decimal: dot\nheight [m];volume [m3]\n0;0\n1;1\n").line());
    assertEquals(
        2, only("# decimal: point\n# decimal: comma\nheight [m];volume [m3]\n0;0\n1;1\n").line());
    assertEquals(2, only("height [m];volume [m3]\n# decimal: comma\n0;0\n1;1\n").line());
    assertEquals(
        "the declarations",
        only("# decimal: comma\n# grouping: comma\nheight [m];volume [m3]\n0;0\n1;1\n").value());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "\n \n", "# only a comment\n", "\uFEFF"})
  void namesAnEmptyText(String text) {
    assertTrue(only(text).rule().contains("no header"));
  }

  @Test
  void namesATableWithoutRows() {
    assertTrue(only("height [m];volume [m3]\n").rule().contains("needs two"));
  }

  @Test
  void listsReadingAndOrderingProblemsTogetherByLine() {
    String text = "height [mm];volume [L]\n0;0\n10;x\n20;5\n20;6\n30;4\n40;9\n";

    String message = Refusal.of(() -> CapacityTable.read(text, "sump.csv"));

    assertEquals(
        """
        capacity table sump.csv, 3 problems:
          line 3: volume "x": is not a number with a decimal point; write digits such as 20.33
          line 5: height 20.0 mm: repeats the height of line 4; remove one of the two rows
          line 6: volume 4.0 L: falls below the volume of line 4 (5.0); correct the volume""",
        message);
  }

  // Any text gives problems or a table, never another exception.
  @Test
  void bearsAnyText() {
    long seed = 99;
    Random random = new Random(seed);
    String letters = "0123456789.,;\t#- []hvm3\n\n\n";
    for (int round = 0; round < 3_000; round++) {
      StringBuilder text =
          new StringBuilder(random.nextBoolean() ? "height [m];volume [m3]\n" : "");
      for (int i = random.nextInt(60); i > 0; i--) {
        text.append(letters.charAt(random.nextInt(letters.length())));
      }
      CapacityTableReader reader = CapacityTableReader.of(text.toString());
      boolean isTable = reader.problems().isEmpty();
      assertEquals(
          isTable,
          isTable && CapacityTable.check(reader.rows()).isEmpty(),
          "seed " + seed + ": " + text);
    }
  }

  private static TableProblem only(String text) {
    List<TableProblem> problems = CapacityTableReader.of(text).problems();
    assertEquals(1, problems.size(), problems::toString);
    return problems.get(0);
  }
}
