package io.strapline.bridge.publish.modbus;

import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.reading.DiagnosticStatus;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;

/**
 * A discrete input together with where it comes from.
 *
 * @param row the line of the map
 * @param on when it is on
 * @param <S> state that it is taken from
 */
record Bit<S>(BitRow row, Predicate<S> on) {

  /** Discrete inputs of the plant. */
  static final List<Bit<PlantState>> PLANT = plant();

  /** Discrete inputs of a measuring point. */
  static final List<Bit<PointState>> POINT = point();

  private static List<Bit<PlantState>> plant() {
    return List.of(
        new Bit<>(new BitRow(0, "always on, to test the address"), s -> true),
        new Bit<>(new BitRow(1, "always off"), s -> false),
        new Bit<>(new BitRow(2, "changes each second while alive"), Bit::pulse),
        new Bit<>(new BitRow(3, "server stalled"), s -> s.moment().stalled()),
        new Bit<>(new BitRow(4, "any alarm active"), s -> PlantBlock.active(s) > 0),
        new Bit<>(new BitRow(5, "any alarm unacknowledged"), s -> PlantBlock.unacknowledged(s) > 0),
        new Bit<>(new BitRow(6, "any point bad"), s -> s.count(0) > 0),
        new Bit<>(new BitRow(7, "any point uncertain"), s -> s.count(64) > 0));
  }

  private static boolean pulse(PlantState state) {
    return (state.moment().heartbeat() & 1) != 0;
  }

  private static List<Bit<PointState>> point() {
    List<Bit<PointState>> all = new ArrayList<>();
    for (AlarmKind kind : AlarmKind.values()) {
      int bit = 1 << PointState.bit(kind);
      all.add(
          new Bit<>(
              new BitRow(PointState.bit(kind), text(kind) + " active"),
              s -> (s.alarms(a -> a.state().isActive()) & bit) != 0));
    }
    for (AlarmKind kind : AlarmKind.values()) {
      int bit = 1 << PointState.bit(kind);
      all.add(
          new Bit<>(
              new BitRow(5 + PointState.bit(kind), text(kind) + " unacknowledged"),
              s -> (s.alarms(a -> !a.state().isAcknowledged()) & bit) != 0));
    }
    all.add(new Bit<>(new BitRow(10, "level good"), s -> PointBlock.code(s) == 192));
    all.add(new Bit<>(new BitRow(11, "level uncertain"), s -> PointBlock.code(s) == 64));
    all.add(new Bit<>(new BitRow(12, "level bad"), s -> PointBlock.code(s) == 0));
    all.add(ne107(13, "NE 107 failure", DiagnosticStatus.FAILURE));
    all.add(ne107(14, "NE 107 function check", DiagnosticStatus.FUNCTION_CHECK));
    all.add(ne107(15, "NE 107 out of specification", DiagnosticStatus.OUT_OF_SPECIFICATION));
    all.add(ne107(16, "NE 107 maintenance required", DiagnosticStatus.MAINTENANCE_REQUIRED));
    all.add(new Bit<>(new BitRow(17, "BAD value held"), PointState::holdsValues));
    all.add(new Bit<>(new BitRow(18, "integer at its limit"), s -> PointBlock.limited(s) != 0));
    all.add(new Bit<>(new BitRow(19, "evaluation stalled"), PointState::isDead));
    for (AlarmKind kind : AlarmKind.values()) {
      all.add(command(Commands.ACKNOWLEDGE_COIL, kind, "write: acknowledge "));
    }
    for (AlarmKind kind : AlarmKind.values()) {
      all.add(command(Commands.RESET_COIL, kind, "write: reset latched "));
    }
    return List.copyOf(all);
  }

  private static Bit<PointState> command(int first, AlarmKind kind, String what) {
    return new Bit<>(new BitRow(first + PointState.bit(kind), what + text(kind)), s -> false);
  }

  private static Bit<PointState> ne107(int offset, String name, DiagnosticStatus status) {
    return new Bit<>(new BitRow(offset, name), s -> s.status() == status);
  }

  private static String text(AlarmKind kind) {
    return kind == AlarmKind.HIGH_HIGH || kind == AlarmKind.LOW_LOW
        ? kind.name().toLowerCase(Locale.ROOT).replace('_', '-')
        : kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
