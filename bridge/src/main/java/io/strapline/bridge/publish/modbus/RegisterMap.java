package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.config.ModbusSettings;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.model.SnapshotStore.PlantView;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The register map of one plant: the plant's block at address 0, the block of a point at 100 times
 * its block number. The same definition writes the registers, checks the reads and prints the
 * lists. Immutable.
 */
public final class RegisterMap {

  /** Registers, and discrete inputs, in a block. */
  public static final int BLOCK = 100;

  /** Greatest block number of a point; its last register is 65499. */
  public static final int MAX_BLOCK = 654;

  private static final Logger LOG = LoggerFactory.getLogger(RegisterMap.class);

  private final ModbusSettings settings;
  private final Map<String, Integer> blocks;
  private final List<String> tags;
  private final AddressSpace space;

  private RegisterMap(ModbusSettings settings, List<String> tags, Map<String, Integer> blocks) {
    this.settings = settings;
    this.tags = List.copyOf(tags);
    this.blocks = blocks;
    space = space(blocks);
  }

  /**
   * Returns the map of a plant.
   *
   * @throws IllegalArgumentException naming the point whose block number is out of range or taken
   */
  public static RegisterMap of(PlantSettings plant) {
    Map<String, Integer> blocks = new LinkedHashMap<>();
    for (PointConfig point : plant.points()) {
      if (point.modbusBlock().isPresent()) {
        blocks.put(point.tag(), checked(point, blocks));
      }
    }
    List<String> tags = plant.points().stream().map(PointConfig::tag).toList();
    return new RegisterMap(plant.modbus(), tags, blocks);
  }

  private static int checked(PointConfig point, Map<String, Integer> taken) {
    int block = point.modbusBlock().orElseThrow();
    if (block < 1 || block > MAX_BLOCK) {
      throw new IllegalArgumentException(
          point.tag()
              + " modbus-block = "
              + block
              + ": must lie between 1 and "
              + MAX_BLOCK
              + "; enter a free block number");
    }
    if (taken.containsValue(block)) {
      throw new IllegalArgumentException(
          point.tag()
              + " modbus-block = "
              + block
              + ": is taken by another point; enter a free"
              + " block number");
    }
    return block;
  }

  private static AddressSpace space(Map<String, Integer> blocks) {
    AddressSpace space = new AddressSpace().map(0, BLOCK);
    PlantBlock.REGISTERS.forEach(r -> space.value(r.row().offset(), r.row().type().width()));
    for (int block : blocks.values()) {
      int start = BLOCK * block;
      space.map(start, BLOCK);
      PointBlock.REGISTERS.forEach(
          r -> space.value(start + r.row().offset(), r.row().type().width()));
    }
    return space;
  }

  /** Returns the block number of each point that is on Modbus, by tag, in the plant's order. */
  public Map<String, Integer> blocks() {
    return java.util.Collections.unmodifiableMap(blocks);
  }

  /** Returns what is mapped. */
  AddressSpace space() {
    return space;
  }

  /**
   * Builds all registers from one view of the plant.
   *
   * @param view the snapshots
   * @param moment what is common to the image
   * @param unseenSeconds gives for a tag how long ago its snapshot was first seen
   */
  RegisterImage image(PlantView view, Moment moment, ToDoubleFunction<String> unseenSeconds) {
    ByteBuffer words = ByteBuffer.allocate(2 * space.end());
    byte[] bits = new byte[(space.end() + 7) / 8];
    List<PointState> points = new ArrayList<>();
    for (String tag : tags) {
      PointState state =
          new PointState(tag, view.points().get(tag), unseenSeconds.applyAsDouble(tag), moment);
      points.add(blocks.containsKey(tag) ? written(state, words, bits) : state);
    }
    PlantState plant = new PlantState(points, view.generation(), settings.wordOrder(), moment);
    write(PlantBlock.REGISTERS, Bit.PLANT, 0, plant, words, bits);
    return RegisterImage.of(space, words.array(), bits);
  }

  /** Writes a point; one that cannot be written is written as dead, and the others go on. */
  private PointState written(PointState state, ByteBuffer words, byte[] bits) {
    int start = BLOCK * java.util.Objects.requireNonNull(blocks.get(state.tag()));
    try {
      write(PointBlock.REGISTERS, Bit.POINT, start, state, words, bits);
      return state;
    } catch (RuntimeException failure) {
      LOG.error("the registers of {} cannot be written and are BAD", state.tag(), failure);
      PointState dead = new PointState(state.tag(), null, state.unseenSeconds(), state.moment());
      write(PointBlock.REGISTERS, Bit.POINT, start, dead, words, bits);
      return dead;
    }
  }

  private <S> void write(
      List<Register<S>> registers,
      List<Bit<S>> inputs,
      int start,
      S state,
      ByteBuffer words,
      byte[] bits) {
    BlockWriter writer = new BlockWriter(words, start, settings.wordOrder());
    registers.forEach(register -> register.write(writer, state));
    for (Bit<S> input : inputs) {
      int address = start + input.row().offset();
      int mask = 1 << (address & 7);
      bits[address >> 3] =
          (byte) (input.on().test(state) ? bits[address >> 3] | mask : bits[address >> 3] & ~mask);
    }
  }
}
