package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.config.ModbusLines;
import io.strapline.bridge.config.ModbusSettings;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.modbus.SerialPortWire;
import io.strapline.bridge.model.PlantAccess;
import io.strapline.bridge.model.Publisher;
import io.strapline.bridge.model.SnapshotStore;
import java.io.IOException;
import java.nio.channels.ServerSocketChannel;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Serves a plant over Modbus TCP, RTU over TCP and a serial line. Nothing is writable but the
 * commands that the configuration lists. Start it once; close it once it is no longer needed. Safe
 * for any thread.
 */
public final class ModbusPublisher implements Publisher {

  private final ModbusSettings settings;
  private final ImageKeeper images;
  private final ImageThread thread;
  private final Service service;
  private final Optional<SerialServer> serial;
  private @Nullable ModbusListener listener;

  private ModbusPublisher(
      ModbusSettings settings, ImageKeeper images, Service service, Optional<SerialServer> serial) {
    this.settings = settings;
    this.images = images;
    this.service = service;
    this.serial = serial;
    thread = new ImageThread(images::publish);
  }

  /**
   * Returns a server for a plant; it listens to nothing yet.
   *
   * @param plant as configured
   * @param access what it may use of the running plant
   * @throws IllegalArgumentException naming the point whose register block is out of range or taken
   */
  public static ModbusPublisher of(PlantSettings plant, PlantAccess access) {
    SnapshotStore store = access.store();
    ModbusSettings settings = plant.modbus();
    ImageKeeper images =
        new ImageKeeper(
            RegisterMap.of(plant), store, access.clock(), settings.badValue(), System::nanoTime);
    Commands commands = Commands.of(plant, store, access.operations(), images::publish);
    Identity identity = new Identity(version(), plant.name(), settings.wordOrder().name());
    Answers answers = new Answers(images, commands, identity);
    Framing framing =
        settings.lines().framing() == ModbusLines.Framing.RTU
            ? new RtuFraming(settings.unitIds(), answers)
            : new TcpFraming(settings.unitIds(), answers);
    Optional<SerialServer> serial =
        settings
            .lines()
            .serial()
            .map(served -> new SerialServer(served, answers, SerialPortWire::open));
    Service service = new Service(framing, settings.access(), ListenerLimits.DEFAULT);
    ModbusPublisher publisher = new ModbusPublisher(settings, images, service, serial);
    store.listen(snapshot -> publisher.thread.wake());
    return publisher;
  }

  private static String version() {
    String version = ModbusPublisher.class.getPackage().getImplementationVersion();
    return version == null ? "0" : version;
  }

  @Override
  public synchronized void start() throws IOException {
    images.publish();
    listener =
        ModbusListener.start(
            settings.host(), settings.port(), service, ServerSocketChannel::accept);
    if (serial.isPresent()) {
      serial.get().start();
    }
    thread.start();
  }

  /**
   * Returns the address in the form of the Web of Things binding, modbus+tcp://host:port, and the
   * serial port behind it where one is served.
   */
  @Override
  public synchronized String endpoint() {
    int port = listener == null ? settings.port() : listener.port();
    String tcp = "modbus+tcp://" + settings.host() + ":" + port;
    return settings
        .lines()
        .serial()
        .map(served -> tcp + " and " + served.line().port() + " unit " + served.unitId())
        .orElse(tcp);
  }

  @Override
  public synchronized void close() {
    if (listener != null) {
      listener.close();
    }
    serial.ifPresent(SerialServer::close);
    thread.close();
  }
}
