package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.config.ModbusSettings.WordOrder;
import java.util.List;
import java.util.function.ToIntFunction;

/**
 * What the plant's own registers are made of. Immutable.
 *
 * @param points all measuring points, in the plant's order
 * @param updates number of snapshots since the start
 * @param order of values wider than one register
 * @param moment what is common to the image
 */
record PlantState(List<PointState> points, long updates, WordOrder order, Moment moment) {

  /** Copies the list. */
  PlantState {
    points = List.copyOf(points);
  }

  /** Returns how many points have this quality word. */
  int count(int qualityCode) {
    return (int) points.stream().filter(p -> PointBlock.code(p) == qualityCode).count();
  }

  /** Returns how many alarms of all points are in a set of bits. */
  int alarms(ToIntFunction<PointState> bits) {
    return points.stream().mapToInt(p -> Integer.bitCount(bits.applyAsInt(p))).sum();
  }

  /** Returns the plant's time in milliseconds since 1970. */
  long millis() {
    return Math.max(0, moment.now().toEpochMilli());
  }
}
