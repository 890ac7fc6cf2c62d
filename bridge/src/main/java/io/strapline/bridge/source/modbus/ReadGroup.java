package io.strapline.bridge.source.modbus;

import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings;
import io.strapline.bridge.config.SourceSettings.ModbusRegister;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Registers that are read in one request, and the points they are for. Immutable.
 *
 * @param function 3 or 4
 * @param address of the first register
 * @param count of registers, 1 to 125
 * @param items what lies in them, at least one
 */
record ReadGroup(int function, int address, int count, List<Item> items) {

  private static final int MAX_REGISTERS = 125;

  /** Copies the list. */
  ReadGroup {
    items = List.copyOf(items);
  }

  /**
   * One point's value.
   *
   * @param tag of the point
   * @param signal what the register holds
   * @param register where and how
   */
  record Item(String tag, SourceSettings.Signal signal, ModbusRegister register) {

    int end() {
      return register.address() + RegisterValue.width(register.type());
    }
  }

  /**
   * Groups the registers of some points: neighbours of one function go into one request, never more
   * than 125 registers. A gap begins a new request, since a device may refuse registers that it
   * does not have.
   */
  static List<ReadGroup> of(List<PointConfig> points) {
    List<Item> items = new ArrayList<>();
    for (PointConfig point : points) {
      if (point.source() instanceof SourceSettings.Modbus modbus) {
        items.add(new Item(point.tag(), modbus.signal(), modbus.register()));
      }
    }
    return ofItems(items);
  }

  /** Groups values, in any order. */
  static List<ReadGroup> ofItems(List<Item> items) {
    List<Item> sorted = new ArrayList<>(items);
    sorted.sort(
        Comparator.comparingInt((Item item) -> item.register().function())
            .thenComparingInt(item -> item.register().address()));
    return grouped(sorted);
  }

  /** Returns a group for each item alone. */
  List<ReadGroup> split() {
    return items.stream().map(item -> closed(List.of(item))).toList();
  }

  private static List<ReadGroup> grouped(List<Item> sorted) {
    List<ReadGroup> groups = new ArrayList<>();
    List<Item> open = new ArrayList<>();
    for (Item item : sorted) {
      if (!open.isEmpty() && !joins(open, item)) {
        groups.add(closed(open));
        open.clear();
      }
      open.add(item);
    }
    if (!open.isEmpty()) {
      groups.add(closed(open));
    }
    return List.copyOf(groups);
  }

  private static boolean joins(List<Item> open, Item next) {
    ModbusRegister first = open.get(0).register();
    return first.function() == next.register().function()
        && next.register().address() <= end(open)
        && next.end() - first.address() <= MAX_REGISTERS;
  }

  private static ReadGroup closed(List<Item> open) {
    ModbusRegister first = open.get(0).register();
    return new ReadGroup(first.function(), first.address(), end(open) - first.address(), open);
  }

  private static int end(List<Item> items) {
    return items.stream().mapToInt(Item::end).max().orElseThrow();
  }
}
