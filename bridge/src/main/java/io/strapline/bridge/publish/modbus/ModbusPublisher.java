package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.config.ModbusSettings;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.model.PlantClock;
import io.strapline.bridge.model.Publisher;
import io.strapline.bridge.model.SnapshotStore;
import java.io.IOException;
import java.nio.channels.ServerSocketChannel;
import org.jspecify.annotations.Nullable;

/**
 * Serves a plant over Modbus TCP: functions 01 to 04, nothing writable. Start it once; close it
 * once it is no longer needed. Safe for any thread.
 */
public final class ModbusPublisher implements Publisher {

  private final ModbusSettings settings;
  private final ImageKeeper images;
  private final ImageThread thread;
  private final ListenerLimits limits;
  private @Nullable ModbusListener listener;

  private ModbusPublisher(ModbusSettings settings, ImageKeeper images, ListenerLimits limits) {
    this.settings = settings;
    this.images = images;
    this.limits = limits;
    thread = new ImageThread(images::publish);
  }

  /**
   * Returns a server for a plant; it listens to nothing yet.
   *
   * @param plant as configured
   * @param store its snapshots
   * @param clock its time
   * @throws IllegalArgumentException naming the point whose register block is out of range or taken
   */
  public static ModbusPublisher of(PlantSettings plant, SnapshotStore store, PlantClock clock) {
    ModbusSettings settings = plant.modbus();
    ImageKeeper images =
        new ImageKeeper(RegisterMap.of(plant), store, clock, settings.badValue(), System::nanoTime);
    ModbusPublisher publisher = new ModbusPublisher(settings, images, ListenerLimits.DEFAULT);
    store.listen(snapshot -> publisher.thread.wake());
    return publisher;
  }

  @Override
  public synchronized void start() throws IOException {
    ReadRequests requests = new ReadRequests(settings.unitIds(), images);
    images.publish();
    listener =
        ModbusListener.start(
            settings.host(), settings.port(), requests, limits, ServerSocketChannel::accept);
    thread.start();
  }

  /** Returns the address in the form of the Web of Things binding, modbus+tcp://host:port. */
  @Override
  public synchronized String endpoint() {
    int port = listener == null ? settings.port() : listener.port();
    return "modbus+tcp://" + settings.host() + ":" + port;
  }

  @Override
  public synchronized void close() {
    if (listener != null) {
      listener.close();
    }
    thread.close();
  }
}
