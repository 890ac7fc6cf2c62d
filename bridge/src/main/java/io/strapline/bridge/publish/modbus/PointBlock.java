package io.strapline.bridge.publish.modbus;

import static io.strapline.bridge.publish.modbus.WireType.BITS16;
import static io.strapline.bridge.publish.modbus.WireType.FLOAT32;
import static io.strapline.bridge.publish.modbus.WireType.FLOAT64;
import static io.strapline.bridge.publish.modbus.WireType.INT16;
import static io.strapline.bridge.publish.modbus.WireType.INT32;
import static io.strapline.bridge.publish.modbus.WireType.TEXT16;
import static io.strapline.bridge.publish.modbus.WireType.UINT16;
import static io.strapline.bridge.publish.modbus.WireType.UINT32;

import io.strapline.level.alarm.AlarmSnapshot;
import io.strapline.level.point.Quantity;
import io.strapline.level.reading.Quality;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/**
 * The block of one measuring point: 100 registers in four groups of 25. Each group begins and ends
 * with the generation, so that a client which reads it in one request can tell that it is whole.
 */
final class PointBlock {

  /** Version of the register map; a change that moves or redefines anything raises it. */
  static final int MAP_VERSION = 1;

  /** All lines, in the order of their offsets. */
  static final List<Register<PointState>> REGISTERS = registers();

  private static final List<Register<PointState>> SCALED =
      REGISTERS.stream().filter(PointBlock::isScaled).toList();

  private PointBlock() {}

  private static List<Register<PointState>> registers() {
    List<Register<PointState>> all = new ArrayList<>();
    state(all);
    floats(all);
    integers(all);
    doubles(all);
    return List.copyOf(all);
  }

  private static void state(List<Register<PointState>> all) {
    all.add(generation(0));
    all.add(plain(1, UINT16, "map version", "raised when a register moves", s -> MAP_VERSION));
    all.add(plain(2, UINT32, "sequence", "counts evaluations of the point", PointState::sequence));
    all.add(quality(4));
    all.add(
        plain(
            5,
            UINT16,
            "cause",
            "why the level is not good; codes in docs/register-map.md",
            PointBlock::causeCode));
    all.add(ne107(6));
    all.add(
        plain(
            7,
            UINT16,
            "diagnostic cause",
            "cause of the prevailing diagnostic",
            s -> CauseCode.of(s.diagnosticCause())));
    all.add(active(8));
    all.add(alarmBits(9, "alarms unacknowledged", s -> s.alarms(a -> !a.state().isAcknowledged())));
    all.add(alarmBits(10, "alarms configured", s -> s.alarms(a -> true)));
    all.add(alarmBits(11, "alarms held back", s -> s.alarms(AlarmSnapshot::heldBack)));
    all.add(age(12));
    all.add(heartbeat(13));
    all.add(
        Register.number(
            new RegisterRow(14, UINT32, "source time", "s", 1),
            "UTC seconds since 1970; 0 = none",
            s -> Math.floorDiv(s.sourceMillis(), 1000)));
    all.add(
        Register.number(
            new RegisterRow(16, UINT16, "source time fraction", "s", 0.001),
            "milliseconds of the source time",
            s -> Math.floorMod(s.sourceMillis(), 1000) / 1000.0));
    all.add(
        plain(
            17,
            BITS16,
            "flags",
            "0 integer at its limit, 1 BAD value held, 2 evaluation stalled",
            PointBlock::flags));
    all.add(
        plain(18, BITS16, "integers at limit", "bits in the order of 52 to 67", s -> limited(s)));
    all.add(quantityBits(19, "present", "quantities this point computes", q -> true));
    all.add(quantityBits(20, "good", "quantities that are GOOD", Quality::isGood));
    all.add(
        quantityBits(21, "uncertain", "quantities that are UNCERTAIN", PointBlock::isUncertain));
    all.add(quantityBits(22, "bad", "quantities that are BAD", Quality::isBad));
    all.add(generation(24));
  }

  private static void floats(List<Register<PointState>> all) {
    all.add(generation(25));
    all.add(quality(26));
    all.add(age(27));
    all.add(ne107(28));
    all.add(active(29));
    for (Quantity quantity : Quantity.values()) {
      int offset = 30 + 2 * PointState.bit(quantity);
      all.add(measured(offset, FLOAT32, quantity, quantity.unit(), 1));
    }
    all.add(heartbeat(48));
    all.add(generation(49));
  }

  private static void integers(List<Register<PointState>> all) {
    all.add(generation(50));
    all.add(quality(51));
    all.add(measured(52, INT32, Quantity.LEVEL, "m", 0.001));
    all.add(measured(54, INT32, Quantity.DISTANCE, "m", 0.001));
    all.add(measured(56, INT32, Quantity.ULLAGE, "m", 0.001));
    all.add(measured(58, INT32, Quantity.VOLUME, "m3", 0.01));
    all.add(measured(60, INT32, Quantity.FREE_VOLUME, "m3", 0.01));
    all.add(measured(62, INT32, Quantity.MASS, "kg", 1));
    all.add(measured(64, INT16, Quantity.LEVEL, "m", 0.001));
    all.add(measured(65, INT16, Quantity.LEVEL, "m", 0.01));
    all.add(measured(66, INT16, Quantity.PERCENT, "%", 0.01));
    all.add(measured(67, INT16, Quantity.LOOP_CURRENT, "mA", 0.001));
    all.add(command(Commands.ACKNOWLEDGE_REGISTER, "acknowledge"));
    all.add(command(Commands.RESET_REGISTER, "reset latched"));
    all.add(age(72));
    all.add(heartbeat(73));
    all.add(generation(74));
  }

  private static void doubles(List<Register<PointState>> all) {
    all.add(generation(75));
    all.add(quality(76));
    all.add(age(77));
    all.add(measured(78, FLOAT64, Quantity.LEVEL, "m", 1));
    all.add(measured(82, FLOAT64, Quantity.VOLUME, "m3", 1));
    all.add(measured(86, FLOAT64, Quantity.MASS, "kg", 1));
    all.add(
        Register.text(
            new RegisterRow(90, TEXT16, "tag", "", 1),
            "first 16 characters of the tag",
            PointState::tag));
    all.add(heartbeat(98));
    all.add(generation(99));
  }

  private static Register<PointState> measured(
      int offset, WireType type, Quantity quantity, String unit, double step) {
    String name = quantity.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    return Register.number(
        new RegisterRow(offset, type, name, unit, step), "", s -> s.value(quantity));
  }

  private static Register<PointState> command(int offset, String name) {
    return plain(offset, BITS16, name, "write alarm bits as in 8; reads 0", s -> Commands.HELD);
  }

  private static Register<PointState> generation(int offset) {
    return plain(offset, UINT16, "generation", "number of the image", s -> s.moment().generation());
  }

  private static Register<PointState> quality(int offset) {
    return plain(
        offset, UINT16, "quality", "of the level: 192 good, 64 uncertain, 0 bad", s -> code(s));
  }

  private static Register<PointState> ne107(int offset) {
    return plain(
        offset,
        UINT16,
        "NE 107 status",
        "0 normal, 1 F failure, 2 C check, 3 S out of spec, 4 M maintenance",
        s -> s.status().deviceHealth());
  }

  private static Register<PointState> active(int offset) {
    return alarmBits(offset, "alarms active", s -> s.alarms(a -> a.state().isActive()));
  }

  private static Register<PointState> alarmBits(
      int offset, String name, ToDoubleFunction<PointState> bits) {
    return plain(offset, BITS16, name, "0 high-high, 1 high, 2 low, 3 low-low, 4 bad signal", bits);
  }

  private static Register<PointState> quantityBits(
      int offset, String name, String note, java.util.function.Predicate<Quality> which) {
    return plain(
        offset, BITS16, name, note + "; bits in the order of 30 to 46", s -> s.quantities(which));
  }

  private static Register<PointState> age(int offset) {
    return Register.number(
        new RegisterRow(offset, UINT16, "age", "s", 0.1),
        "since the source time; stops at 6553.5 s",
        PointState::ageSeconds);
  }

  private static Register<PointState> heartbeat(int offset) {
    return plain(
        offset, UINT16, "heartbeat", "+1 each second while alive", s -> s.moment().heartbeat());
  }

  private static Register<PointState> plain(
      int offset, WireType type, String name, String note, ToDoubleFunction<PointState> value) {
    return Register.number(new RegisterRow(offset, type, name, "", 1), note, value);
  }

  /** Returns the quality word: the good, uncertain and bad of classic OPC, so that 0 is bad. */
  static int code(PointState state) {
    return switch (state.quality().level()) {
      case GOOD -> 192;
      case UNCERTAIN -> 64;
      case BAD -> 0;
    };
  }

  private static int causeCode(PointState state) {
    return CauseCode.of(state.quality().cause());
  }

  private static boolean isUncertain(Quality quality) {
    return !quality.isGood() && !quality.isBad();
  }

  private static int flags(PointState state) {
    return (limited(state) != 0 ? 1 : 0) | (state.holdsValues() ? 2 : 0) | (state.isDead() ? 4 : 0);
  }

  /** Returns one bit for each scaled integer that stands at the end of its range. */
  static int limited(PointState state) {
    int bits = 0;
    for (int i = 0; i < SCALED.size(); i++) {
      RegisterRow row = SCALED.get(i).row();
      double counts = state.value(quantityOf(row)) / row.step();
      bits |= row.type().narrow(counts).saturated() ? 1 << i : 0;
    }
    return bits;
  }

  private static boolean isScaled(Register<PointState> register) {
    WireType type = register.row().type();
    return type == INT16 || type == INT32;
  }

  private static Quantity quantityOf(RegisterRow row) {
    return Quantity.valueOf(row.name().toUpperCase(Locale.ROOT).replace(' ', '_'));
  }
}
