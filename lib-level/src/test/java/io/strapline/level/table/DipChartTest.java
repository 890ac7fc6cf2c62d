package io.strapline.level.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.Refusal;
import io.strapline.level.testing.Refusals;
import io.strapline.level.units.LengthUnit;
import io.strapline.level.units.VolumeUnit;
import io.strapline.level.vessel.LyingCylinder;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DipChartTest {

  private static final CapacityTable TABLE =
      CapacityTable.read("height [in];volume [US gal]\n0;0\n1;40\n2;96\n3;160\n", "tank");

  private static DipChart chart(int parts) {
    return DipChart.of(
        TABLE, new DipChart.Form(LengthUnit.INCH, parts, VolumeUnit.US_GALLON, 1, 60));
  }

  private static List<String> cells(String line) {
    return List.of(line.strip().split(" +"));
  }

  /** By hand: straight lines between 0, 40, 96 and 160 gallons. */
  @Test
  void printsEveryFractionOfAnInch() {
    List<String> lines = chart(4).grid().lines().toList();

    assertTrue(lines.get(0).endsWith("in US gal"), lines.get(0));
    assertEquals(List.of("in", "0", "1/4", "1/2", "3/4"), cells(lines.get(1)));
    assertEquals(List.of("0", "0.0", "10.0", "20.0", "30.0"), cells(lines.get(2)));
    assertEquals(List.of("1", "40.0", "54.0", "68.0", "82.0"), cells(lines.get(3)));
    assertEquals(List.of("2", "96.0", "112.0", "128.0", "144.0"), cells(lines.get(4)));
    assertEquals(List.of("3", "160.0", "-", "-", "-"), cells(lines.get(5)));
    assertEquals(6, lines.size());
  }

  @Test
  void printsWhatEachPartAdds() {
    List<String> lines = chart(16).withParts().lines().toList();

    assertEquals(List.of("in", "volume", "per", "1/16"), cells(lines.get(1)));
    assertEquals(List.of("0", "0.0", "2.50"), cells(lines.get(2)));
    assertEquals(List.of("1", "40.0", "3.50"), cells(lines.get(3)));
    assertEquals(List.of("3", "160.0", "-"), cells(lines.get(5)));
    assertTrue(lines.get(6).startsWith("volume plus parts is right to 0.0"), lines.get(6));
  }

  /** In a lying tank the parts bend; the chart says how far a worker's sum may be off. */
  @Test
  void statesHowFarSumsOfPartsMayBeOff() {
    LyingCylinder tank = new LyingCylinder(2, 5);
    DipChart chart =
        DipChart.of(tank, new DipChart.Form(LengthUnit.INCH, 8, VolumeUnit.LITRE, 0, 100));
    List<String> lines = chart.withParts().lines().toList();
    double greatest = 0;
    for (String line : lines.subList(2, lines.size() - 1)) {
      List<String> cells = cells(line);
      if (!cells.get(2).equals("-")) {
        for (int part = 0; part < 8; part++) {
          double sum = Double.parseDouble(cells.get(1)) + part * Double.parseDouble(cells.get(2));
          double height = (Integer.parseInt(cells.get(0)) + part / 8.0) * 0.0254;
          greatest = Math.max(greatest, Math.abs(sum - 1000 * tank.volumeCubicMetres(height)));
        }
      }
    }
    assertEquals(greatest, chart.greatestPartError(), 1e-6);
    assertTrue(greatest > 0.5, "the bend near the bottom must show");
  }

  @Test
  void reachesTheTopAndBeginsPagesAnew() {
    LyingCylinder tank = new LyingCylinder(2, 5);
    String text =
        DipChart.of(tank, new DipChart.Form(LengthUnit.CENTIMETRE, 10, VolumeUnit.LITRE, 1, 50))
            .grid();

    // 201 rows, five pages of a title and a heading.
    assertEquals(201 + 5 * 2, text.lines().count());
    assertEquals(4, text.chars().filter(c -> c == '\f').count());
    assertTrue(text.contains(" 200") && text.contains("0.9"));
    String last = text.lines().reduce((a, b) -> b).orElseThrow();
    assertEquals(15708.0, Double.parseDouble(cells(last).get(1)), 0.05);
  }

  @Test
  void leavesDashesInTheHeel() {
    CapacityTable heel = CapacityTable.read("height [cm];volume [L]\n2;10\n4;30\n", "heel");
    List<String> lines =
        DipChart.of(heel, new DipChart.Form(LengthUnit.CENTIMETRE, 2, VolumeUnit.LITRE, 0, 60))
            .withParts()
            .lines()
            .toList();

    assertEquals(List.of("1", "-", "-"), cells(lines.get(3)));
    assertEquals(List.of("2", "10", "5.0"), cells(lines.get(4)));
  }

  /** By hand: 1 7/8 in of the table is 40 + 7/8 of 56 US gallons. */
  @Test
  void looksUpAFractionOfAnInch() {
    DipVolume dip = DipVolume.of(TABLE, "1 7/8 in");

    assertEquals(89 * 231 * Math.pow(0.0254, 3), dip.volumeCubicMetres(), 1e-12);
    assertTrue(dip.covered());
    assertFalse(DipVolume.of(TABLE, "0 ft 3 1/16 in").covered());
    assertTrue(Refusal.of(() -> DipVolume.of(TABLE, "3 1/3 in")).contains("denominator"));
    assertTrue(Refusal.of(() -> DipVolume.of(TABLE, "3")).contains("no unit"));
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 0, 3, 6, 7, 9, 32, 100})
  void refusesPartsThatNoTapeHas(int bad) {
    Refusals.assertRefused("DipChart.parts", () -> chart(bad));
  }

  @Test
  void refusesFormsThatCannotBePrinted() {
    Refusals.assertRefused(
        "DipChart.decimals", () -> new DipChart.Form(LengthUnit.INCH, 8, VolumeUnit.LITRE, 7, 60));
    Refusals.assertRefused(
        "DipChart.decimals", () -> new DipChart.Form(LengthUnit.INCH, 8, VolumeUnit.LITRE, -1, 60));
    Refusals.assertRefused(
        "DipChart.rowsPerPage",
        () -> new DipChart.Form(LengthUnit.INCH, 8, VolumeUnit.LITRE, 0, 4));
    Refusals.assertRefused(
        "DipChart.rows",
        () ->
            DipChart.of(
                new LyingCylinder(100, 5),
                new DipChart.Form(LengthUnit.MILLIMETRE, 1, VolumeUnit.LITRE, 0, 60)));
  }
}
