package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.SocketException;
import java.nio.channels.ServerSocketChannel;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What clients, good and bad, can do to the listener's sockets. */
@Timeout(120)
class ModbusListenerIT {

  private static final Duration LONG = Duration.ofMinutes(10);
  private static final byte[] READ_ONE = Bytes.of("00 01 00 00 00 06 01 03 00 05 00 01");
  private static final byte[] READ_125 = Bytes.of("00 02 00 00 00 06 01 03 00 00 00 7D");

  private final List<AutoCloseable> open = new ArrayList<>();

  @AfterEach
  void closeAll() throws Exception {
    for (int i = open.size() - 1; i >= 0; i--) {
      open.get(i).close();
    }
  }

  @Test
  void requestsAreAnsweredByByteAndInPieces() throws IOException {
    RawClient client = client(listener(limits(4, 4)));
    for (byte one : READ_ONE) {
      client.send(one);
    }
    assertReadOne(client);
    client.send(Arrays.copyOf(READ_ONE, 7));
    client.send(Arrays.copyOfRange(READ_ONE, 7, 12));
    assertReadOne(client);
  }

  @Test
  void twoThousandPipelinedRequestsAreAllAnsweredInOrder() throws Exception {
    RawClient client = client(listener(limits(4, 4)));
    ByteArrayOutputStream requests = new ByteArrayOutputStream();
    for (int i = 0; i < 2000; i++) {
      byte[] request = READ_125.clone();
      request[0] = (byte) (i >> 8);
      request[1] = (byte) i;
      requests.write(request);
    }
    CompletableFuture<Void> sending =
        CompletableFuture.runAsync(() -> send(client, requests.toByteArray()));
    int received = 0;
    for (int i = 0; i < 2000; i++) {
      byte[] answer = client.receive();
      received += answer.length;
      assertEquals(i, (answer[0] & 0xFF) << 8 | (answer[1] & 0xFF));
    }
    sending.get(10, TimeUnit.SECONDS);
    // 2000 answers of 9 + 250 bytes.
    assertEquals(518_000, received);
  }

  @Test
  void aClientThatHasFinishedSendingStillGetsItsAnswers() throws IOException {
    RawClient client = client(listener(limits(4, 4)));
    client.send(READ_ONE);
    client.send(READ_ONE);
    client.socket().shutdownOutput();
    assertReadOne(client);
    assertReadOne(client);
    assertTrue(client.isClosedByServer());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "00 01 00 01 00 06 FF 03 00 00 00 01", // TCP-PROTO of modbus_negative.csv
        "00 01 FF FF 00 06 FF 03 00 00 00 01",
        "00 01 00 00 00 00 01 03 00 00 00 01",
        "00 01 00 00 00 01 01 03 00 00 00 01",
        "00 01 00 00 00 02 01 03 00 00 00 01",
        "00 01 00 00 00 05 FF 03 00 00 00 01", // TCP-LEN
        "00 01 00 00 00 FF 01 03 00 00 00 01", // TCP-MAX: 255 makes 261 bytes
        "00 01 00 00 01 00 01 03 00 00 00 01",
        "00 01 00 00 80 00 01 03 00 00 00 01",
        "00 01 00 00 FF FF 01 03 00 00 00 01",
        "16 03 01 02 00 01 00 01 FC 03 03 5A", // TLS client hello
        "FF FF FF FF FF FF FF FF FF FF FF FF"
      })
  void aBrokenFrameClosesOnlyItsOwnConnection(String bytes) throws IOException {
    ModbusListener listener = listener(limits(4, 4));
    RawClient honest = client(listener);
    RawClient broken = client(listener);
    broken.send(Bytes.of(bytes));
    assertTrue(broken.isClosedByServer());
    honest.send(READ_ONE);
    assertReadOne(honest);
  }

  @Test
  void aWebBrowserIsShownTheDoor() throws IOException {
    RawClient browser = client(listener(limits(4, 4)));
    browser.send("GET / HTTP/1.1\r\nHost: silo\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
    assertTrue(browser.isClosedByServer());
  }

  @ParameterizedTest
  @ValueSource(strings = {"00", "00 01 00 00 00", "00 01 00 00 00 14 01 03 00 00 00 01"})
  void aFrameThatIsNeverCompletedClosesTheConnection(String begun) throws IOException {
    ListenerLimits limits = new ListenerLimits(4, 4, LONG, Duration.ofMillis(200), LONG);
    ModbusListener listener = listener(limits);
    RawClient honest = client(listener);
    RawClient slow = client(listener);
    slow.send(Bytes.of(begun));
    assertTrue(slow.isClosedByServer());
    honest.send(READ_ONE);
    assertReadOne(honest);
  }

  @Test
  void anIdleClientIsDropped() throws IOException {
    ListenerLimits limits = new ListenerLimits(4, 4, Duration.ofMillis(200), LONG, LONG);
    assertTrue(client(listener(limits)).isClosedByServer());
  }

  @Test
  void aClientThatStopsReadingIsDroppedAndHindersNobody() throws Exception {
    ListenerLimits limits = new ListenerLimits(4, 4, LONG, LONG, Duration.ofMillis(500));
    ModbusListener listener = listener(limits);
    RawClient deaf = client(listener);
    RawClient honest = client(listener);
    CompletableFuture<Integer> flood = CompletableFuture.supplyAsync(() -> sendUntilCut(deaf));
    for (int i = 0; i < 100; i++) {
      honest.send(READ_ONE);
      assertReadOne(honest);
    }
    assertTrue(flood.get(60, TimeUnit.SECONDS) < 1_000_000, "the flood was cut off");
    await(() -> listener.clients() == 1);
    honest.send(READ_ONE);
    assertReadOne(honest);
  }

  @Test
  void aFloodOfConnectionsIsBoundedAndRefusedVisibly() throws IOException {
    ModbusListener listener = listener(limits(64, 64));
    List<RawClient> clients = new ArrayList<>();
    int served = 0;
    int refused = 0;
    for (int i = 0; i < 300; i++) {
      try {
        clients.add(client(listener));
      } catch (IOException reset) {
        refused++;
      }
    }
    for (RawClient client : clients) {
      if (answers(client)) {
        served++;
      } else {
        refused++;
      }
    }
    assertEquals(64, served);
    assertEquals(236, refused);
    for (RawClient client : clients) {
      client.close();
    }
    await(() -> listener.clients() == 0);
    assertTrue(answers(client(listener)));
  }

  @Test
  void oneAddressCannotTakeAllPlaces() throws IOException {
    ModbusListener listener = listener(limits(64, 2));
    assertTrue(answers(client(listener)));
    assertTrue(answers(client(listener)));
    assertFalse(isServed(listener));
    RawClient other;
    try {
      other = new RawClient(listener.port(), 2);
    } catch (SocketException noSuchAddress) {
      Assumptions.abort("this machine has one loopback address only");
      return;
    }
    open.add(other);
    assertTrue(answers(other));
  }

  @Test
  void aThousandCutConnectionsLeaveNothingBehind() throws IOException {
    ModbusListener listener = listener(limits(64, 64));
    int threads = Thread.activeCount();
    for (int i = 0; i < 1000; i++) {
      try (RawClient client = new RawClient(listener.port())) {
        client.socket().setSoLinger(i % 2 == 0, 0);
        client.send(Bytes.of("00 01 00 00 00 06 01 03"));
      } catch (SocketException refused) {
        // The server is allowed to be full for a moment.
        assertTrue(listener.clients() <= 64);
      }
    }
    await(() -> listener.clients() == 0);
    assertTrue(answers(client(listener)));
    assertTrue(Thread.activeCount() <= threads + 1, "no thread for each client");
  }

  @Test
  void aFailingAcceptIsTriedAgain() throws IOException {
    AtomicInteger tries = new AtomicInteger();
    ModbusListener.Acceptor failing =
        server -> {
          if (tries.incrementAndGet() <= 2) {
            throw new IOException("Too many open files");
          }
          return server.accept();
        };
    ModbusListener listener = ModbusListener.start("127.0.0.1", 0, service(limits(4, 4)), failing);
    open.add(listener);
    assertTrue(answers(client(listener)));
    assertTrue(tries.get() >= 3);
  }

  @Test
  void anErrorInsideAnswers04AndTheConnectionStays() throws IOException {
    AtomicInteger reads = new AtomicInteger();
    Service service =
        TestServer.service(
            () -> {
              if (reads.getAndIncrement() < 5) {
                throw new AssertionError("deliberate");
              }
              return TestImages.counting(200);
            },
            limits(4, 4));
    ModbusListener listener =
        ModbusListener.start("127.0.0.1", 0, service, ServerSocketChannel::accept);
    open.add(listener);
    RawClient client = client(listener);
    for (int i = 0; i < 5; i++) {
      assertArrayEquals(Bytes.of("83 04"), client.ask(Bytes.of("03 00 05 00 01")));
    }
    assertArrayEquals(Bytes.of("03 02 00 05"), client.ask(Bytes.of("03 00 05 00 01")));
  }

  @Test
  void aBusyPortIsNamedTogetherWithTheAddress() throws IOException {
    try (ServerSocket busy = new ServerSocket()) {
      busy.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0));
      int port = busy.getLocalPort();
      IOException refused =
          assertThrows(
              IOException.class,
              () ->
                  ModbusListener.start(
                      "127.0.0.1", port, service(limits(4, 4)), ServerSocketChannel::accept));
      assertTrue(refused.toString().contains("127.0.0.1 port " + port), refused.toString());
    }
  }

  @Test
  void anUnknownHostIsNamed() {
    IOException refused =
        assertThrows(
            IOException.class,
            () ->
                ModbusListener.start(
                    "no-such-host.invalid", 0, service(limits(4, 4)), ServerSocketChannel::accept));
    assertTrue(refused.toString().contains("no-such-host.invalid"), refused.toString());
  }

  @Test
  void closingDropsTheClientsAndFreesThePort() throws IOException {
    ModbusListener listener = listener(limits(4, 4));
    int port = listener.port();
    RawClient client = client(listener);
    assertTrue(answers(client));
    listener.close();
    listener.close();
    assertTrue(client.isClosedByServer());
    try (ServerSocket again = new ServerSocket()) {
      again.setReuseAddress(true);
      again.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
      assertEquals(port, again.getLocalPort());
    }
  }

  private static int sendUntilCut(RawClient client) {
    try {
      for (int i = 0; i < 1_000_000; i++) {
        client.send(READ_125);
      }
      return 1_000_000;
    } catch (IOException cut) {
      return 0;
    }
  }

  private static void send(RawClient client, byte[] bytes) {
    try {
      client.send(bytes);
    } catch (IOException failed) {
      throw new java.io.UncheckedIOException(failed);
    }
  }

  private boolean isServed(ModbusListener listener) {
    try {
      return answers(client(listener));
    } catch (IOException reset) {
      return false;
    }
  }

  private static boolean answers(RawClient client) {
    try {
      client.send(READ_ONE);
      assertReadOne(client);
      return true;
    } catch (IOException refused) {
      return false;
    }
  }

  private static void assertReadOne(RawClient client) throws IOException {
    assertEquals("00 01 00 00 00 05 01 03 02 00 05", Bytes.text(client.receive()));
  }

  private static void await(BooleanSupplier condition) {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    while (!condition.getAsBoolean() && System.nanoTime() < end) {
      Thread.onSpinWait();
    }
    assertTrue(condition.getAsBoolean());
  }

  private RawClient client(ModbusListener listener) throws IOException {
    RawClient client = new RawClient(listener.port());
    open.add(client);
    return client;
  }

  private ModbusListener listener(ListenerLimits limits) throws IOException {
    ModbusListener listener =
        ModbusListener.start("127.0.0.1", 0, service(limits), ServerSocketChannel::accept);
    open.add(listener);
    return listener;
  }

  private static Service service(ListenerLimits limits) {
    RegisterImage image = TestImages.counting(200);
    return TestServer.service(() -> image, limits);
  }

  private static ListenerLimits limits(int connections, int perAddress) {
    return new ListenerLimits(connections, perAddress, LONG, LONG, LONG);
  }
}
