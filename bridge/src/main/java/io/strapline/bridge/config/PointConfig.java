package io.strapline.bridge.config;

import io.strapline.level.point.PointSettings;
import java.util.OptionalInt;

/**
 * One measuring point as configured. Immutable.
 *
 * @param title what it is, for people
 * @param area part of the plant it belongs to
 * @param point what the library needs
 * @param source where its samples come from
 * @param modbusBlock number of its register block, from 1; empty when it is not on Modbus
 */
public record PointConfig(
    String title,
    String area,
    PointSettings point,
    SourceSettings source,
    OptionalInt modbusBlock) {

  /** Returns the tag of the point. */
  public String tag() {
    return point.tag();
  }
}
