package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.AddressRange;
import io.strapline.bridge.config.ModbusAccess;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.model.Operations;
import io.strapline.bridge.model.PlantAccess;
import io.strapline.bridge.model.SnapshotStore;
import io.strapline.bridge.testing.LogLines;
import io.strapline.bridge.testing.Peers;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.Sample;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.channels.ServerSocketChannel;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Commands over sockets: from whom, to what, and never for a client that has gone. */
@Timeout(120)
class ModbusWriteIT {

  private static final Duration LONG = Duration.ofMinutes(10);
  private static final ListenerLimits LIMITS = new ListenerLimits(64, 64, LONG, LONG, LONG);

  private final MeasuringPoint silo =
      MeasuringPoint.of(TestPlants.silo("LT-101"), TestPlants.START);
  private final SnapshotStore store = TestPlants.store(silo);
  private final List<AutoCloseable> open = new ArrayList<>();

  /** Really acknowledges, as the running plant does. */
  private final Operations operations =
      new Operations() {
        @Override
        public Outcome acknowledge(String tag, AlarmKind kind, Operator by) {
          store.update(silo.acknowledge(kind, TestPlants.START));
          return Outcome.DONE;
        }

        @Override
        public Outcome reset(String tag, AlarmKind kind, Operator by) {
          store.update(silo.reset(kind, TestPlants.START));
          return Outcome.DONE;
        }
      };

  @AfterEach
  void closeAll() throws Exception {
    for (int i = open.size() - 1; i >= 0; i--) {
      open.get(i).close();
    }
  }

  private ModbusPublisher publisher(ModbusAccess access) throws IOException {
    PlantSettings plant =
        TestPlants.plant(
            TestPlants.modbus().with(access), TestPlants.config(TestPlants.silo("LT-101"), 1));
    store.update(silo.accept(Sample.level(TestPlants.START, 9.5)));
    ModbusPublisher publisher =
        ModbusPublisher.of(plant, new PlantAccess(store, TestPlants.clock(), operations));
    open.add(publisher);
    publisher.start();
    return publisher;
  }

  private static int port(ModbusPublisher publisher) {
    return Integer.parseInt(publisher.endpoint().replaceAll(".*:", ""));
  }

  private RawClient client(int port, int last) throws IOException {
    RawClient client = new RawClient(port, last);
    open.add(client);
    return client;
  }

  @Test
  void anAlarmIsAcknowledgedAndTheNextReadShowsIt() throws IOException {
    RawClient client = client(port(publisher(TestServer.loopbackWrites())), 1);
    try (LogLines log = new LogLines(WriteLog.class)) {
      assertEquals(2, client.registers(108, 2)[1], "high is unacknowledged");
      assertEquals("06 00 A8 00 02", Bytes.text(client.ask(Bytes.of("06 00 A8 00 02"))));
      assertEquals(
          List.of(2, 0), List.of(client.registers(108, 1)[0], client.registers(109, 1)[0]));
      assertEquals(
          List.of(
              "INFO Modbus write by 127.0.0.1, function 06, registers 168 to 168, value 0002:"
                  + " LT-101 acknowledge HIGH UNACK -> ACKED DONE"),
          log.lines());
    }
  }

  @Test
  void functionSeventeenShowsTheNewStateInItsOwnAnswer() throws IOException {
    RawClient client = client(port(publisher(TestServer.loopbackWrites())), 1);
    byte[] answer = client.ask(Bytes.of("17 00 6C 00 02 00 A8 00 01 02 00 02"));
    assertEquals("17 04 00 02 00 00", Bytes.text(answer));
  }

  @Test
  void onlyListedAddressesMayWriteAndOthersStillRead() throws IOException {
    ModbusPublisher publisher = publisher(TestServer.loopbackWrites());
    RawClient other = otherClient(port(publisher));
    assertEquals("86 01", Bytes.text(other.ask(Bytes.of("06 00 A8 00 02"))));
    assertEquals("90 01", Bytes.text(other.ask(Bytes.of("10 00 A8 00 01 02 00 02"))));
    assertEquals(2, other.registers(109, 1)[0], "nothing was acknowledged");
  }

  // 127.0.0.2 exists wherever the whole of 127/8 is the loopback network.
  private RawClient otherClient(int port) throws IOException {
    try {
      return client(port, 2);
    } catch (java.net.SocketException noSuchAddress) {
      org.junit.jupiter.api.Assumptions.abort("this machine has one loopback address only");
      throw noSuchAddress;
    }
  }

  @Test
  void whoIsNoClientIsResetAtOnce() throws IOException {
    AddressRange one = new AddressRange(InetAddress.getLoopbackAddress(), 32);
    ModbusAccess access = new ModbusAccess(List.of(one), Optional.empty());
    int port = port(publisher(access));
    assertEquals(21_324, client(port, 1).registers(0, 1)[0]);
    try (RawClient stranger = otherClient(port)) {
      assertTrue(stranger.isClosedByServer());
    } catch (java.net.SocketException reset) {
      assertTrue(reset.toString().contains("reset"), reset.toString());
    }
    assertEquals(21_324, client(port, 1).registers(0, 1)[0]);
  }

  @Test
  void aCommandOfAClientThatHasGoneIsNotExecuted() throws Exception {
    TestMemory memory = new TestMemory(1000, -1);
    java.util.concurrent.CountDownLatch goOn = new java.util.concurrent.CountDownLatch(1);
    // The server is held up by one client while another sends its command and leaves.
    Answers slow =
        new Answers(
            () -> {
              awaitQuietly(goOn);
              return memory.get();
            },
            memory,
            TestServer.IDENTITY);
    Service service = new Service(TestServer.tcp(slow), TestServer.loopbackWrites(), LIMITS);
    try (ModbusListener listener =
            ModbusListener.start("127.0.0.1", 0, service, ServerSocketChannel::accept);
        RawClient holding = new RawClient(listener.port())) {
      RawClient leaving = client(listener.port(), 1);
      assertEquals("AB 02", Bytes.text(leaving.ask(Bytes.of("2B 0E 04 09"))), "is accepted");
      holding.send(Bytes.frame(1, 1, Bytes.of("03 00 00 00 01")));
      leaving.send(Bytes.frame(1, 1, Bytes.of("06 00 01 BE EF")));
      leaving.socket().close();
      goOn.countDown();
      holding.receive();
      assertEquals("03 02 00 00", Bytes.text(holding.ask(Bytes.of("03 00 01 00 01"))));
    }
    assertEquals(List.of(), memory.writes());
  }

  private static void awaitQuietly(java.util.concurrent.CountDownLatch latch) {
    try {
      assertTrue(latch.await(20, TimeUnit.SECONDS));
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  @Test
  void mbpollWritesTheCommandRegisterAndTheCoil() throws Exception {
    Peers.require("mbpoll", "sh", "-c", "command -v mbpoll");
    int port = port(publisher(TestServer.loopbackWrites()));
    // Alarm high-high is not configured at this silo: mask 1 is refused, mask 2 is not.
    assertTrue(mbpoll(1, port, "-t", "4", "-r", "168", "127.0.0.1", "1").contains("failure"));
    assertTrue(mbpoll(0, port, "-t", "4", "-r", "168", "127.0.0.1", "2").contains("Written 1"));
    assertTrue(mbpoll(0, port, "-t", "0", "-r", "126", "127.0.0.1", "1").contains("Written 1"));
    RawClient client = client(port, 1);
    assertEquals(0, client.registers(109, 1)[0]);
  }

  private static String mbpoll(int exit, int port, String... options) throws Exception {
    List<String> command = new ArrayList<>(List.of("mbpoll", "-m", "tcp", "-a", "1", "-0", "-1"));
    command.addAll(List.of("-p", Integer.toString(port)));
    command.addAll(List.of(options));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(process.waitFor(60, TimeUnit.SECONDS));
    assertEquals(exit == 0, process.exitValue() == 0, out);
    return out;
  }

  @Test
  void withoutWritesACommandIsAnUnknownFunction() throws IOException {
    RawClient client = client(port(publisher(ModbusAccess.READ_ONLY)), 1);
    assertEquals("86 01", Bytes.text(client.ask(Bytes.of("06 00 A8 00 02"))));
    assertThrows(IOException.class, () -> client.registers(200, 1));
    assertEquals(Set.of(2), Set.of(client.registers(109, 1)[0]));
  }
}
