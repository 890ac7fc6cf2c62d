package io.strapline.level.loop;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.loop.RawCounts.Encoding;
import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class RawCountsTest {

  private static final RawCounts CARD = RawCounts.signed16(0, 27648);

  static List<CsvRow> currents() {
    return CsvRows.read(RawCountsTest.class, "ne43.csv");
  }

  // Raw counts 0..27648 (printed to 0.1 count) and volts across 250 ohm: columns of the band table.
  @ParameterizedTest
  @MethodSource("currents")
  void turnsCountsAndVoltsIntoTheCurrentOfTheBandTable(CsvRow row) {
    double current = row.number("current_mA");
    RawCounts counts = new RawCounts(Encoding.NUMBER, 0, 27648);

    assertEquals(current, counts.currentMilliamps(row.number("raw_0_27648")), 0.05 / 1728);
    assertEquals(
        current,
        RawCounts.ofVoltsAcross(250).currentMilliamps(row.number("volts_across_250_ohm")),
        1e-12);
    assertEquals(current, RawCounts.ofMicroamps().currentMilliamps(current * 1000), 1e-12);
    assertEquals(current, RawCounts.ofMilliamps().currentMilliamps(current), 1e-14);
  }

  @Test
  void isExactAtBothEnds() {
    for (RawCounts counts :
        List.of(CARD, RawCounts.signed16(20000, 4000), RawCounts.ofMilliamps())) {
      assertEquals(4, counts.currentMilliamps(counts.countAt4()));
      assertEquals(20, counts.currentMilliamps(counts.countAt20()));
    }
  }

  // Field case S1: 129 * 255 exceeds 32767; 16-bit arithmetic gave -31.
  @Test
  void scalesTheWholeSweepWithoutWrapping() {
    RawCounts counts = RawCounts.signed16(0, 1023);
    LoopRange range = LoopRange.ofLevel(0, 255);
    double before = Double.NEGATIVE_INFINITY;
    for (int raw = 0; raw <= 1023; raw++) {
      double value = range.valueMetres(counts.currentMilliamps(raw));
      assertTrue(value > before, "raw " + raw);
      before = value;
    }

    assertEquals(32.1554, range.valueMetres(counts.currentMilliamps(129)), 1e-4);
    assertEquals(0, range.valueMetres(counts.currentMilliamps(0)));
    assertEquals(255, range.valueMetres(counts.currentMilliamps(1023)));
  }

  // Integer division gave 0 for every raw value from 0 to 99.
  @Test
  void keepsTheFraction() {
    LoopRange range = LoopRange.ofLevel(0, 1);
    for (int raw = 0; raw <= 100; raw++) {
      double current = RawCounts.signed16(0, 100).currentMilliamps(raw);
      assertEquals(raw / 100.0, range.valueMetres(current), 1e-15);
    }
  }

  // 1015 on 8..1008 to 0..100: one platform gave 100, another 101; right is 100.7, over-range.
  @Test
  void neverClamps() {
    double current = RawCounts.signed16(8, 1008).currentMilliamps(1015);

    assertEquals(100.7, LoopRange.percentOfCurrent(current), 1e-12);
    assertEquals(LoopBand.OVER_RANGE, LoopLimits.NE43.classify(current));
  }

  // 3.8 mA is 778 of 4095 counts on a 0..20 mA card and -51 (rounded) on a 4..20 mA card.
  @Test
  void tellsCardsApartByTheCountAtFourAndAtTwenty() {
    double step = 20.0 / 4095;
    RawCounts fromZero = RawCounts.signed16(819, 4095);
    RawCounts liveZero = RawCounts.signed16(0, 4095);

    assertEquals(3.8, fromZero.currentMilliamps(778), step / 2);
    assertEquals(3.8, liveZero.currentMilliamps(-51), step / 2);
  }

  // 4-20 mA over 150 ohm is 0.6-3.0 V; 1.8 V is half of 0-5 A (here the value, not the loop).
  @Test
  void convertsVoltsOverAnyBurden() {
    double current = RawCounts.ofVoltsAcross(150).currentMilliamps(1.8);

    assertEquals(12, current, 1e-12);
    assertEquals(2.5, LoopRange.ofLevel(0, 5).valueMetres(current), 1e-12);
    assertEquals(4, RawCounts.ofVoltsAcross(150).currentMilliamps(0.6), 1e-12);
    assertEquals(20, RawCounts.ofVoltsAcross(150).currentMilliamps(3.0), 1e-12);
  }

  // An open loop on a card that reads a little below zero must be a low, not a high, fault.
  @ParameterizedTest
  @ValueSource(doubles = {-1, 65535, -6912, 65536 - 6912, -32768, 32768})
  void foldsANegativeCountHoweverTheSourceHandsIt(double raw) {
    assertEquals(
        LoopBand.FAILURE_LOW, LoopLimits.NE43.classify(signedCard().currentMilliamps(raw)));
  }

  private static RawCounts signedCard() {
    return RawCounts.signed16(5530, 27648);
  }

  @Test
  void foldsExactlyAtTheSignBit() {
    assertEquals(CARD.currentMilliamps(-32768), CARD.currentMilliamps(32768));
    assertEquals(CARD.currentMilliamps(-1), CARD.currentMilliamps(65535));
    assertTrue(CARD.currentMilliamps(32767) > 22);
  }

  @Test
  void keepsAWrappedUnsignedCountLarge() {
    double current = RawCounts.unsigned16(0, 27648).currentMilliamps(65535);

    assertEquals(LoopBand.FAILURE_HIGH, LoopLimits.NE43.classify(current));
    assertEquals(4 + 65535 / 1728.0, current, 1e-12);
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {
        -32769,
        65536,
        0.5,
        27648.5,
        1e300,
        Double.NaN,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY
      })
  void givesNoCurrentForWhatSixteenBitsCannotHold(double raw) {
    assertEquals(LoopBand.UNDEFINED, LoopLimits.NE43.classify(CARD.currentMilliamps(raw)));
    assertEquals(
        LoopBand.UNDEFINED,
        LoopLimits.NE43.classify(RawCounts.unsigned16(0, 27648).currentMilliamps(raw)));
  }

  @Test
  void givesNoCurrentForANegativeUnsignedCount() {
    assertEquals(Double.NaN, RawCounts.unsigned16(0, 27648).currentMilliamps(-1));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void givesNoCurrentForANumberThatIsNotFinite(double raw) {
    assertEquals(Double.NaN, RawCounts.ofMilliamps().currentMilliamps(raw));
  }

  @ParameterizedTest
  @EnumSource(Encoding.class)
  void refusesEqualCounts(Encoding encoding) {
    assertRefused("RawCounts.countAt20", () -> new RawCounts(encoding, 100, 100));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesCountsThatAreNotFinite(double wrong) {
    assertRefused("RawCounts.countAt4", () -> new RawCounts(Encoding.NUMBER, wrong, 1));
    assertRefused("RawCounts.countAt20", () -> new RawCounts(Encoding.NUMBER, 1, wrong));
    assertRefused("RawCounts.ohms", () -> RawCounts.ofVoltsAcross(wrong));
  }

  @Test
  void refusesCountsThatTheEncodingCannotHold() {
    assertRefused("RawCounts.countAt20", () -> RawCounts.signed16(0, 32768));
    assertRefused("RawCounts.countAt4", () -> RawCounts.signed16(-32769, 1));
    assertRefused("RawCounts.countAt4", () -> RawCounts.unsigned16(-1, 27648));
    assertRefused("RawCounts.countAt20", () -> RawCounts.unsigned16(0, 65536));
    assertEquals(20, RawCounts.signed16(-32768, 32767).currentMilliamps(32767));
    assertEquals(20, RawCounts.unsigned16(0, 65535).currentMilliamps(65535));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -250})
  void refusesABurdenThatIsNotPositive(double ohms) {
    assertRefused("RawCounts.ohms", () -> RawCounts.ofVoltsAcross(ohms));
  }
}
