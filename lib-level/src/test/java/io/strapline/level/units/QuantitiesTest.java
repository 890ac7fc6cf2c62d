package io.strapline.level.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.Refusal;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantitiesTest {

  private static final double INCH = 0.0254;

  private static String refusal(String text, Dimension dimension) {
    return Refusal.of(() -> Quantities.parse(text, dimension));
  }

  @ParameterizedTest
  @CsvSource({
    "6 m, LENGTH, 6",
    "6m, LENGTH, 6",
    "'  6   m ', LENGTH, 6",
    "-1.5 m, LENGTH, -1.5",
    "+1.5 m, LENGTH, 1.5",
    "250 mm, LENGTH, 0.25",
    "1.5e3 mm, LENGTH, 1.5",
    "20 ft, LENGTH, 6.096",
    "20.5 ft, LENGTH, 6.2484",
    "1.35 t/m3, DENSITY, 1350",
    "1.35 t/m³, DENSITY, 1350",
    "120 t/h, MASS_FLOW, 33.333333333333336",
    "12.0mA, CURRENT, 12",
    "0.012 A, CURRENT, 12",
    "250 ohm, RESISTANCE, 250",
    "250 Ω, RESISTANCE, 250",
    "24 V, VOLTAGE, 24",
    "45 deg, ANGLE, 45",
    "45°, ANGLE, 45",
    "25 degC, TEMPERATURE, 25",
    "-40 °F, TEMPERATURE, -40",
    "5 %, RATIO, 5",
    "5%, RATIO, 5",
    "90 s, TIME, 90",
    "2 min, TIME, 120",
    "3 m3, VOLUME, 3",
    "3 m³, VOLUME, 3",
    "1000 L, VOLUME, 1",
    "1000 l, VOLUME, 1",
    "0.5 m/min, SPEED, 0.008333333333333333",
    "10 US gal/min, VOLUME_FLOW, 0.000630901964",
  })
  void readsNumberAndUnit(String text, Dimension dimension, double si) {
    assertEquals(si, Quantities.parse(text, dimension), Math.ulp(si), text);
  }

  /** Blanks that typesetting brings, the minus sign proper, primes, both micro signs. */
  @Test
  void readsTheCharactersThatDocumentsBring() {
    assertEquals(6, Quantities.parse("6\u00A0m", Dimension.LENGTH));
    assertEquals(-1.5, Quantities.parse("\u22121.5 m", Dimension.LENGTH));
    assertEquals(222 * INCH, Quantities.parse("18\u2032 6\u2033", Dimension.LENGTH), 1e-15);
    assertEquals(0.5, Quantities.parse("500 \u03BCA", Dimension.CURRENT));
    assertEquals(0.5, Quantities.parse("500 \u00B5A", Dimension.CURRENT));
  }

  /** Inches by hand: feet times twelve, plus inches; 0.0254 m each. */
  @ParameterizedTest
  @CsvSource({
    "7 ft 4 1/2 in, 88.5",
    "7 ft 4-1/2 in, 88.5",
    "7ft 4in, 88",
    "18' 6\", 222",
    "18'6\", 222",
    "18'-6\", 222",
    "18', 216",
    "6\", 6",
    "6 in, 6",
    "6.25 in, 6.25",
    "1/16 in, 0.0625",
    "3 15/16 in, 3.9375",
    "7 ft 1/2 in, 84.5",
    "7 ft 0 1/2 in, 84.5",
    "7 ft 11 127/128 in, 95.9921875",
    "7 ft 4.5 in, 88.5",
    "-7 ft 4 1/2 in, -88.5",
    "-0 ft 0 1/16 in, -0.0625",
    "0 ft 0 in, 0",
  })
  void readsFeetInchesAndFractions(String text, double inches) {
    assertEquals(inches * INCH, Quantities.parse(text, Dimension.LENGTH), 1e-15, text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "7 ft 12 in; carry them into the feet",
        "7 ft 11 16/16 in; carry it into the inches",
        "7 ft 4 3/2 in; carry it into the inches",
        "7 ft 4 1/3 in; denominator",
        "7 ft 4 1/10 in; denominator",
        "7 ft 4 1/0 in; denominator",
        "7 ft 4 1/256 in; denominator",
        "7.5 ft 4 in; decimal feet",
        "7 ft 4.5 1/2 in; decimal inches",
        "7 ft -4 in; no known unit",
        "7 ft - 4 in; no known unit",
        "7 ft -4 1/2; no known unit",
        "7 ft 4 1/2; no known unit",
        "7 ft 4; no known unit",
        "4 in 7 ft; no known unit",
      })
  void refusesFeetAndInchesThatDoNotAddUp(String text, String reason) {
    String message = refusal(text, Dimension.LENGTH);
    assertTrue(message.contains(text) && message.contains(reason), message);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "1,5 m; comma, which may be a decimal or a thousands separator",
        "1.355,90 m; decimal point",
        "9,99 m; comma",
        "6; has no unit; a length is needed, in one of: m, mm, cm, km, in, ft, yd",
        "NaN m; does not start with a number",
        "Infinity m; does not start with a number",
        "-Infinity m; does not start with a number",
        "0x1p3 m; 'x1p3 m' is no known unit",
        "1e999 m; too large or too small",
        "1e-999 m; too large or too small",
        "1e308 km; too large",
        "1e99999 m; too large or too small",
        ".5 m; such as 0.5",
        "5. m; no known unit",
        "6 m deep; 'm deep' is no known unit",
        "6 m 5; no known unit",
        "1 000 m; no known unit",
        "1_000 m; no known unit",
        "1'000 m; no known unit",
        "6 d m; no known unit",
        "6 furlong; 'furlong' is no known unit; a length is needed",
        "6 M; write 'm' for 'M'",
        "6 Ft; write 'ft' for 'Ft'",
        "m; does not start with a number",
        "--6 m; does not start with a number",
        "6 kg; is a mass; a length is needed",
        "6 mA; is a current; a length is needed",
      })
  void refusesWhatIsNotAPlainLength(String text, String reason) {
    String message = refusal(text, Dimension.LENGTH);
    assertTrue(message.contains(text) && message.contains(reason), message);
  }

  @Test
  void refusesALengthWhereAVolumeIsNeeded() {
    String message = refusal("18' 6\"", Dimension.VOLUME);
    assertTrue(message.contains("is a length; a volume is needed"), message);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "\t"})
  void refusesAnEmptyTextAndNamesTheUnits(String text) {
    String message = refusal(text, Dimension.LENGTH);
    assertTrue(message.contains("is empty") && message.contains("mm"), message);
  }

  /** Gallons, barrels and tons of different sizes are the classic wrong total. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "500 gal; VOLUME; 'US gal'",
        "500 gal; VOLUME; 'imp gal'",
        "500 gallons; VOLUME; 'imp gal'",
        "500 bbl; VOLUME; 'oil bbl'",
        "500 barrel; VOLUME; 'oil bbl'",
        "50 gal/min; VOLUME_FLOW; 'US gal'",
        "50 gpm; VOLUME_FLOW; 'US gal'",
        "50 bbl/d; VOLUME_FLOW; 'oil bbl'",
        "50 ton; MASS; 'short ton'",
        "50 ton; MASS; 'long ton'",
        "50 tons; MASS; 't'",
        "50 ton/h; MASS_FLOW; 'short ton'",
        "50 tph; MASS_FLOW; 'long ton'",
      })
  void refusesBareGallonsBarrelsAndTonsNamingTheChoices(
      String text, Dimension dimension, String choice) {
    String message = refusal(text, dimension);
    assertTrue(message.contains("several units") && message.contains(choice), message);
  }

  /** 42 US gallons: NIST Handbook 44, appendix C; litres from the exact definitions. */
  @Test
  void gallonsAndBarrelsAreThoseTheirNamesSay() {
    assertEquals(0.158987294928, Quantities.parse("1 oil bbl", Dimension.VOLUME), 1e-17);
    assertEquals(0.158987294928, Quantities.parse("42 US gal", Dimension.VOLUME), 1e-16);
    assertEquals(0.00454609, Quantities.parse("1 imp gal", Dimension.VOLUME), 1e-18);
  }

  @Test
  void readsAUnitAlone() {
    assertSame(VolumeUnit.CUBIC_METRE, Quantities.unit("m³", Dimension.VOLUME));
    assertSame(VolumeUnit.CUBIC_METRE, Quantities.unit(" m3 ", Dimension.VOLUME));
    assertSame(VolumeUnit.US_GALLON, Quantities.unit("US gal", Dimension.VOLUME));
    assertSame(LengthUnit.INCH, Quantities.unit("in", Dimension.LENGTH));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "gal", "m", "3 m3", "M3", "m3,"})
  void refusesAUnitThatIsNoVolume(String text) {
    assertThrows(
        IllegalArgumentException.class, () -> Quantities.unit(text, Dimension.VOLUME), text);
  }

  @ParameterizedTest
  @CsvSource({
    "6, METRE, 2, 6.00 m",
    "6.005, METRE, 2, 6.01 m",
    "-6.005, METRE, 2, -6.01 m",
    "-0.001, METRE, 2, 0.00 m",
    "0.25, MILLIMETRE, 0, 250 mm",
    "1e9, METRE, 0, 1000000000 m",
  })
  void writesFixedDecimals(double si, LengthUnit unit, int decimals, String text) {
    assertEquals(text, Quantities.format(si, unit, decimals));
  }

  @Test
  void writesTheProperSymbol() {
    assertEquals("12.5 m³", Quantities.format(12.5, VolumeUnit.CUBIC_METRE, 1));
    assertEquals("25 °C", Quantities.format(25, TemperatureUnit.DEGREE_CELSIUS, 0));
    assertEquals("25 °C", Quantities.format(25, TemperatureUnit.DEGREE_CELSIUS, 0));
    assertEquals("m3", VolumeUnit.CUBIC_METRE.asciiSymbol());
    assertEquals("L", VolumeUnit.LITRE.asciiSymbol());
  }

  @Test
  void refusesToWriteWhatIsNoNumber() {
    for (double bad :
        new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
      assertThrows(
          IllegalArgumentException.class, () -> Quantities.format(bad, LengthUnit.METRE, 2));
      assertThrows(IllegalArgumentException.class, () -> Quantities.formatFeetInches(bad, 16));
    }
    for (int bad : new int[] {-1, 16}) {
      assertThrows(
          IllegalArgumentException.class, () -> Quantities.format(1, LengthUnit.METRE, bad));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {-16, 0, 3, 10, 12, 129, 256})
  void refusesToWriteInFractionsNoRuleHas(int denominator) {
    assertThrows(IllegalArgumentException.class, () -> Quantities.formatFeetInches(1, denominator));
  }

  /** The carry from the last sixteenth into inch and foot is where such writers go wrong. */
  @ParameterizedTest
  @CsvSource({
    "0, 16, 0 ft 0 in",
    "88.5, 16, 7 ft 4 1/2 in",
    "88.5, 1, 7 ft 5 in",
    "11.96, 16, 0 ft 11 15/16 in",
    "11.97, 16, 1 ft 0 in",
    "23.99, 16, 2 ft 0 in",
    "3.99, 16, 0 ft 4 in",
    "0.0625, 16, 0 ft 0 1/16 in",
    "0.03, 16, 0 ft 0 in",
    "-0.03, 16, 0 ft 0 in",
    "-88.5, 16, -7 ft 4 1/2 in",
    "-11.97, 16, -1 ft 0 in",
    "0.5, 64, 0 ft 0 1/2 in",
  })
  void writesFeetAndInchesWithCarry(double inches, int denominator, String text) {
    assertEquals(text, Quantities.formatFeetInches(inches * INCH, denominator));
  }

  /** A chart of 40 ft in sixteenths has 7681 entries. */
  @Test
  void everySixteenthOfFortyFeetComesBackExactly() {
    int count = 0;
    for (int sixteenths = 0; sixteenths <= 40 * 12 * 16; sixteenths++) {
      double metres = LengthUnit.INCH.toSi(sixteenths / 16.0);
      String text = Quantities.formatFeetInches(metres, 16);
      assertEquals(metres, Quantities.parse(text, Dimension.LENGTH), text);
      count++;
    }
    assertEquals(7681, count);
  }

  @Test
  void whatIsWrittenIsReadBackInEveryUnit() {
    long seed = 20_240_611;
    Random random = new Random(seed);
    for (Dimension dimension : Dimension.values()) {
      for (Unit unit : Quantities.units(dimension)) {
        double value = Math.round(random.nextDouble(-1e6, 1e6)) / 1000.0;
        String text = Quantities.format(unit.toSi(value), unit, 3);
        double back = unit.fromSi(Quantities.parse(text, dimension));
        assertEquals(value, back, 1e-9, text + ", seed " + seed);
      }
    }
  }

  /** Whatever the text: a finite number or a refusal that quotes it, never another exception. */
  @Test
  void noTextBreaksTheReader() {
    long seed = 7_681;
    Random random = new Random(seed);
    String alphabet = "0123456789.,-+/'\" eEmftin%gal³°\u00A0";
    for (int i = 0; i < 20_000; i++) {
      StringBuilder text = new StringBuilder();
      int length = random.nextInt(12);
      for (int j = 0; j < length; j++) {
        text.append(alphabet.charAt(random.nextInt(alphabet.length())));
      }
      String trial = text.toString();
      try {
        assertTrue(Double.isFinite(Quantities.parse(trial, Dimension.LENGTH)), trial);
      } catch (IllegalArgumentException refused) {
        assertTrue(String.valueOf(refused.getMessage()).length() > 20, trial + ", seed " + seed);
        assertSame(IllegalArgumentException.class, refused.getClass(), trial + ", seed " + seed);
      }
    }
  }
}
