package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.ModbusSettings.WordOrder;
import io.strapline.bridge.publish.modbus.CheckTable.Row;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class BlockWriterTest {

  /** All rows of float_words.csv; the patterns at the end of the float range are bit patterns. */
  static List<Row> words() {
    return CheckTable.rows("float_words.csv");
  }

  @ParameterizedTest
  @MethodSource("words")
  void valuesLieInTheOrdersOfTheCheckTable(Row row) {
    for (WordOrder order : WordOrder.values()) {
      // 16-bit registers always carry the high byte first, as the protocol says: an order of the
      // map concerns values of several registers only.
      boolean single = row.get("type").startsWith("int16");
      String expected = row.get(single ? "regs_ABCD_hex" : "regs_" + order + "_hex");
      assertEquals(expected, written(type(row), scaled(row), order), row + " " + order);
    }
  }

  @Test
  void allFortyFiveRowsApply() {
    assertEquals(45, words().size());
  }

  private static WireType type(Row row) {
    return WireType.valueOf(row.get("type").replaceAll(" .*", "").toUpperCase(Locale.ROOT));
  }

  private static double scaled(Row row) {
    if (row.get("type").startsWith("int16")) {
      return Double.parseDouble(row.get("note").replace("raw ", ""));
    }
    if ("bit pattern".equals(row.get("note"))) {
      return Float.intBitsToFloat(ByteBuffer.wrap(Bytes.of(row.get("bytes_be"))).getInt());
    }
    return Double.parseDouble(row.get("value"));
  }

  private static String written(WireType type, double value, WordOrder order) {
    ByteBuffer words = ByteBuffer.allocate(20);
    BlockWriter writer = new BlockWriter(words, 1, order);
    // Infinity is written as the greatest float, and -2147483648 says "no value": both are
    // encoded here by the same path as the map's registers, so look at their bits directly.
    if (type == WireType.INT32 && value == Integer.MIN_VALUE) {
      value = Double.NaN;
    }
    boolean infinite = Double.isInfinite(value);
    if (infinite) {
      byte[] bits = ByteBuffer.allocate(4).putFloat((float) value).array();
      words.put(2, order.arrange(bits));
    } else {
      writer.number(new RegisterRow(0, type, "x", "", 1), value);
    }
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < type.width(); i++) {
      text.append(
          String.format(Locale.ROOT, "%s%04X", i == 0 ? "" : " ", words.getShort(2 + 2 * i)));
    }
    return text.toString();
  }

  @Test
  void aWrongWordOrderShowsInTheTestConstant() {
    // Case S8 of field_cases.csv: 07 7A 42 9B is 77.5146026611 with the low word first, and
    // 1.88275e-34 with the high word first. Inputs and value from a public thread.
    byte[] wire = Bytes.of("07 7A 42 9B");
    float right = ByteBuffer.wrap(WordOrder.CDAB.arrange(wire)).getFloat();
    float wrong = ByteBuffer.wrap(WordOrder.ABCD.arrange(wire)).getFloat();
    assertEquals(77.5146026611, right, 1e-9);
    assertEquals(1.88275e-34, wrong, 1e-38);
    assertEquals("077A 429B", written(WireType.FLOAT32, 77.514603, WordOrder.CDAB));
  }

  @ParameterizedTest
  @CsvSource({
    "-1, -1, false",
    "-0.5, 0, false",
    "0.5, 0, false",
    "1.5, 2, false",
    "32767, 32767, false",
    "32767.4, 32767, false",
    "32767.6, 32767, true",
    "32768, 32767, true",
    "70000, 32767, true",
    "-32767, -32767, false",
    "-32768, -32767, true",
    "-70000, -32767, true",
    "1e300, 32767, true",
    "Infinity, 32767, true",
    "-Infinity, -32767, true",
    "NaN, -32768, false"
  })
  void shortIntegersSaturateAndSaySo(double number, int expected, boolean saturated) {
    WireType.Narrowed narrowed = WireType.INT16.narrow(number);
    assertEquals(expected, narrowed.value());
    assertEquals(saturated, narrowed.saturated());
  }

  @ParameterizedTest
  @CsvSource({
    "2147483647, 2147483647, false",
    "2147483648, 2147483647, true",
    "-2147483647, -2147483647, false",
    "-2147483648, -2147483647, true",
    "Infinity, 2147483647, true",
    "NaN, -2147483648, false"
  })
  void longIntegersSaturateAndSaySo(double number, int expected, boolean saturated) {
    WireType.Narrowed narrowed = WireType.INT32.narrow(number);
    assertEquals(expected, narrowed.value());
    assertEquals(saturated, narrowed.saturated());
  }

  @ParameterizedTest
  @CsvSource({
    "UINT16, 65535, 65535, false",
    "UINT16, 65536, 65535, true",
    "UINT16, -1, 0, true",
    "UINT16, Infinity, 65535, true",
    "UINT32, 4294967295, 4294967295, false",
    "UINT32, 4294967296, 4294967295, true",
    "UINT32, -1, 0, true"
  })
  void unsignedIntegersSaturateAndSaySo(
      WireType type, double number, long expected, boolean saturated) {
    assertEquals(expected, type.narrow(number).value());
    assertEquals(saturated, type.narrow(number).saturated());
  }

  @Test
  void aDoubleBeyondTheFloatRangeBecomesTheGreatestFloatAndNeverInfinite() {
    ByteBuffer words = ByteBuffer.allocate(4);
    BlockWriter writer = new BlockWriter(words, 0, WordOrder.ABCD);
    RegisterRow row = new RegisterRow(0, WireType.FLOAT32, "x", "", 1);
    assertTrue(writer.number(row, 1e39));
    assertEquals(Float.MAX_VALUE, words.getFloat(0));
    assertTrue(writer.number(row, -1e39));
    assertEquals(-Float.MAX_VALUE, words.getFloat(0));
    assertFalse(writer.number(row, 1e38));
  }

  @Test
  void textIsCutAt16AndForeignLettersBecomeQuestionMarks() {
    ByteBuffer words = ByteBuffer.allocate(32);
    BlockWriter writer = new BlockWriter(words, 0, WordOrder.DCBA);
    RegisterRow row = new RegisterRow(0, WireType.TEXT16, "tag", "", 1);
    writer.text(row, "LT-\u00e41");
    assertEquals("4C 54 2D 3F 31 00", Bytes.text(java.util.Arrays.copyOf(words.array(), 6)));
    writer.text(row, "0123456789ABCDEFGHI");
    assertEquals(0, words.get(16));
    assertEquals('F', words.get(15));
    assertThrows(IllegalArgumentException.class, () -> writer.number(row, 1));
  }
}
