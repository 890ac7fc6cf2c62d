package io.strapline.level.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import org.junit.jupiter.params.provider.ValueSource;

class CapacityTableCheckTest {

  static final List<String> LETTERS = StrappingTables.LETTERS;

  @ParameterizedTest
  @FieldSource("LETTERS")
  void acceptsEveryTableOfTheCheckFile(String letter) {
    assertEquals(List.of(), CapacityTable.check(StrappingTables.rows(letter)));
  }

  // Shapes that a careless rule for jumps would refuse.
  @Test
  void acceptsTheTablesOfRealVessels() {
    assertSound("cone", table(20, h -> h * h * h));
    assertSound("sphere", table(20, h -> h * h * (30 - h)));
    assertSound("cone below a shell", table(20, h -> h < 5 ? h * h * h : 125 + 75 * (h - 5)));
    assertSound("sump below a tank", rows(0, 0, 0.3, 0.05, 0.6, 8, 1, 18, 2, 44));
    assertSound("one row for the whole shell", rows(0, 0, 0.3, 0.05, 2.3, 20, 2.6, 20.05));
    assertSound("neck on top", rows(0, 0, 1, 50, 2, 100, 3, 150, 4, 200, 6, 200.1));
    assertSound(
        "fine dishes around a shell",
        rows(0, 0, 0.01, 0.1, 0.02, 0.3, 5, 200, 5.01, 200.2, 5.02, 200.3));
    assertSound("rounded to whole cubic metres", table(100, h -> Math.rint(h * h / 80)));
    assertSound("shelf", rows(0, 0, 1, 10, 2, 10, 3, 20, 4, 20, 5, 30, 6, 30));
    assertSound("heel in the first step", rows(0, 0, 0.1, 50, 0.2, 52, 0.3, 54, 0.4, 56));
  }

  // Repeated levels gave NaN, or "expect a sorted array" for [0, 1, 1, 2].
  @Test
  void namesARepeatedHeight() {
    assertEquals(
        List.of("line 3: height 1.0 m: repeats the height of line 2; remove one of the two rows"),
        texts(rows(0, 0, 1, 10, 1, 11, 2, 20)));
  }

  @Test
  void namesAFallingHeightAndAFallingVolume() {
    assertEquals(
        List.of(
            "line 3: height 0.5 m: falls below the height of line 2 (1.0);"
                + " correct the height or move the row to its place",
            "line 5: volume 19.0 m3: falls below the volume of line 4 (20.0); correct the volume"),
        texts(rows(0, 0, 1, 10, 0.5, 11, 2, 20, 3, 19, 4, 40)));
  }

  // 20,33 read as 2033: the one row is named, not all that follow it.
  @Test
  void namesAVolumeWhoseDecimalMarkWasLost() {
    List<CapacityRow> rows = new ArrayList<>(table(40, h -> 1.07 * h));
    rows.set(19, new CapacityRow(20, 19, 2033));

    assertEquals(List.of(20), lines(rows));
    assertTrue(texts(rows).get(0).contains("volume 2033.0 m3: exceeds the volume"));
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 10, 20, 39})
  void namesTheRowFromWhichDecimalMarksWereLost(int from) {
    List<CapacityRow> rows = new ArrayList<>();
    for (CapacityRow row : table(40, h -> 10 + 0.07 * h + h * h / 40)) {
      double factor = row.line() > from ? 100 : 1;
      rows.add(new CapacityRow(row.line(), row.heightMetres(), factor * row.volumeCubicMetres()));
    }

    assertEquals(List.of(from + 1), lines(rows));
  }

  @ParameterizedTest
  @ValueSource(ints = {6, 10, 20, 39})
  void namesTheRowFromWhichHeightsLostTheirMark(int from) {
    List<CapacityRow> rows = new ArrayList<>();
    for (CapacityRow row : table(40, h -> 7 * h)) {
      double factor = row.line() > from ? 100 : 1;
      rows.add(new CapacityRow(row.line(), factor * row.heightMetres(), row.volumeCubicMetres()));
    }

    assertEquals(List.of(from + 1), lines(rows));
  }

  @Test
  void namesALastRowOutOfLine() {
    assertEquals(List.of(6), lines(rows(0, 0, 1, 5, 2, 10, 3, 15, 4, 20, 5, 2533)));
    assertEquals(List.of(6), lines(rows(0, 0, 1, 5, 2, 10, 3, 15, 4, 20, 500, 25)));
  }

  @Test
  void acceptsASteepStepOnceARowBetweenConfirmsIt() {
    assertEquals(List.of(4), lines(rows(0, 0, 1, 1, 2, 2, 3, 22, 4, 23, 5, 24)));
    assertSound("confirmed", rows(0, 0, 1, 1, 2, 2, 2.5, 12, 3, 22, 4, 23, 5, 24));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -0.1})
  void namesNumbersThatAreNegativeOrNotFinite(double wrong) {
    assertEquals(List.of(2), lines(rows(0, 0, wrong, 1, 2, 2)));
    assertEquals(List.of(2), lines(rows(0, 0, 1, wrong, 2, 2)));
  }

  @Test
  void judgesBothSidesOfEachLimit() {
    assertSound("greatest", rows(0, 0, 1e4, 1e9));
    assertEquals(List.of(2), lines(rows(0, 0, Math.nextUp(1e4), 1)));
    assertEquals(List.of(2), lines(rows(0, 0, 1, Math.nextUp(1e9))));
    assertSound("negative zero", rows(-0.0, -0.0, 1, 1));
    assertSound("a nanometre", rows(0, 0, 1e-9, 1));
    assertEquals(List.of(2), lines(rows(0, 0, 0.9e-9, 1)));
  }

  @Test
  void wantsTwoRowsAndAVolume() {
    assertEquals(1, CapacityTable.check(List.of()).size());
    assertEquals(List.of(1), lines(rows(0, 0)));
    assertEquals(List.of(2), lines(rows(0, 0, 1, 0)));
    assertSound("smallest", rows(0, 0, 1, Double.MIN_VALUE));
  }

  @Test
  void refusesMoreRowsThanItCanJudge() {
    assertSound("most", table(50_000, h -> h / 1000));
    assertEquals(1, CapacityTable.check(table(50_001, h -> h / 1000)).size());
  }

  @Test
  void namesEveryBadRowAtOnce() {
    List<CapacityRow> rows = rows(0, 0, 1, Double.NaN, 2, -2, 3, 3, 3, 3, 5, 1, 6, 6, 6.5, 7);

    assertEquals(List.of(2, 3, 5, 6), lines(rows));
    CapacityTableException refusal =
        assertThrows(
            CapacityTableException.class,
            () -> CapacityTable.of("sump.csv", rows, Interpolation.LINEAR));
    assertEquals(CapacityTable.check(rows), refusal.problems());
    String message = Refusal.of(() -> CapacityTable.of("sump.csv", rows, Interpolation.LINEAR));
    assertTrue(message.startsWith("capacity table sump.csv, 4 problems:\n  line 2: "), message);
    assertEquals(5, message.lines().count(), message);
  }

  // Whatever is wrong, leaving out the named rows leaves no row out of order.
  @Test
  void leavesATableInOrderWhenTheNamedRowsAreLeftOut() {
    long seed = 512;
    Random random = new Random(seed);
    for (int round = 0; round < 300; round++) {
      List<CapacityRow> rows = new ArrayList<>();
      for (int i = 1; i <= 30; i++) {
        boolean wild = random.nextInt(5) == 0;
        rows.add(
            new CapacityRow(
                i, wild ? random.nextInt(30) : i, random.nextInt(8) == 0 ? random.nextInt(30) : i));
      }
      List<Integer> named = lines(rows);
      List<CapacityRow> kept = rows.stream().filter(row -> !named.contains(row.line())).toList();
      for (int i = 1; i < kept.size(); i++) {
        String where = "seed " + seed + " round " + round + " " + kept.get(i);
        assertTrue(kept.get(i).heightMetres() > kept.get(i - 1).heightMetres(), where);
        assertTrue(kept.get(i).volumeCubicMetres() >= kept.get(i - 1).volumeCubicMetres(), where);
      }
    }
  }

  private static void assertSound(String what, List<CapacityRow> rows) {
    assertEquals(List.of(), texts(rows), what);
  }

  private static List<String> texts(List<CapacityRow> rows) {
    return CapacityTable.check(rows).stream().map(TableProblem::text).toList();
  }

  private static List<Integer> lines(List<CapacityRow> rows) {
    return CapacityTable.check(rows).stream().map(TableProblem::line).toList();
  }

  private static List<CapacityRow> table(int size, DoubleUnaryOperator volume) {
    List<CapacityRow> rows = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      rows.add(new CapacityRow(i + 1, i * 0.1, volume.applyAsDouble(i)));
    }
    return rows;
  }

  private static List<CapacityRow> rows(double... pairs) {
    List<CapacityRow> rows = new ArrayList<>();
    for (int i = 0; i < pairs.length; i += 2) {
      rows.add(new CapacityRow(i / 2 + 1, pairs[i], pairs[i + 1]));
    }
    return rows;
  }
}
