package io.strapline.bridge.source.modbus;

import io.strapline.bridge.config.DeviceLine;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings;
import io.strapline.bridge.config.SourceSettings.ModbusDevice;
import io.strapline.bridge.model.PlantClock;
import io.strapline.bridge.model.SampleSink;
import io.strapline.bridge.model.Source;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * Polls the devices of one line from one thread: one device over Modbus TCP, all units of a line
 * with serial frames. Units take turns: the one whose round is due longest comes next, so neither a
 * fast nor a dead one keeps the others waiting for more than a round.
 */
public final class ModbusSource implements Source {

  private static final long STOP_MILLIS = 2000;

  private final List<DevicePoller> pollers;
  private final Link link;
  private final CountDownLatch stopped = new CountDownLatch(1);
  private @Nullable Thread thread;

  private ModbusSource(List<DevicePoller> pollers, Link link) {
    this.pollers = List.copyOf(pollers);
    this.link = link;
  }

  /**
   * Returns the sources of all points that are read over Modbus, one for each line.
   *
   * @param points of the plant; those with another source are left out
   * @param clock stamps the samples
   */
  public static List<ModbusSource> of(List<PointConfig> points, PlantClock clock) {
    List<ModbusSource> sources = new ArrayList<>();
    Map<DeviceLine, List<DevicePoller>> shared = new LinkedHashMap<>();
    byDevice(points)
        .forEach(
            (device, own) -> {
              DevicePoller poller = new DevicePoller(device, own, clock);
              if (device.line().isShared()) {
                shared.computeIfAbsent(device.line(), key -> new ArrayList<>()).add(poller);
              } else {
                sources.add(new ModbusSource(List.of(poller), new DeviceLink(device)));
              }
            });
    shared.forEach((line, units) -> sources.add(new ModbusSource(units, RtuLink.of(line))));
    return List.copyOf(sources);
  }

  private static Map<ModbusDevice, List<PointConfig>> byDevice(List<PointConfig> points) {
    Map<ModbusDevice, List<PointConfig>> byDevice = new LinkedHashMap<>();
    for (PointConfig point : points) {
      if (point.source() instanceof SourceSettings.Modbus modbus) {
        byDevice.computeIfAbsent(modbus.device(), key -> new ArrayList<>()).add(point);
      }
    }
    return byDevice;
  }

  @Override
  public void start(SampleSink sink) {
    Thread poller = new Thread(() -> run(sink), "modbus-source-" + pollers.get(0).name());
    // A thread that hangs in name resolution must not keep the program alive.
    poller.setDaemon(true);
    thread = poller;
    poller.start();
  }

  private void run(SampleSink sink) {
    try {
      while (stopped.getCount() > 0) {
        DevicePoller next = nextInTurn();
        if (!stopped.await(next.due() - System.nanoTime(), TimeUnit.NANOSECONDS)) {
          next.round(link, sink);
        }
      }
    } catch (InterruptedException closed) {
      Thread.currentThread().interrupt();
    } finally {
      link.disconnect();
    }
  }

  private DevicePoller nextInTurn() {
    DevicePoller next = pollers.get(0);
    for (DevicePoller each : pollers) {
      // Times of this timer may only be compared by their difference.
      next = each.due() - next.due() < 0 ? each : next;
    }
    return next;
  }

  /** Stops at once, also during a read; a thread that does not end within 2 s is left behind. */
  @Override
  public void close() {
    stopped.countDown();
    Thread poller = thread;
    if (poller != null) {
      poller.interrupt();
    }
    link.abort();
    if (poller != null) {
      try {
        poller.join(STOP_MILLIS);
      } catch (InterruptedException interrupted) {
        Thread.currentThread().interrupt();
      }
    }
  }
}
