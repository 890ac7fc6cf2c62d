package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads who may do what over Modbus. Stateless. */
final class ModbusAccessReader {

  private static final List<String> LISTS = List.of("acknowledge", "reset");

  private ModbusAccessReader() {}

  /** Reads both lists of a Modbus section; what is wrong is noted there. */
  static ModbusAccess read(Section modbus) {
    List<AddressRange> clients = ranges(modbus, "clients");
    Optional<ModbusAccess.Writes> writes =
        modbus.section("writes", Keys.MODBUS_WRITES).flatMap(section -> writes(section, clients));
    return new ModbusAccess(clients, writes);
  }

  private static Optional<ModbusAccess.Writes> writes(Section section, List<AddressRange> clients) {
    List<AddressRange> from = ranges(section, "from");
    if (section.list("from").isEmpty()) {
      section.error(
          "from",
          Reason.MISSING,
          "is missing",
          "give the addresses that may write, such as [127.0.0.1]");
    }
    section.list("from").forEach(item -> refuseNonClient(item, clients));
    if (LISTS.stream().allMatch(key -> section.list(key).isEmpty())) {
      section.error(
          "acknowledge",
          Reason.MISSING,
          "is missing, and so is reset: nothing could be written",
          "list the points, or remove writes");
    }
    return section.build(
        () -> new ModbusAccess.Writes(from, tags(section, "acknowledge"), tags(section, "reset")));
  }

  private static void refuseNonClient(Scalar item, List<AddressRange> clients) {
    Optional<AddressRange> range = AddressRange.parse(item.text());
    boolean outside = range.isPresent() && clients.stream().noneMatch(c -> c.contains(range.get()));
    if (outside && !clients.isEmpty()) {
      item.error(Reason.CONFLICT, "may not connect: it is not among clients", "add it to clients");
    }
  }

  private static Set<String> tags(Section section, String key) {
    Set<String> tags = new LinkedHashSet<>();
    section.list(key).forEach(tag -> tags.add(tag.text()));
    return tags;
  }

  private static List<AddressRange> ranges(Section section, String key) {
    List<AddressRange> ranges = new ArrayList<>();
    section.list(key).forEach(item -> range(item).ifPresent(ranges::add));
    return ranges;
  }

  private static Optional<AddressRange> range(Scalar item) {
    Optional<AddressRange> range = AddressRange.parse(item.text());
    if (range.isEmpty()) {
      item.error(
          Reason.MALFORMED,
          "is no IP address and no range of them",
          "write an address such as 192.0.2.10, or a range such as 192.0.2.0/24");
    } else if (!range.get().isPlain()) {
      item.error(
          Reason.MALFORMED,
          "has bits set behind the prefix",
          "write the first address of the range, or leave out the prefix");
    }
    return range;
  }

  /** Notes an error for each writable point that is none, or is not on Modbus. */
  static void refuseUnknownPoints(Section plant, Map<String, Section> points) {
    plant
        .section("modbus", Keys.MODBUS)
        .flatMap(modbus -> modbus.section("writes", Keys.MODBUS_WRITES))
        .ifPresent(
            writes ->
                LISTS.forEach(
                    key -> writes.list(key).forEach(tag -> refuseUnknownPoint(tag, points))));
  }

  private static void refuseUnknownPoint(Scalar tag, Map<String, Section> points) {
    Section point = points.get(tag.text());
    if (point == null) {
      tag.error(Reason.CONFLICT, "is no point of this plant", "write the tag of one, or remove it");
    } else if (!point.has("modbus-block")) {
      tag.error(Reason.CONFLICT, "is not on Modbus", "give this point a modbus-block");
    }
  }
}
