package io.strapline.bridge.publish.modbus;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.nio.channels.CancelledKeyException;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The TCP side of the Modbus server: one thread that accepts, reads, answers and writes for all
 * clients. Nothing a client does stops it: a client that misbehaves loses its own connection.
 */
final class ModbusListener implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(ModbusListener.class);
  private static final long LOOK_MILLIS = 100;
  private static final long ACCEPT_PAUSE_NANOS = TimeUnit.SECONDS.toNanos(1);
  private static final long STOP_MILLIS = 2000;

  /** So many refused addresses are named in the log, each once. */
  private static final int MOST_STRANGERS = 100;

  private final Service service;
  private final ListenerLimits limits;
  private final Acceptor acceptor;
  private final Selector selector;
  private final ServerSocketChannel server;
  private final SelectionKey accepting;
  private final Thread thread;
  private volatile boolean stopping;
  private final Set<InetAddress> strangers = new HashSet<>();
  private boolean refusing;
  private boolean acceptFailing;
  private long acceptAgain;

  /** Takes the next waiting connection; null when none waits. */
  interface Acceptor {
    /** Accepts from a channel that does not block. */
    @Nullable SocketChannel accept(ServerSocketChannel server) throws IOException;
  }

  private ModbusListener(ServerSocketChannel server, Service service, Acceptor acceptor)
      throws IOException {
    this.server = server;
    this.service = service;
    limits = service.limits();
    this.acceptor = acceptor;
    selector = Selector.open();
    server.configureBlocking(false);
    accepting = server.register(selector, SelectionKey.OP_ACCEPT);
    thread = new Thread(this::run, "modbus-listener-" + port());
    thread.setDaemon(true);
  }

  /**
   * Binds an address and starts serving.
   *
   * @throws IOException naming host and port when they cannot be bound
   */
  static ModbusListener start(String host, int port, Service service, Acceptor acceptor)
      throws IOException {
    ServerSocketChannel server = bind(host, port);
    try {
      ModbusListener listener = new ModbusListener(server, service, acceptor);
      listener.thread.start();
      return listener;
    } catch (IOException failed) {
      server.close();
      throw failed;
    }
  }

  private static ServerSocketChannel bind(String host, int port) throws IOException {
    ServerSocketChannel server = ServerSocketChannel.open();
    try {
      return server.bind(new InetSocketAddress(host, port));
    } catch (IOException | IllegalArgumentException refused) {
      // An unresolved name comes as IllegalArgumentException.
      server.close();
      throw new IOException(
          String.format(
              "Modbus TCP cannot listen on %s port %d: %s; free the port or set another host or"
                  + " port in the configuration",
              host, port, refused),
          refused);
    }
  }

  /** Returns the port that is listened on. */
  int port() {
    return server.socket().getLocalPort();
  }

  /** Returns how many clients are connected; for tests, as seen a moment ago. */
  int clients() {
    return selector.isOpen() ? selector.keys().size() - 1 : 0;
  }

  private void run() {
    while (!stopping) {
      try {
        selector.select(LOOK_MILLIS);
        List.copyOf(selector.selectedKeys()).forEach(this::handle);
        selector.selectedKeys().clear();
        lookAfter();
      } catch (Throwable failure) {
        // The loop must outlive everything, an Error too.
        survive(failure);
      }
    }
  }

  private void handle(SelectionKey key) {
    if (key == accepting) {
      acceptAll();
    } else {
      serve(key);
    }
  }

  private void serve(SelectionKey key) {
    try {
      int next = ((Client) key.attachment()).serve(System.nanoTime());
      if (next == 0) {
        drop(key, "ended");
      } else {
        key.interestOps(next);
      }
    } catch (IOException | CancelledKeyException gone) {
      drop(key, gone.toString());
    } catch (RuntimeException | Error failure) {
      LOG.error("a Modbus client was dropped after a failure inside", failure);
      drop(key, failure.toString());
    }
  }

  private void acceptAll() {
    try {
      SocketChannel next = acceptor.accept(server);
      while (next != null) {
        admit(next);
        next = acceptor.accept(server);
      }
      noteAccepting(null);
    } catch (IOException failed) {
      noteAccepting(failed);
    }
  }

  // Out of descriptors, for instance: without the pause the loop would spin.
  private void noteAccepting(@Nullable IOException failed) {
    if (failed != null && !acceptFailing) {
      LOG.warn("Modbus TCP cannot accept clients and keeps trying: {}", failed.toString());
    } else if (failed == null && acceptFailing) {
      LOG.info("Modbus TCP accepts clients again");
    }
    acceptFailing = failed != null;
    if (acceptFailing) {
      accepting.interestOps(0);
      acceptAgain = System.nanoTime() + ACCEPT_PAUSE_NANOS;
    }
  }

  private void admit(SocketChannel channel) throws IOException {
    boolean stranger = isStranger(channel);
    boolean full = !stranger && isFullFor(channel);
    noteFull(full, channel);
    try {
      if (full || stranger) {
        reset(channel);
      } else {
        register(channel);
      }
    } catch (IOException gone) {
      // The client has gone already; this says nothing about accepting the next one.
      channel.close();
    }
  }

  private void register(SocketChannel channel) throws IOException {
    channel.configureBlocking(false);
    channel.setOption(StandardSocketOptions.TCP_NODELAY, true);
    channel.setOption(StandardSocketOptions.SO_KEEPALIVE, true);
    Client client = new Client(channel, service, System.nanoTime());
    channel.register(selector, SelectionKey.OP_READ, client);
  }

  private boolean isStranger(SocketChannel channel) {
    InetAddress address = channel.socket().getInetAddress();
    boolean stranger = !service.access().mayConnect(address);
    if (stranger && strangers.size() < MOST_STRANGERS && strangers.add(address)) {
      LOG.warn("Modbus TCP refuses {}, which is not among the configured clients", address);
    }
    return stranger;
  }

  private boolean isFullFor(SocketChannel channel) {
    long same = 0;
    long all = 0;
    for (SelectionKey key : selector.keys()) {
      if (key.isValid() && key.attachment() instanceof Client client) {
        all++;
        same += client.address().equals(channel.socket().getInetAddress()) ? 1 : 0;
      }
    }
    return all >= limits.connections() || same >= limits.connectionsPerAddress();
  }

  // A reset tells the client at once; a connection left waiting would look like a dead server.
  private static void reset(SocketChannel channel) throws IOException {
    try (channel) {
      channel.setOption(StandardSocketOptions.SO_LINGER, 0);
    }
  }

  private void noteFull(boolean full, SocketChannel channel) {
    if (full && !refusing) {
      LOG.warn(
          "Modbus TCP refuses clients, such as {}: {} in all or {} of one address are connected",
          channel.socket().getInetAddress(),
          limits.connections(),
          limits.connectionsPerAddress());
    } else if (!full && refusing) {
      LOG.info("Modbus TCP has room for clients again");
    }
    refusing = full;
  }

  private void lookAfter() {
    long now = System.nanoTime();
    for (SelectionKey key : List.copyOf(selector.keys())) {
      if (key.isValid() && key.attachment() instanceof Client client) {
        String reason = client.overdue(now);
        if (!reason.isEmpty()) {
          drop(key, reason);
        }
      }
    }
    if (acceptFailing && now - acceptAgain >= 0) {
      accepting.interestOps(SelectionKey.OP_ACCEPT);
    }
  }

  private static void drop(SelectionKey key, String reason) {
    key.cancel();
    try {
      key.channel().close();
    } catch (IOException ignored) {
      // The connection is given up anyway.
      LOG.trace("closing failed", ignored);
    }
    LOG.debug("a Modbus client was dropped: {}", reason);
  }

  private void survive(Throwable failure) {
    if (!stopping) {
      LOG.error("the Modbus listener goes on after a failure inside", failure);
      pause();
    }
  }

  private void pause() {
    try {
      TimeUnit.MILLISECONDS.sleep(LOOK_MILLIS);
    } catch (InterruptedException interrupted) {
      // Only close() ends this thread, and it sets the flag that the loop looks at.
      LOG.trace("interrupted", interrupted);
    }
  }

  /** Frees the port and drops all clients. */
  @Override
  public void close() {
    stopping = true;
    selector.wakeup();
    try {
      thread.join(STOP_MILLIS);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
    closeAll();
  }

  private void closeAll() {
    try {
      if (selector.isOpen()) {
        List.copyOf(selector.keys()).forEach(key -> drop(key, "server stops"));
        selector.close();
      }
      server.close();
    } catch (IOException failed) {
      LOG.warn("stopping Modbus TCP: {}", failed.toString());
    }
  }
}
