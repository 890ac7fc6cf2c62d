package io.strapline.bridge.source.modbus;

import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings;
import io.strapline.bridge.config.SourceSettings.ModbusDevice;
import io.strapline.bridge.model.PlantClock;
import io.strapline.bridge.model.SampleSink;
import io.strapline.bridge.model.Source;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.Cause;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Polls all points of one Modbus TCP device over one connection, from one thread. A point whose
 * registers the device refuses does not disturb the others; a lost connection is tried again with
 * growing pauses.
 */
public final class ModbusSource implements Source {

  private static final Logger LOG = LoggerFactory.getLogger(ModbusSource.class);
  private static final double FIRST_PAUSE_SECONDS = 0.5;
  private static final long STOP_MILLIS = 2000;

  private final ModbusDevice device;
  private final List<ReadGroup> groups;
  private final PlantClock clock;
  private final DeviceLink link;
  private final CountDownLatch stopped = new CountDownLatch(1);
  private final Map<ReadGroup, String> troubles = new LinkedHashMap<>();
  private @Nullable Thread thread;
  private double pauseSeconds;

  private ModbusSource(ModbusDevice device, List<PointConfig> points, PlantClock clock) {
    this.device = device;
    this.clock = clock;
    groups = ReadGroup.of(points);
    link = new DeviceLink(device);
  }

  /**
   * Returns the sources of all points that are read over Modbus, one for each device.
   *
   * @param points of the plant; those with another source are left out
   * @param clock stamps the samples
   */
  public static List<ModbusSource> of(List<PointConfig> points, PlantClock clock) {
    Map<ModbusDevice, List<PointConfig>> byDevice = new LinkedHashMap<>();
    for (PointConfig point : points) {
      if (point.source() instanceof SourceSettings.Modbus modbus) {
        byDevice.computeIfAbsent(modbus.device(), key -> new ArrayList<>()).add(point);
      }
    }
    List<ModbusSource> sources = new ArrayList<>();
    byDevice.forEach((device, own) -> sources.add(new ModbusSource(device, own, clock)));
    return List.copyOf(sources);
  }

  @Override
  public void start(SampleSink sink) {
    Thread poller = new Thread(() -> run(sink), "modbus-source-" + name());
    // A thread that hangs in name resolution must not keep the program alive.
    poller.setDaemon(true);
    thread = poller;
    poller.start();
  }

  private void run(SampleSink sink) {
    try {
      long due = System.nanoTime();
      while (stopped.getCount() > 0) {
        boolean reached = poll(sink);
        due = reached ? due + nanos(device.pollSeconds()) : System.nanoTime() + backOff();
        // Rounds that were missed are left out; the next one begins at once.
        due = Math.max(due, System.nanoTime());
        stopped.await(due - System.nanoTime(), TimeUnit.NANOSECONDS);
      }
    } catch (InterruptedException closed) {
      Thread.currentThread().interrupt();
    } finally {
      link.disconnect();
    }
  }

  /** Reads all groups once; returns false when the device could not be reached. */
  private boolean poll(SampleSink sink) {
    for (int i = 0; i < groups.size(); i++) {
      try {
        readOrSplit(groups.get(i), sink);
      } catch (IOException | RuntimeException lost) {
        // The others would only run into the same time-out.
        for (ReadGroup unread : groups.subList(i, groups.size())) {
          trouble(unread, Cause.NO_COMMUNICATION, text(lost), sink);
        }
        return false;
      }
    }
    pauseSeconds = 0;
    return true;
  }

  /** Reads a group; when the device refuses it, one item at a time, so that one bad one shows. */
  private void readOrSplit(ReadGroup group, SampleSink sink) throws IOException {
    try {
      read(group, sink);
    } catch (RefusedException refused) {
      if (group.items().size() == 1) {
        trouble(group, Cause.NO_COMMUNICATION, text(refused), sink);
      } else {
        for (ReadGroup single : group.split()) {
          readOrSplit(single, sink);
        }
      }
    }
  }

  private void read(ReadGroup group, SampleSink sink) throws IOException {
    byte[] registers = link.read(group.function(), group.address(), group.count());
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

  private void trouble(ReadGroup group, Cause cause, String detail, SampleSink sink) {
    if (stopped.getCount() == 0) {
      return;
    }
    for (ReadGroup.Item item : group.items()) {
      sink.fail(item.tag(), cause, name() + ": " + detail);
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

  private String name() {
    return device.host() + ":" + device.port() + " unit " + device.unitId();
  }

  /** Stops at once, also during a read; a thread that does not end within 2 s is left behind. */
  @Override
  public void close() {
    stopped.countDown();
    link.abort();
    Thread poller = thread;
    if (poller != null) {
      poller.interrupt();
      try {
        poller.join(STOP_MILLIS);
      } catch (InterruptedException interrupted) {
        Thread.currentThread().interrupt();
      }
    }
  }
}
