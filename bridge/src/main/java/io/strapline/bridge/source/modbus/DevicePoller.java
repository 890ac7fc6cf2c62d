package io.strapline.bridge.source.modbus;

import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings;
import io.strapline.bridge.config.SourceSettings.ModbusDevice;
import io.strapline.bridge.model.PlantClock;
import io.strapline.bridge.model.SampleSink;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.Cause;
import java.io.IOException;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Reads the points of one device, a round at a time, and knows when the next round is due. A point
 * whose registers the device refuses does not disturb the others; a device that is not reached is
 * tried again with growing pauses. Used by one thread.
 */
final class DevicePoller {

  private static final Logger LOG = LoggerFactory.getLogger(DevicePoller.class);
  private static final double FIRST_PAUSE_SECONDS = 0.5;

  private final ModbusDevice device;
  private final List<ReadGroup> groups;
  private final PlantClock clock;
  private final Map<ReadGroup, String> troubles = new LinkedHashMap<>();
  private double pauseSeconds;
  private long due = System.nanoTime();

  DevicePoller(ModbusDevice device, List<PointConfig> points, PlantClock clock) {
    this.device = device;
    this.clock = clock;
    groups = ReadGroup.of(points);
  }

  String name() {
    return device.line().name() + " unit " + device.unitId();
  }

  ModbusDevice device() {
    return device;
  }

  /** Returns the time, of the system's timer, at which the next round is due. */
  long due() {
    return due;
  }

  /** Reads all groups once; failures are told to the sink. */
  void round(Link link, SampleSink sink) {
    boolean reached = poll(link, sink);
    due = reached ? due + nanos(device.pollSeconds()) : System.nanoTime() + backOff();
    // Rounds that were missed are left out. The next one is due now, behind all that wait longer.
    due = Math.max(due, System.nanoTime());
  }

  private boolean poll(Link link, SampleSink sink) {
    for (int i = 0; i < groups.size(); i++) {
      try {
        readOrSplit(groups.get(i), link, sink);
      } catch (IOException | RuntimeException lost) {
        // The others would only run into the same time-out.
        for (ReadGroup unread : groups.subList(i, groups.size())) {
          trouble(unread, text(lost), sink);
        }
        return false;
      }
    }
    pauseSeconds = 0;
    return true;
  }

  /** Reads a group; when the device refuses it, one item at a time, so that one bad one shows. */
  private void readOrSplit(ReadGroup group, Link link, SampleSink sink) throws IOException {
    try {
      read(group, link, sink);
    } catch (RefusedException refused) {
      if (group.items().size() == 1) {
        trouble(group, text(refused), sink);
      } else {
        for (ReadGroup single : group.split()) {
          readOrSplit(single, link, sink);
        }
      }
    }
  }

  private void read(ReadGroup group, Link link, SampleSink sink) throws IOException {
    byte[] registers = link.read(device, group);
    Instant answered = clock.instant();
    for (ReadGroup.Item item : group.items()) {
      double value = RegisterValue.decode(registers, group.address(), item.register());
      sink.accept(item.tag(), sample(item.signal(), answered, value));
    }
    if (troubles.remove(group) != null) {
      LOG.info("{} answers again for {}", name(), tags(group));
    }
  }

  private static Sample sample(SourceSettings.Signal signal, Instant time, double value) {
    return switch (signal) {
      case DISTANCE -> Sample.distance(time, value);
      case LEVEL -> Sample.level(time, value);
      case CURRENT -> Sample.current(time, value);
      case RAW_COUNT -> Sample.rawCount(time, value);
    };
  }

  private void trouble(ReadGroup group, String detail, SampleSink sink) {
    if (Thread.currentThread().isInterrupted()) {
      return;
    }
    for (ReadGroup.Item item : group.items()) {
      sink.fail(item.tag(), Cause.NO_COMMUNICATION, name() + ": " + detail);
    }
    if (troubles.put(group, detail) == null) {
      LOG.warn("{} cannot be read for {}: {}", name(), tags(group), detail);
    }
  }

  private long backOff() {
    pauseSeconds =
        Math.min(
            Math.max(FIRST_PAUSE_SECONDS, 2 * pauseSeconds), Math.max(0, device.backOffSeconds()));
    return nanos(pauseSeconds);
  }

  private static long nanos(double seconds) {
    return (long) (seconds * 1e9);
  }

  private static String text(Exception failure) {
    String message = failure.getMessage();
    return message == null ? failure.toString() : message;
  }

  private static List<String> tags(ReadGroup group) {
    return group.items().stream().map(ReadGroup.Item::tag).toList();
  }
}
