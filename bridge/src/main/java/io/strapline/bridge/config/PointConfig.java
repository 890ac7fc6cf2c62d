package io.strapline.bridge.config;

import io.strapline.level.point.PointSettings;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One measuring point as configured. Immutable.
 *
 * @param title what it is, for people
 * @param area part of the plant it belongs to
 * @param point what the library needs
 * @param source where its samples come from
 * @param modbusBlock number of its register block, from 1; empty when it is not on Modbus
 * @param accuracy what is known of its errors, if anything
 */
public record PointConfig(
    String title,
    String area,
    PointSettings point,
    SourceSettings source,
    OptionalInt modbusBlock,
    Optional<Accuracy> accuracy) {

  /** Makes a point of whose errors nothing is known. */
  public PointConfig(
      String title, String area, PointSettings point, SourceSettings source, OptionalInt block) {
    this(title, area, point, source, block, Optional.empty());
  }

  /** Returns the tag of the point. */
  public String tag() {
    return point.tag();
  }
}
