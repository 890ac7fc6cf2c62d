package io.strapline.bridge.publish.opcua;

import io.strapline.bridge.config.OpcUaSettings;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.model.PlantAccess;
import io.strapline.bridge.model.Publisher;
import io.strapline.bridge.model.SnapshotStore;
import io.strapline.bridge.publish.opcua.alarms.ConditionEngine;
import io.strapline.bridge.publish.opcua.alarms.ConditionSpec;
import io.strapline.bridge.publish.opcua.alarms.Conditions;
import io.strapline.bridge.publish.opcua.security.AccessRule;
import io.strapline.bridge.publish.opcua.security.CertificateNames;
import io.strapline.bridge.publish.opcua.security.Pki;
import io.strapline.bridge.publish.opcua.server.FixedServer;
import io.strapline.bridge.publish.opcua.server.ServerThreads;
import io.strapline.bridge.publish.opcua.server.SubscriptionReaper;
import io.strapline.level.point.PointSnapshot;
import java.io.IOException;
import java.net.UnknownHostException;
import java.security.Security;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicLong;
import org.bouncycastle.jce.provider.BouncyCastleProvider;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Serves the points of a plant over OPC UA: values for reading only, and alarms that operators may
 * acknowledge. Every update of the store is pushed to the clients that watch it. Started once; safe
 * for any thread.
 */
public final class OpcUaPublisher implements Publisher {

  private static final Logger LOG = LoggerFactory.getLogger(OpcUaPublisher.class);

  /** Folder of the certificates below the plant's data folder. */
  static final String PKI_FOLDER = "opcua";

  private final PlantSettings plant;
  private final SnapshotStore store;
  private final PlantAccess access;
  private final AtomicLong beats = new AtomicLong();

  private @Nullable ConditionEngine engine;
  private @Nullable Listening listening;
  private @Nullable ServerThreads threads;
  private volatile @Nullable FixedServer server;
  private volatile @Nullable TypeNamespace types;
  private volatile @Nullable PointNamespace points;

  /** Makes a publisher that is not yet started; nothing is opened or written. */
  public OpcUaPublisher(PlantSettings plant, PlantAccess access) {
    this.plant = plant;
    this.access = access;
    this.store = access.store();
  }

  /**
   * Opens the certificates in {@code opcua} below the plant's data folder (making them at the first
   * start), builds the address space and listens.
   *
   * @throws IOException naming the address that cannot be bound or the file that cannot be used
   * @throws IllegalArgumentException if two points would share a node id
   */
  @Override
  public synchronized void start() throws IOException {
    if (listening != null) {
      throw new IllegalStateException("an OPC UA publisher is started once; make a new one");
    }
    NodeList.of(plant);
    try {
      open();
    } catch (IOException | RuntimeException failed) {
      close();
      throw failed;
    }
  }

  private void open() throws IOException {
    OpcUaSettings settings = plant.opcUa();
    registerBouncyCastle();
    Listening address = Listening.probe(settings);
    listening = address;
    AccessRule rule = rule(settings);
    Pki pki =
        Pki.open(
            plant.dataFolder().resolve(PKI_FOLDER),
            CertificateNames.of(plant.name(), settings.host(), settings.advertisedHosts()));
    ServerThreads ownThreads = new ServerThreads();
    threads = ownThreads;
    FixedServer made = ServerHost.make(plant.name(), address, pki, rule, ownThreads);
    server = made;
    build(made, rule);
    ServerHost.bind(made, address);
    schedule(made, ownThreads);
    tell(address, rule);
  }

  /** Aes256_Sha256_RsaPss needs algorithms that the platform does not bring. */
  private static void registerBouncyCastle() {
    if (Security.getProvider(BouncyCastleProvider.PROVIDER_NAME) == null) {
      Security.addProvider(new BouncyCastleProvider());
    }
  }

  private static AccessRule rule(OpcUaSettings settings) throws IOException {
    try {
      return AccessRule.of(settings.anonymousRead(), settings.host());
    } catch (UnknownHostException e) {
      throw Listening.cannot(settings.host(), settings.port(), "the host is not known", e);
    }
  }

  private void build(FixedServer made, AccessRule rule) {
    TypeNamespace typeNamespace = new TypeNamespace(made);
    PointNamespace pointNamespace =
        new PointNamespace(made, plant, typeNamespace, rule::operator, this::engine);
    typeNamespace.startup();
    types = typeNamespace;
    pointNamespace.startup();
    points = pointNamespace;
    ConditionEngine conditions = Objects.requireNonNull(engine);
    conditions.start();
    store.listen(snapshot -> show(snapshot.tag()));
    store.listen(conditions::offer);
    store.view().points().keySet().forEach(this::show);
    store.view().points().values().forEach(conditions::offer);
  }

  private Conditions engine(Conditions.Listener listener) {
    List<ConditionSpec> specs =
        plant.points().stream().flatMap(point -> ConditionSpec.of(point).stream()).toList();
    ConditionEngine made =
        new ConditionEngine(
            specs,
            new ConditionEngine.Surroundings(
                this::latest, access.operations(), access.clock()::instant),
            listener);
    engine = made;
    return made;
  }

  private PointSnapshot latest(String tag) {
    return store.view().point(tag).orElseThrow();
  }

  /**
   * Shows the newest snapshot of a point, which is at least as new as the one that was told: with
   * several threads the telling may come in another order.
   */
  private void show(String tag) {
    PointNamespace there = points;
    if (there != null) {
      store.view().point(tag).ifPresent(there::update);
    }
  }

  private void schedule(FixedServer made, ServerThreads ownThreads) {
    ownThreads.every(2_000, new SubscriptionReaper(made));
    ownThreads.every(100, this::flush);
    ownThreads.every(1_000, () -> beat(made));
  }

  private void flush() {
    PointNamespace there = points;
    if (there != null) {
      there.flush();
    }
  }

  private void beat(FixedServer made) {
    PointNamespace there = points;
    if (there != null) {
      there.beat(beats.incrementAndGet(), Instant.now());
      Collection<PointSnapshot> all = store.view().points().values();
      long usable = all.stream().filter(point -> !point.level().quality().isBad()).count();
      ServerHost.setServiceLevel(made, ServerHost.serviceLevel(usable, all.size()));
    }
  }

  private void tell(Listening address, AccessRule rule) {
    LOG.info("OPC UA: listening on {} (signed and encrypted)", address.url());
    if (rule.isOpenLocally()) {
      LOG.warn(
          "OPC UA: *** ANONYMOUS READING WITHOUT SECURITY IS ON *** for programs on this machine");
    } else if (plant.opcUa().anonymousRead()) {
      LOG.warn(
          "OPC UA: anonymous reading stays off, since {} is no loopback address; clients need a"
              + " trusted certificate",
          address.host());
    }
    if (!rule.isOpenLocally()) {
      LOG.info(
          "OPC UA: a client may read, and operate alarms, once its certificate lies in {}",
          plant.dataFolder().resolve(PKI_FOLDER).resolve("trusted/certs"));
    }
  }

  @Override
  public synchronized String endpoint() {
    Listening address = listening;
    if (address == null) {
      throw new IllegalStateException("the OPC UA publisher is not started");
    }
    return address.url();
  }

  /** Returns how many monitored items of all clients watch the points. */
  int watchers() {
    PointNamespace there = points;
    return there == null ? 0 : there.watchers();
  }

  @Override
  public synchronized void close() {
    PointNamespace pointNamespace = points;
    TypeNamespace typeNamespace = types;
    FixedServer running = server;
    points = null;
    types = null;
    server = null;
    if (engine != null) {
      engine.close();
      engine = null;
    }
    if (pointNamespace != null) {
      pointNamespace.shutdown();
    }
    if (typeNamespace != null) {
      typeNamespace.shutdown();
    }
    if (running != null) {
      ServerHost.stop(running);
    }
    if (threads != null) {
      threads.close();
      threads = null;
    }
  }
}
