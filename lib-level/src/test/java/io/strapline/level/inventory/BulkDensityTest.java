package io.strapline.level.inventory;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.inventory.TabulatedDensity.Row;
import io.strapline.level.testing.Refusal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BulkDensityTest {

  private static final BulkDensity TABLE =
      BulkDensity.byDepth(List.of(new Row(0, 700), new Row(2, 740), new Row(10, 820)));

  @Test
  void interpolatesBetweenRowsAndHoldsTheLast() {
    assertEquals(700, TABLE.atSurface());
    assertEquals(720, TABLE.atDepth(1), 1e-12);
    assertEquals(740, TABLE.atDepth(2), 1e-12);
    assertEquals(780, TABLE.atDepth(6), 1e-12);
    assertEquals(820, TABLE.atDepth(10));
    assertEquals(820, TABLE.atDepth(1000));
    assertEquals(20, TABLE.gradientAtDepth(1), 1e-12);
    assertEquals(10, TABLE.gradientAtDepth(5), 1e-12);
    assertEquals(0, TABLE.gradientAtDepth(11));
    assertEquals(List.of(2.0, 10.0), TABLE.breakDepthsMetres());
  }

  @Test
  void aTableOfOneRowIsConstant() {
    BulkDensity one = BulkDensity.byDepth(List.of(new Row(0, 650)));
    assertEquals(650, one.atDepth(0));
    assertEquals(650, one.atDepth(7));
    assertEquals(0, one.gradientAtDepth(7));
  }

  // 1 - 1/e = 63.212 055 88 %.
  @Test
  void packingReaches63PercentAtItsDepthConstantAndAllFarBelow() {
    BulkDensity packing = BulkDensity.packing(600, 700, 4);
    assertEquals(600, packing.atSurface());
    assertEquals(663.212_055_88, packing.atDepth(4), 1e-8);
    assertEquals(700, packing.atDepth(400), 1e-9);
    assertEquals(25, packing.gradientAtDepth(0), 1e-12);
  }

  @Test
  void packingWithoutGainIsConstant() {
    BulkDensity packing = BulkDensity.packing(600, 600, 4);
    assertEquals(600, packing.atDepth(4));
    assertEquals(0, packing.gradientAtDepth(4));
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {
        Double.NaN,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY,
        -1,
        0,
        1.6,
        4.999,
        23_000.1
      })
  void refusesWhatIsNoDensity(double wrong) {
    assertRefused("ConstantDensity.value", () -> BulkDensity.constant(wrong));
    assertRefused("PackedDensity.surface", () -> BulkDensity.packing(wrong, 800, 3));
    assertRefused("PackedDensity.deep", () -> BulkDensity.packing(700, wrong, 3));
    assertRefused("TabulatedDensity.density", () -> new Row(0, wrong));
  }

  @ParameterizedTest
  @ValueSource(doubles = {5, 23_000})
  void acceptsBothEndsOfTheRange(double end) {
    assertEquals(end, BulkDensity.constant(end).atSurface());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1e-9})
  void refusesWhatIsNoDepth(double wrong) {
    assertRefused("TabulatedDensity.depth", () -> new Row(wrong, 700));
    assertRefused("BulkDensity.depth", () -> TABLE.atDepth(wrong));
    assertRefused("BulkDensity.depth", () -> BulkDensity.constant(700).atDepth(wrong));
    assertRefused("BulkDensity.depth", () -> BulkDensity.packing(700, 800, 3).atDepth(wrong));
    assertRefused("PackedDensity.depthConstant", () -> BulkDensity.packing(700, 800, wrong));
  }

  @Test
  void namesTheRowThatIsOutOfOrder() {
    assertRefused(
        "TabulatedDensity.row 3 depth",
        () -> BulkDensity.byDepth(List.of(new Row(0, 700), new Row(2, 710), new Row(2, 720))));
    assertRefused(
        "TabulatedDensity.row 2 density",
        () -> BulkDensity.byDepth(List.of(new Row(0, 700), new Row(2, 699))));
    assertRefused(
        "TabulatedDensity.row 1 depth", () -> BulkDensity.byDepth(List.of(new Row(0.5, 700))));
    assertRefused("TabulatedDensity.rows", () -> BulkDensity.byDepth(List.of()));
  }

  @Test
  void refusesPackingThatLoosensWithDepth() {
    String message = Refusal.of(() -> BulkDensity.packing(800, 700, 3));
    assertTrue(message.startsWith("PackedDensity.deep = 700.0 kg/m3"), message);
    assertTrue(message.endsWith("exchange the two"), message);
  }
}
