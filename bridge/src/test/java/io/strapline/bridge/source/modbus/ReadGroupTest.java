package io.strapline.bridge.source.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.bridge.config.ModbusSettings.WordOrder;
import io.strapline.bridge.config.SourceSettings.ModbusRegister;
import io.strapline.bridge.config.SourceSettings.RegisterType;
import io.strapline.bridge.config.SourceSettings.Signal;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReadGroupTest {

  private static ReadGroup.Item item(int function, int address, RegisterType type) {
    return new ReadGroup.Item(
        "LT-" + address,
        Signal.LEVEL,
        new ModbusRegister(function, address, type, WordOrder.ABCD, 1));
  }

  private static List<String> spans(List<ReadGroup> groups) {
    return groups.stream().map(g -> g.function() + "@" + g.address() + "+" + g.count()).toList();
  }

  @Test
  void neighboursAreReadTogetherWhateverTheirOrder() {
    List<ReadGroup> groups =
        ReadGroup.ofItems(
            List.of(
                item(4, 12, RegisterType.FLOAT32),
                item(4, 10, RegisterType.INT32),
                item(4, 14, RegisterType.INT16)));
    assertEquals(List.of("4@10+5"), spans(groups));
  }

  @Test
  void gapsAndFunctionsPartGroups() {
    List<ReadGroup> groups =
        ReadGroup.ofItems(
            List.of(
                item(3, 10, RegisterType.INT16),
                item(3, 12, RegisterType.INT16),
                item(4, 13, RegisterType.INT16)));
    assertEquals(List.of("3@10+1", "3@12+1", "4@13+1"), spans(groups));
  }

  @Test
  void theSameRegisterMayServeTwoPoints() {
    List<ReadGroup> groups =
        ReadGroup.ofItems(
            List.of(item(3, 10, RegisterType.FLOAT32), item(3, 11, RegisterType.UINT16)));
    assertEquals(List.of("3@10+2"), spans(groups));
  }

  @Test
  void noGroupIsLongerThan125Registers() {
    List<ReadGroup.Item> items = new ArrayList<>();
    for (int i = 0; i < 100; i++) {
      items.add(item(3, 2 * i, RegisterType.FLOAT32));
    }
    assertEquals(List.of("3@0+124", "3@124+76"), spans(ReadGroup.ofItems(items)));
  }

  @ParameterizedTest
  @CsvSource({
    "FFFF 0000, INT16, -1",
    "FFFF 0000, UINT16, 65535",
    "8000 0000, INT16, -32768",
    "FFFF FFFF, INT32, -1",
    "FFFF FFFF, UINT32, 4294967295",
    "4145 851F, FLOAT32, 12.345000267028809",
    "7FC0 0000, FLOAT32, NaN"
  })
  void registersBecomeNumbers(String hex, RegisterType type, double expected) {
    ModbusRegister register = new ModbusRegister(3, 100, type, WordOrder.ABCD, 1);
    assertEquals(expected, RegisterValue.decode(ScriptedDevice.hex(hex), 100, register));
  }

  @ParameterizedTest
  @CsvSource({"ABCD, 4145 851F", "CDAB, 851F 4145", "BADC, 4541 1F85", "DCBA, 1F85 4541"})
  void wordOrdersAreThoseOfThePublishedTable(WordOrder order, String hex) {
    // 12.345 in float_words.csv; times 0.001 for a device that counts millimetres.
    ModbusRegister register = new ModbusRegister(3, 7, RegisterType.FLOAT32, order, 0.001);
    byte[] bytes = ScriptedDevice.hex("0000 " + hex);
    assertEquals(0.012345, RegisterValue.decode(bytes, 6, register), 1e-9);
  }

  @Test
  void aSingleRegisterIsNeverSwapped() {
    ModbusRegister register = new ModbusRegister(3, 7, RegisterType.INT16, WordOrder.DCBA, 1);
    assertEquals(0x3039, RegisterValue.decode(ScriptedDevice.hex("3039"), 7, register));
  }
}
