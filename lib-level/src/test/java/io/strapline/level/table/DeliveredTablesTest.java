package io.strapline.level.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.Refusal;
import io.strapline.level.testing.Refusals;
import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DeliveredTablesTest {

  private static DeliveredTables read(String text) {
    return DeliveredTables.read(text, "file", DeliveryOptions.none());
  }

  private static CapacityTable one(String text) {
    DeliveredTables delivered = read(text);
    assertEquals(List.of(), delivered.problems());
    assertEquals(1, delivered.tables().size());
    return delivered.tables().get(0).capacityTable(Interpolation.LINEAR);
  }

  private static TableProblem onlyProblem(String text) {
    List<TableProblem> problems = read(text).problems();
    assertEquals(1, problems.size(), problems::toString);
    return problems.get(0);
  }

  @Test
  void addsMillimetrePartsToCentimetreRows() {
    CapacityTable table =
        one(
            """
            # table: LT-202 slurry sump
            # decimal: point
            height [cm];volume [L]
            0;0
            1;100
            2;210
            # block: fraction
            part [mm];volume [L]
            2;20
            5;52
            """);

    assertEquals("LT-202 slurry sump", table.name());
    assertEquals(7, table.size());
    assertEquals(0.020, table.volumeCubicMetres(0.002), 1e-15);
    assertEquals(0.052, table.volumeCubicMetres(0.005), 1e-15);
    assertEquals(0.100, table.volumeCubicMetres(0.010), 1e-15);
    assertEquals(0.152, table.volumeCubicMetres(0.015), 1e-15);
    assertEquals(0.210, table.capacityCubicMetres(), 1e-15);
  }

  /** Each zone of rows has its own parts; the last main row has none above it. */
  @Test
  void addsThePartsOfEachRange() {
    CapacityTable table =
        one(
            """
            height [cm];volume [L]
            0;0
            10;100
            20;300
            30;500
            # block: fraction
            # to: 10 cm
            part [cm];volume [L]
            5;40
            # block: fraction
            # from: 100 mm
            # to: 30 cm
            part [mm];volume [L]
            50;90
            """);

    assertEquals(7, table.size());
    assertEquals(0.040, table.volumeCubicMetres(0.05), 1e-15);
    assertEquals(0.190, table.volumeCubicMetres(0.15), 1e-15);
    assertEquals(0.390, table.volumeCubicMetres(0.25), 1e-15);
    assertEquals(0.3, table.maxHeightMetres());
  }

  @Test
  void addsSixteenthsOfAnInch() {
    CapacityTable table =
        one(
            """
            height [in];volume [US gal]
            0;0
            1;32
            2;66
            # block: fraction
            part [in];volume [US gal]
            1/16;2
            1/8;4
            15/16;30
            """);

    assertEquals(9, table.size());
    double gallon = 231 * Math.pow(0.0254, 3);
    assertEquals(2 * gallon, table.volumeCubicMetres(0.0254 / 16), 1e-12);
    assertEquals(62 * gallon, table.volumeCubicMetres(0.0254 * 31 / 16), 1e-12);
  }

  @Test
  void readsDipsInFeetAndInches() {
    CapacityTable table =
        one(
            """
            height [ft in];volume [oil bbl]
            0 ft 0 in;0
            3 1/2 in;10
            7 ft 4 1/2 in;260
            8' 6";300
            """);

    assertEquals(3.5 * 0.0254, table.rows().get(1).heightMetres(), 1e-15);
    assertEquals(88.5 * 0.0254, table.rows().get(2).heightMetres(), 1e-15);
    assertEquals(102 * 0.0254, table.maxHeightMetres(), 1e-15);
  }

  /** By hand: reference height 2.95 m, ullage 0 is 2.95 m innage, datum offset 12 mm, heel 50 L. */
  @Test
  void turnsUllageIntoInnageAndAddsOffsetAndHeel() {
    CapacityTable table =
        one(
            """
            # reference height: 2.95 m
            # datum offset: 12 mm
            # heel: 50 L
            # decimal: comma
            ullage [cm];volume [L]
            0;47120
            10;46240,5
            25;44000
            """);

    assertEquals(2.712, table.minHeightMetres(), 1e-15);
    assertEquals(44.050, table.heelCubicMetres(), 1e-12);
    assertEquals(2.962, table.maxHeightMetres(), 1e-15);
    assertEquals(46.2905, table.volumeCubicMetres(2.862), 1e-12);
    assertEquals(47.170, table.capacityCubicMetres(), 1e-12);
  }

  /** A part of ullage takes volume away, as the tape shows more air. */
  @Test
  void takesThePartsOfAnUllageAway() {
    CapacityTable table =
        one(
            """
            # reference height: 1 m
            ullage [cm];volume [L]
            0;300
            10;200
            20;100
            # block: fraction
            part [cm];volume [L]
            4;42
            """);

    assertEquals(5, table.size());
    assertEquals(0.258, table.volumeCubicMetres(0.96), 1e-15);
    assertEquals(0.158, table.volumeCubicMetres(0.86), 1e-15);
    assertEquals(0.8, table.minHeightMetres(), 1e-15);
  }

  @Test
  void readsFixedWidthWithSeveralPairsDownEachPair() {
    CapacityTable table =
        one(
            """
            # columns: height [mm] 1-5, volume [L] 7-12, height [mm] 16-20, volume [L] 22-27
            # decimal: comma
                0    0,0     30   65,5
               10   20,0     40   90,0
               20   41,5
            """);

    assertEquals(5, table.size());
    assertEquals(0.0415, table.volumeCubicMetres(0.020), 1e-15);
    assertEquals(0.0655, table.volumeCubicMetres(0.030), 1e-15);
    assertEquals(0.090, table.capacityCubicMetres(), 1e-15);
  }

  @Test
  void readsPairsSideBySideAndColumnsInEitherOrder() {
    CapacityTable table =
        one("volume [L];height [cm];volume [L];height [cm]\n0;0;30;20\n10;10;70;30\n");

    assertEquals(4, table.size());
    assertEquals(0.03, table.volumeCubicMetres(0.2), 1e-15);
  }

  @Test
  void readsCellsDividedByBlanks() {
    CapacityTable table =
        one("# separator: blanks\nheight [m]   volume [m3]\n 0   0\n 1    5\n\n 2\t12\n");

    assertEquals(12, table.capacityCubicMetres());
  }

  @Test
  void joinsMainBlocksOfOneTable() {
    CapacityTable table =
        one(
            """
            height [m];volume [m3]
            0;0
            1;5
            # page 2
            # block: main
            height [m];volume [m3]
            2;12
            3;20
            """);

    assertEquals(4, table.size());
  }

  @Test
  void readsRowsThatFallFromFullToEmpty() {
    assertEquals(2, one("height [m];volume [m3]\n2;9\n1;4\n0;0\n").maxHeightMetres());
  }

  @Test
  void readsSeveralTablesAndLosesNoneForTheProblemsOfAnother() {
    DeliveredTables delivered =
        read(
            """
            # decimal: point
            # table: north
            height [m];volume [m3]
            0;0
            1;5
            # table: middle
            # heel: 2 m3
            height [m];volume [m3]
            0;0
            1;x
            2;9
            # table: south
            height [mm];volume [L]
            0;0
            1000;7000
            """);

    assertEquals(3, delivered.tables().size());
    assertEquals(5, capacity(delivered, 0), 1e-12);
    assertEquals(7, capacity(delivered, 2), 1e-12);
    assertEquals(1, delivered.problems().size());
    assertEquals(10, delivered.problems().get(0).line());
    String message = Refusal.of(() -> capacity(delivered, 1));
    assertTrue(message.contains("middle") && message.contains("line 10"), message);
  }

  private static double capacity(DeliveredTables delivered, int table) {
    return delivered.tables().get(table).capacityTable(Interpolation.LINEAR).capacityCubicMetres();
  }

  /** The check tables as they are, against the reader of the plain form. */
  @Test
  void agreesWithThePlainReaderOnTheCheckTables() {
    for (String letter : StrappingTables.LETTERS) {
      CapacityTable plain = StrappingTables.table(letter, Interpolation.LINEAR);
      StringBuilder ullage =
          new StringBuilder("# reference height: 25 m\n# decimal: point\nullage [m];volume [m3]\n");
      for (CapacityRow row : plain.rows()) {
        BigDecimal dip = new BigDecimal("25").subtract(BigDecimal.valueOf(row.heightMetres()));
        ullage.append(dip.toPlainString()).append(';');
        ullage.append(BigDecimal.valueOf(row.volumeCubicMetres()).toPlainString());
        ullage.append('\n');
      }

      CapacityTable read = one(ullage.toString());

      assertEquals(plain.size(), read.size());
      for (int i = 0; i < plain.size(); i++) {
        assertEquals(plain.rows().get(i).heightMetres(), read.rows().get(i).heightMetres(), 1e-14);
        assertEquals(
            plain.rows().get(i).volumeCubicMetres(), read.rows().get(i).volumeCubicMetres());
      }
    }
  }

  @Test
  void takesFromTheOptionsWhatTheFileDoesNotSay() {
    DeliveryOptions options =
        DeliveryOptions.none()
            .with(TableDeclaration.REFERENCE_HEIGHT, "3 m")
            .with(TableDeclaration.COLUMNS, "ullage [cm], volume [L]")
            .with(TableDeclaration.SEPARATOR, "semicolon")
            .with(TableDeclaration.DECIMAL, "comma")
            .with(TableDeclaration.GROUPING, "point");

    DeliveredTables delivered = DeliveredTables.read("100;1.355\n200;0,5\n", "f", options);

    assertEquals(List.of(), delivered.problems());
    CapacityTable table = delivered.tables().get(0).capacityTable(Interpolation.LINEAR);
    assertEquals(1, table.minHeightMetres(), 1e-15);
    assertEquals(1.355, table.capacityCubicMetres(), 1e-12);
  }

  @Test
  void refusesAnOptionThatTheFileContradicts() {
    DeliveryOptions options = DeliveryOptions.none().with(TableDeclaration.HEEL, "3 m3");
    List<TableProblem> problems =
        DeliveredTables.read("# heel: 2 m3\nheight [m];volume [m3]\n0;0\n1;1\n", "f", options)
            .problems();

    assertEquals(1, problems.size());
    assertEquals(1, problems.get(0).line());
    assertTrue(problems.get(0).rule().contains("differs from the option \"3 m3\""));
  }

  @Test
  void namesAnOptionThatIsNotUnderstoodAsLineZero() {
    DeliveryOptions options = DeliveryOptions.none().with(TableDeclaration.HEEL, "3 m");
    List<TableProblem> problems =
        DeliveredTables.read("height [m];volume [m3]\n0;0\n1;1\n", "f", options).problems();

    assertEquals(0, problems.get(0).line());
    assertTrue(problems.get(0).value().contains("option heel: 3 m"), problems::toString);
  }

  @Test
  void refusesOptionsThatBelongIntoTheFile() {
    Refusals.assertRefused(
        "DeliveryOptions.block", () -> DeliveryOptions.none().with(TableDeclaration.BLOCK, "main"));
    assertTrue(
        Refusal.of(() -> DeliveryOptions.none().with(TableDeclaration.HEEL, " "))
            .contains("DeliveryOptions.heel"));
  }

  /** Slips, each with the line and the rule that names it. The bar stands for a new line. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      value = {
        "# refrence height: 3 m|height [m];volume [m3]|0;0|1;1 @ 1 @ near to # reference height:",
        "ullage [m];volume [m3]|0;1|1;0 @ 1 @ no reference height",
        "# reference height: 3|ullage [m];volume [m3]|0;1|1;0 @ 1 @ has no unit",
        "height [m];volume|0;0|1;1 @ 1 @ is not a list of columns",
        "height [m];volume [kg]|0;0|1;1 @ 1 @ has no known unit",
        "height [m];height [m]|0;0|1;1 @ 1 @ pairs of one length and one volume",
        "part [m];volume [m3]|0;0|1;1 @ 1 @ has parts in a main block",
        "height [m];volume [m3]|0;0|1;1;1 @ 3 @ has 3 cells where 2 are needed",
        "height [m];volume [m3]|0;0|1; @ 3 @ is missing",
        "height [m];volume [m3]|0;0|1;3 m3 @ 3 @ is not a number",
        "height [in];volume [L]|0;0|1 3/10;3 @ 3 @ is not a number",
        "height [ft in];volume [L]|0 in;0|1 ft 14 in;3 @ 3 @ is not a dip in feet and inches",
        "height [m];volume [m3]|0;0|1;5|1;6 @ 4 @ repeats the height",
        "height [m];volume [m3]|0;0|1;5|2;4.5|3;9|4;15 @ 4 @ falls below the volume",
        "height [mm];volume [L]|0;0|1;1.355 @ 3 @ between thousands",
        "# decimal: dot|height [m];volume [m3]|0;0|1;1 @ 1 @ names no known mark",
        "height [m];volume [m3]|0;0|# heel: 1 m3|1;1 @ 3 @ stands below rows",
        "# heel: 1 m3|# heel: 1 m3|height [m];volume [m3]|0;0|1;1 @ 2 @ a second time",
        "# block: extra|height [m];volume [m3]|0;0|1;1 @ 1 @ is no kind of block",
        "# table:|height [m];volume [m3]|0;0|1;1 @ 1 @ names no table",
        "# from: 1 m|height [m];volume [m3]|0;0|1;1 @ 1 @ stands at no fraction block",
        "# columns: height [m] 1-4, volume [m3] 3-8|0;0|1;1 @ 1 @ rising and not overlapping",
        "# datum offset: -1 m|height [m];volume [m3]|0;0|2;2 @ 3 @ is negative",
        "# table: empty @ 1 @ holds no rows",
        "height [m];volume [m3]|0;0|1;1|# table: b @ 4 @ has no main block",
      })
  void namesTheLineAndTheRule(String text, int line, String rule) {
    List<TableProblem> problems = read(text.replace('|', '\n')).problems();

    assertTrue(
        problems.stream().anyMatch(p -> p.line() == line && p.rule().contains(rule)),
        problems::toString);
    problems.forEach(problem -> assertTrue(!problem.fix().isBlank(), problem::text));
  }

  @Test
  void namesPartsThatPassTheNextMainRow() {
    TableProblem problem =
        onlyProblem(
            """
            height [cm];volume [L]
            0;0
            1;100
            2;200
            # block: fraction
            part [mm];volume [L]
            5;50
            9;900
            """);

    assertEquals(8, problem.line());
    assertTrue(problem.rule().contains("beyond the volume 100.0"), problem::text);
    assertTrue(problem.rule().contains("lines 2 and 3"), problem::text);
  }

  @Test
  void namesPartsThatFallAndRangesThatOverlap() {
    TableProblem falls =
        onlyProblem(
            "height [cm];volume [L]\n0;0\n1;100\n# block: fraction\npart [mm];volume [L]\n5;50\n4;60\n");
    TableProblem overlaps =
        onlyProblem(
            """
            height [cm];volume [L]
            0;0
            10;100
            # block: fraction
            # to: 6 cm
            part [mm];volume [L]
            5;50
            # block: fraction
            # from: 5 cm
            part [mm];volume [L]
            5;50
            """);

    assertEquals(7, falls.line());
    assertTrue(falls.rule().contains("does not rise"));
    assertEquals(8, overlaps.line());
    assertTrue(overlaps.rule().contains("line 4"), overlaps::text);
  }

  @Test
  void namesPartsThatNoRowTakes() {
    String text =
        "height [cm];volume [L]\n0;0\n1;100\n# block: fraction\npart [cm];volume [L]\n0.5;50\n5;60\n";
    TableProblem tooLong = onlyProblem(text);
    TableProblem noRow =
        onlyProblem(
            text.replace("5;60\n", "")
                .replace("# block: fraction\n", "# block: fraction\n# from: 1 cm\n"));

    assertEquals(7, tooLong.line());
    assertTrue(tooLong.rule().contains("fits between no two main rows"), tooLong::text);
    assertEquals(7, noRow.line());
  }

  @Test
  void namesANumberTooLargeForAnything() {
    String digits = "9".repeat(400);
    TableProblem problem = onlyProblem("height [m];volume [m3]\n0;0\n1;" + digits + "\n2;3\n");

    assertEquals(3, problem.line());
    assertTrue(problem.rule().contains("not a finite number"), problem::text);
  }

  @Test
  void saysHowARefusedValueStandsInTheFile() {
    TableProblem problem =
        onlyProblem("# reference height: 2 m\nullage [m];volume [m3]\n0;9\n1;5\n2.5;1\n");

    assertEquals(5, problem.line());
    assertEquals("height -0.5 m (written as ullage 2.5)", problem.value());
  }

  @Test
  void namesWhatStandsOutsideTheColumns() {
    TableProblem problem =
        onlyProblem("# columns: height [m] 1-4, volume [m3] 6-7\n0    0\n1    1  page 3\n2    2\n");

    assertEquals(3, problem.line());
    assertEquals("page 3", problem.value());
  }

  @Test
  void anEmptyTextHoldsNoRows() {
    assertTrue(onlyProblem("").rule().contains("holds no rows"));
    assertTrue(onlyProblem("# just a comment\n").rule().contains("holds no rows"));
  }

  /** Damaged at random it is read or refused, never anything else, and a table is always sound. */
  @Test
  void damagedTextIsReadOrRefusedNeverAnythingElse() {
    String sound =
        """
        # table: a
        # reference height: 12 ft 3 in
        # decimal: comma
        ullage [in];volume [US gal]
        0;900,5
        1 1/2;850
        # block: fraction
        # from: 0 in
        # to: 9 in
        part [in];volume [US gal]
        1/16;1,5
        # block: main
        # columns: ullage [in] 1-4, volume [US gal] 6-12
           3  700
        """;
    String signs = "#:;,.\t [](-/)0179einmftlgaxV\n\"'";
    long seed = 99;
    Random random = new Random(seed);
    for (int i = 0; i < 3_000; i++) {
      StringBuilder text = new StringBuilder(sound);
      for (int damage = 0; damage < 1 + random.nextInt(5); damage++) {
        int at = random.nextInt(text.length());
        char sign = signs.charAt(random.nextInt(signs.length()));
        if (random.nextBoolean()) {
          text.setCharAt(at, sign);
        } else {
          text.delete(at, Math.min(text.length(), at + random.nextInt(12)));
        }
      }
      DeliveredTables delivered = read(text.toString());
      for (DeliveredTable table : delivered.tables()) {
        if (table.problems().isEmpty()) {
          assertTrue(table.capacityTable(Interpolation.LINEAR).size() >= 2, "seed " + seed);
        }
      }
    }
  }
}
