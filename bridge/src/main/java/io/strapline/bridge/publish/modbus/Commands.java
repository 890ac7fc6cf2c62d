package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.config.ModbusAccess;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.model.Operations;
import io.strapline.bridge.model.Operations.Operator;
import io.strapline.bridge.model.Operations.Outcome;
import io.strapline.bridge.model.SnapshotStore;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.alarm.AlarmSnapshot;
import io.strapline.level.point.PointSnapshot;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What may be written: the command registers and coils of the points that the configuration lists.
 * A register takes a mask of alarms, a coil is one alarm; each written one is an order to
 * acknowledge or to reset that alarm, a zero orders nothing. They always read as zero. Safe for any
 * thread.
 */
final class Commands implements Writable {

  /** Offset in a point's block of the register that acknowledges alarms. */
  static final int ACKNOWLEDGE_REGISTER = 68;

  /** Offset in a point's block of the register that resets latched alarms. */
  static final int RESET_REGISTER = 69;

  /** Offset in a point's block of the first coil that acknowledges an alarm. */
  static final int ACKNOWLEDGE_COIL = 20;

  /** Offset in a point's block of the first coil that resets a latched alarm. */
  static final int RESET_COIL = 25;

  /** What command registers and coils hold, at all times. */
  static final int HELD = 0;

  private final Map<Integer, Target> registers = new HashMap<>();
  private final Map<Integer, Target> coils = new HashMap<>();
  private final SnapshotStore store;
  private final Operations operations;
  private final Runnable afterwards;
  private final WriteLog log = new WriteLog();

  private Commands(SnapshotStore store, Operations operations, Runnable afterwards) {
    this.store = store;
    this.operations = operations;
    this.afterwards = afterwards;
  }

  /**
   * A register, or a coil, that orders something.
   *
   * @param tag of the point
   * @param isReset whether alarms are reset; else acknowledged
   * @param bit the one alarm that a coil is for; 0 for registers, whose value is a mask
   * @param alarms mask of the alarms that the point has
   */
  private record Target(String tag, boolean isReset, int bit, int alarms) {
    int mask(int value) {
      return value << bit;
    }
  }

  /**
   * What is to be done.
   *
   * @param target where it was written
   * @param mask of alarms
   */
  private record Order(Target target, int mask) {}

  /**
   * Returns the commands of a plant.
   *
   * @param plant as configured
   * @param store tells the states of alarms
   * @param operations executes
   * @param afterwards called when something has been executed, before the answer
   */
  static Commands of(
      PlantSettings plant, SnapshotStore store, Operations operations, Runnable afterwards) {
    Commands commands = new Commands(store, operations, afterwards);
    plant.modbus().access().writes().ifPresent(writes -> commands.addAll(plant, writes));
    return commands;
  }

  private void addAll(PlantSettings plant, ModbusAccess.Writes writes) {
    for (PointConfig point : plant.points()) {
      if (point.modbusBlock().isPresent()) {
        int start = RegisterMap.BLOCK * point.modbusBlock().getAsInt();
        add(point, false, writes.acknowledge(), start + ACKNOWLEDGE_REGISTER);
        add(point, true, writes.reset(), start + RESET_REGISTER);
        addCoils(point, false, writes.acknowledge(), start + ACKNOWLEDGE_COIL);
        addCoils(point, true, writes.reset(), start + RESET_COIL);
      }
    }
  }

  private void add(PointConfig point, boolean isReset, Set<String> listed, int address) {
    if (listed.contains(point.tag())) {
      registers.put(address, new Target(point.tag(), isReset, 0, alarms(point)));
    }
  }

  private void addCoils(PointConfig point, boolean isReset, Set<String> listed, int address) {
    if (listed.contains(point.tag())) {
      for (AlarmKind kind : AlarmKind.values()) {
        int bit = PointState.bit(kind);
        coils.put(address + bit, new Target(point.tag(), isReset, bit, alarms(point)));
      }
    }
  }

  private static int alarms(PointConfig point) {
    int mask = 1 << PointState.bit(AlarmKind.BAD_SIGNAL);
    for (AlarmLimit limit : point.point().alarms().limits()) {
      mask |= 1 << PointState.bit(limit.kind());
    }
    return mask;
  }

  @Override
  public int held(int address) {
    return HELD;
  }

  /**
   * Executes the whole command or nothing of it.
   *
   * @throws Refusal with 02 when any address cannot be written, with 04 when any alarm is named
   *     that its point does not have: section 7 keeps 03 for requests that are built wrongly
   * @throws GoneException when the peer does not wait for it any more
   */
  @Override
  public void execute(Write write, Peer peer) throws Refusal, GoneException {
    try {
      List<Order> orders = orders(write);
      if (!peer.isThere()) {
        throw new GoneException();
      }
      List<String> results = new ArrayList<>();
      orders.forEach(order -> execute(order, peer, results));
      log.executed(write, peer, results);
    } catch (Refusal refused) {
      log.refused(write, peer, refused.code());
      throw refused;
    }
    afterwards.run();
  }

  private List<Order> orders(Write write) throws Refusal {
    Map<Integer, Target> targets = write.toCoils() ? coils : registers;
    List<Order> orders = new ArrayList<>();
    for (int i = 0; i < write.count(); i++) {
      Target target = targets.get(write.start() + i);
      Refusal.unlessThere(target != null);
      if (target != null) {
        orders.add(new Order(target, target.mask(write.value(i))));
      }
    }
    for (Order order : orders) {
      boolean known = (order.mask() & ~order.target().alarms()) == 0;
      Refusal.unless(known, ExceptionCode.SERVER_DEVICE_FAILURE);
    }
    return orders;
  }

  private void execute(Order order, Peer peer, List<String> results) {
    for (AlarmKind kind : AlarmKind.values()) {
      if ((order.mask() >> PointState.bit(kind) & 1) != 0) {
        results.add(execute(order.target(), kind, peer));
      }
    }
  }

  private String execute(Target target, AlarmKind kind, Peer peer) {
    Operator by = new Operator(peer.name(), "Modbus", "");
    String before = state(target.tag(), kind);
    Outcome outcome =
        target.isReset()
            ? operations.reset(target.tag(), kind, by)
            : operations.acknowledge(target.tag(), kind, by);
    String what = target.isReset() ? " reset " : " acknowledge ";
    String after = state(target.tag(), kind);
    return target.tag() + what + kind + " " + before + " -> " + after + " " + outcome;
  }

  private String state(String tag, AlarmKind kind) {
    PointSnapshot snapshot = store.view().points().get(tag);
    return snapshot == null
        ? "?"
        : snapshot.alarms().stream()
            .filter(alarm -> alarm.kind() == kind)
            .map((AlarmSnapshot alarm) -> alarm.state().shortName())
            .findFirst()
            .orElse("?");
  }
}
