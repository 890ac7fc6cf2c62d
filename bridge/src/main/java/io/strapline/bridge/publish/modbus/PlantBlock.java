package io.strapline.bridge.publish.modbus;

import static io.strapline.bridge.publish.modbus.WireType.BITS16;
import static io.strapline.bridge.publish.modbus.WireType.FLOAT32;
import static io.strapline.bridge.publish.modbus.WireType.INT16;
import static io.strapline.bridge.publish.modbus.WireType.INT32;
import static io.strapline.bridge.publish.modbus.WireType.UINT16;
import static io.strapline.bridge.publish.modbus.WireType.UINT32;

import io.strapline.bridge.config.ModbusSettings.WordOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** The block of the plant at address 0: test constants and totals. */
final class PlantBlock {

  /** "SL" in US-ASCII: the register that tells an integrator that the address is right. */
  static final int MAGIC = 0x534C;

  /** Test value of the float registers; 4145 851F as a single. */
  static final double TEST_FLOAT = 12.345;

  /** Test value of the long integer registers. */
  static final int TEST_INT32 = 123_456_789;

  /** Test value of the short integer register. */
  static final int TEST_INT16 = -12_345;

  /** All lines, in the order of their offsets. */
  static final List<Register<PlantState>> REGISTERS = registers();

  private PlantBlock() {}

  private static List<Register<PlantState>> registers() {
    List<Register<PlantState>> all = new ArrayList<>();
    constants(all);
    totals(all);
    return List.copyOf(all);
  }

  private static void constants(List<Register<PlantState>> all) {
    all.add(plain(0, UINT16, "magic", "always 21324 (534C hex)", s -> MAGIC));
    all.add(plain(1, UINT16, "map version", "", s -> PointBlock.MAP_VERSION));
    all.add(plain(2, INT16, "test int16", "always -12345", s -> TEST_INT16));
    all.add(plain(3, UINT16, "word order", "0 ABCD, 1 CDAB, 2 BADC, 3 DCBA", s -> code(s.order())));
    all.add(plain(4, FLOAT32, "test float", "12.345 as configured", s -> TEST_FLOAT));
    all.add(plain(6, INT32, "test int32", "123456789 as configured", s -> TEST_INT32));
    for (WordOrder order : WordOrder.values()) {
      all.add(constant(8 + 2 * code(order), FLOAT32, TEST_FLOAT, order));
    }
    for (WordOrder order : WordOrder.values()) {
      all.add(constant(16 + 2 * code(order), INT32, TEST_INT32, order));
    }
    all.add(plain(24, UINT16, "generation", "number of the image", PlantBlock::generation));
  }

  private static void totals(List<Register<PlantState>> all) {
    all.add(plain(25, UINT16, "generation", "number of the image", PlantBlock::generation));
    all.add(plain(26, UINT16, "heartbeat", "+1 each second while alive", PlantBlock::heartbeat));
    all.add(plain(27, UINT16, "points", "measuring points in all", s -> s.points().size()));
    all.add(plain(28, UINT16, "points good", "", s -> s.count(192)));
    all.add(plain(29, UINT16, "points uncertain", "", s -> s.count(64)));
    all.add(plain(30, UINT16, "points bad", "", s -> s.count(0)));
    all.add(plain(31, UINT16, "alarms active", "of all points", PlantBlock::active));
    all.add(
        plain(32, UINT16, "alarms unacknowledged", "of all points", PlantBlock::unacknowledged));
    all.add(plain(33, BITS16, "flags", "2 server stalled", s -> s.moment().stalled() ? 4 : 0));
    all.add(
        Register.number(
            new RegisterRow(34, UINT32, "clock", "s", 1),
            "plant time, UTC seconds since 1970",
            s -> Math.floorDiv(s.millis(), 1000)));
    all.add(
        plain(36, UINT32, "updates", "snapshots since the start", s -> s.updates() & 0xFFFF_FFFFL));
    all.add(plain(49, UINT16, "generation", "number of the image", PlantBlock::generation));
  }

  private static Register<PlantState> constant(
      int offset, WireType type, double value, WordOrder order) {
    String name = "test " + (type == FLOAT32 ? "float " : "int32 ") + order;
    String note = String.format(Locale.ROOT, type == FLOAT32 ? "%.3f" : "%.0f", value);
    return Register.constant(
        new RegisterRow(offset, type, name, "", 1), note + " in this order, always", value, order);
  }

  private static Register<PlantState> plain(
      int offset, WireType type, String name, String note, ToDoubleFunction<PlantState> value) {
    return Register.number(new RegisterRow(offset, type, name, "", 1), note, value);
  }

  private static int generation(PlantState state) {
    return state.moment().generation();
  }

  private static int heartbeat(PlantState state) {
    return state.moment().heartbeat();
  }

  static int active(PlantState state) {
    return state.alarms(p -> p.alarms(a -> a.state().isActive()));
  }

  static int unacknowledged(PlantState state) {
    return state.alarms(p -> p.alarms(a -> !a.state().isAcknowledged()));
  }

  private static int code(WordOrder order) {
    return switch (order) {
      case ABCD -> 0;
      case CDAB -> 1;
      case BADC -> 2;
      case DCBA -> 3;
    };
  }
}
