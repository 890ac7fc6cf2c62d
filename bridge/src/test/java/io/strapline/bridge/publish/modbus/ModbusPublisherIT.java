package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.ModbusSettings;
import io.strapline.bridge.config.ModbusSettings.BadValue;
import io.strapline.bridge.config.ModbusSettings.WordOrder;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.model.SnapshotStore;
import io.strapline.bridge.testing.Peers;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.Sample;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.nio.channels.ServerSocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The whole server, read by other programs. */
@Timeout(120)
class ModbusPublisherIT {

  private static final String PYTHON = "/usr/bin/python3";

  private final MeasuringPoint silo =
      MeasuringPoint.of(TestPlants.silo("LT-101"), TestPlants.START);

  @Test
  void noReadMixesTwoImages() throws Exception {
    long[] counts = tornReads(true);
    assertEquals(0, counts[1], () -> counts[1] + " torn of " + counts[0]);
    assertTrue(counts[2] > 100, () -> counts[2] + " generations seen");
  }

  @Test
  void theSameReaderFindsTornReadsWhenRegistersAreWrittenInPlace() throws Exception {
    long[] counts = tornReads(false);
    assertTrue(counts[1] > 0, "the check can fail");
  }

  /** Publishes at full speed, swapped whole or copied into one array, while a process reads. */
  private long[] tornReads(boolean swapped) throws Exception {
    SnapshotStore store = TestPlants.store(silo);
    ImageKeeper keeper = keeper(store);
    byte[] shared = new byte[400];
    RegisterImage inPlace = RegisterImage.of(new AddressSpace().map(0, 200), shared, new byte[25]);
    Service service = TestServer.service(swapped ? keeper : () -> inPlace, ListenerLimits.DEFAULT);
    AtomicBoolean stop = new AtomicBoolean();
    Runnable writing =
        swapped ? () -> swap(store, keeper, stop) : () -> overwrite(store, keeper, shared, stop);
    Thread writer = new Thread(writing, "writer");
    writer.setDaemon(true);
    try (ModbusListener listener =
        ModbusListener.start("127.0.0.1", 0, service, ServerSocketChannel::accept)) {
      writer.start();
      String[] out = run(java(listener.port(), 20_000)).get(0).split(" ", -1);
      return new long[] {Long.parseLong(out[0]), Long.parseLong(out[1]), Long.parseLong(out[2])};
    } finally {
      stop.set(true);
      writer.join(10_000);
    }
  }

  private static boolean goesOn(AtomicBoolean stop, long began) {
    return !stop.get() && System.nanoTime() - began < TimeUnit.SECONDS.toNanos(60);
  }

  private void swap(SnapshotStore store, ImageKeeper keeper, AtomicBoolean stop) {
    long began = System.nanoTime();
    for (int i = 1; goesOn(stop, began); i++) {
      publish(store, keeper, i);
    }
  }

  private RegisterImage publish(SnapshotStore store, ImageKeeper keeper, int number) {
    double level = number % 2 == 0 ? 7.9999 : 8.0001;
    store.update(silo.accept(Sample.level(TestPlants.START.plusMillis(number), level)));
    keeper.publish();
    return keeper.get();
  }

  // The mistake that the images avoid: registers written one by one where they are read.
  private void overwrite(
      SnapshotStore store, ImageKeeper keeper, byte[] shared, AtomicBoolean stop) {
    RegisterImage[] images = {publish(store, keeper, 1), publish(store, keeper, 2)};
    long began = System.nanoTime();
    for (int i = 0; goesOn(stop, began); i++) {
      for (int address = 0; address < 200; address++) {
        int value = images[i % 2].register(address);
        shared[2 * address] = (byte) (value >> 8);
        shared[2 * address + 1] = (byte) value;
      }
    }
  }

  private static ImageKeeper keeper(SnapshotStore store) {
    PlantSettings plant =
        TestPlants.plant(TestPlants.modbus(), TestPlants.config(TestPlants.silo("LT-101"), 1));
    return new ImageKeeper(
        RegisterMap.of(plant), store, TestPlants.clock(), BadValue.NAN, System::nanoTime);
  }

  private static String[] java(int port, int reads) {
    String java = ProcessHandle.current().info().command().orElseThrow();
    String classes = System.getProperty("java.class.path");
    return new String[] {
      java,
      "-cp",
      Objects.requireNonNull(classes),
      TornReader.class.getName(),
      Integer.toString(port),
      Integer.toString(reads)
    };
  }

  @ParameterizedTest
  @EnumSource
  void pymodbusReadsTheMapInEachWordOrder(WordOrder order) throws Exception {
    Peers.require("python3-pymodbus", PYTHON, "-c", "import pymodbus");
    silo.accept(Sample.level(TestPlants.START, 9.25));
    try (ModbusPublisher publisher = started(order)) {
      Map<String, String> read = pymodbus(port(publisher), order);
      assertEquals("21324", read.get("magic"));
      assertEquals("-12345", read.get("int16"));
      assertEquals(12.345, number(read, "float"), 1e-6);
      assertEquals("123456789", read.get("int32"));
      for (WordOrder each : WordOrder.values()) {
        assertEquals(12.345, number(read, "float" + each), 1e-6);
        assertEquals("123456789", read.get("int32" + each));
      }
      assertEquals("192", read.get("quality"));
      // By hand: 9.25 m over 12 m2 is 111 m3, at 1500 kg/m3 166,500 kg.
      assertEquals(9.25, number(read, "level"));
      assertEquals(111.0, number(read, "volume"), 1e-4);
      assertEquals(166_500, number(read, "mass"), 0.1);
      assertEquals("9250", read.get("levelMm"));
      assertEquals("9250", read.get("levelShort"));
      assertEquals(9.25, number(read, "level64"));
      assertEquals(Long.toString(TestPlants.START.getEpochSecond()), read.get("sourceTime"));
      // High alarm active and unacknowledged (bits 1 and 6), level good (bit 10).
      assertEquals("01000010001000000000", read.get("bits"));
      assertEquals(read.get("bits"), read.get("coils"));
    }
  }

  private static double number(Map<String, String> read, String name) {
    return Double.parseDouble(Objects.requireNonNull(read.get(name), name));
  }

  private static Map<String, String> pymodbus(int port, WordOrder order) throws Exception {
    Path script = Path.of("src", "test", "peers", "modbus", "read_map.py").toAbsolutePath();
    Map<String, String> read = new LinkedHashMap<>();
    for (String line : run(PYTHON, script.toString(), Integer.toString(port), "1", order.name())) {
      String[] item = line.split(" ", 2);
      read.put(item[0], item[1]);
    }
    return read;
  }

  @Test
  void mbpollReadsTestConstantsLevelAndBits() throws Exception {
    Peers.require("mbpoll", "sh", "-c", "command -v mbpoll");
    silo.accept(Sample.level(TestPlants.START, 9.25));
    try (ModbusPublisher publisher = started(WordOrder.ABCD)) {
      int port = port(publisher);
      // -0: addresses from 0; -B: high word first.
      assertEquals("21324", mbpoll(port, "-t", "4", "-0", "-r", "0").get("0"));
      assertEquals("12.345", mbpoll(port, "-t", "4:float", "-B", "-0", "-r", "4").get("4"));
      assertEquals("12.345", mbpoll(port, "-t", "4:float", "-0", "-r", "10").get("10"));
      assertEquals("123456789", mbpoll(port, "-t", "3:int", "-B", "-0", "-r", "6").get("6"));
      assertEquals("9.25", mbpoll(port, "-t", "3:float", "-B", "-0", "-r", "134").get("134"));
      // The same register by reference number: 400135 without its 4, counted from 1.
      assertEquals("9.25", mbpoll(port, "-t", "4:float", "-B", "-r", "135").get("135"));
      assertEquals("1", mbpoll(port, "-t", "1", "-0", "-r", "101").get("101"));
      assertEquals("0", mbpoll(port, "-t", "0", "-0", "-r", "100").get("100"));
    }
  }

  private static Map<String, String> mbpoll(int port, String... options) throws Exception {
    List<String> command = new ArrayList<>(List.of("mbpoll", "-m", "tcp", "-a", "1", "-1"));
    command.addAll(List.of("-p", Integer.toString(port)));
    command.addAll(List.of(options));
    command.add("127.0.0.1");
    Map<String, String> values = new LinkedHashMap<>();
    for (String line : run(command.toArray(String[]::new))) {
      if (line.startsWith("[")) {
        values.put(
            line.replaceAll("\\[(\\d+)\\].*", "$1"), line.replaceAll(".*\\]:\\s*(\\S+).*", "$1"));
      }
    }
    return values;
  }

  @Test
  void anUpdateReachesTheRegisters() throws Exception {
    SnapshotStore store = TestPlants.store(silo);
    try (ModbusPublisher publisher = started(store, TestPlants.modbus());
        RawClient client = new RawClient(port(publisher))) {
      assertEquals(0, client.registers(104, 1)[0]);
      store.update(silo.accept(Sample.level(TestPlants.START, 5)));
      awaitRegister(client, 104, 192);
      assertEquals(5000, client.registers(164, 1)[0]);
    }
  }

  @Test
  void theHeartbeatGoesOnWithoutUpdates() throws Exception {
    try (ModbusPublisher publisher = started(WordOrder.ABCD);
        RawClient client = new RawClient(port(publisher))) {
      awaitRegister(client, 26, 1);
      awaitRegister(client, 26, 2);
    }
  }

  @Test
  void aReadThatCutsAFloatIsRefusedAndAWholeOneIsNot() throws Exception {
    try (ModbusPublisher publisher = started(WordOrder.ABCD);
        RawClient client = new RawClient(port(publisher))) {
      assertEquals("83 02", Bytes.text(client.ask(Bytes.of("03 00 87 00 02"))));
      assertEquals("84 02", Bytes.text(client.ask(Bytes.of("04 00 86 00 01"))));
      assertEquals(2, client.registers(134, 2).length);
      assertEquals(125, client.registers(0, 125).length);
    }
  }

  @Test
  void aBusyPortFailsTheStartAndAClosedPublisherFreesIt() throws Exception {
    ModbusSettings settings;
    try (ServerSocket busy = new ServerSocket()) {
      busy.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0));
      int port = busy.getLocalPort();
      settings =
          new ModbusSettings(true, "127.0.0.1", port, Set.of(1), WordOrder.ABCD, BadValue.NAN);
      ModbusPublisher publisher =
          ModbusPublisher.of(plant(settings), TestPlants.access(TestPlants.store(silo)));
      IOException refused = assertThrows(IOException.class, publisher::start);
      assertTrue(refused.toString().contains("127.0.0.1 port " + port), refused.toString());
      publisher.close();
    }
    try (ModbusPublisher again = started(TestPlants.store(silo), settings)) {
      assertEquals("modbus+tcp://127.0.0.1:" + settings.port(), again.endpoint());
    }
  }

  @Test
  void fiftyStartsAndStopsLeaveNoThread() throws Exception {
    started(WordOrder.ABCD).close();
    int before = Thread.activeCount();
    for (int i = 0; i < 50; i++) {
      ModbusPublisher publisher = started(WordOrder.ABCD);
      publisher.close();
      publisher.close();
    }
    assertTrue(Thread.activeCount() <= before);
  }

  private ModbusPublisher started(WordOrder order) throws IOException {
    return started(TestPlants.store(silo), TestPlants.modbus(order, BadValue.NAN));
  }

  private static ModbusPublisher started(SnapshotStore store, ModbusSettings settings)
      throws IOException {
    ModbusPublisher publisher = ModbusPublisher.of(plant(settings), TestPlants.access(store));
    publisher.start();
    return publisher;
  }

  private static PlantSettings plant(ModbusSettings settings) {
    return TestPlants.plant(settings, TestPlants.config(TestPlants.silo("LT-101"), 1));
  }

  private static int port(ModbusPublisher publisher) {
    return Integer.parseInt(publisher.endpoint().replaceAll(".*:", ""));
  }

  private static void awaitRegister(RawClient client, int address, int value) throws IOException {
    long end = System.nanoTime() + Duration.ofSeconds(20).toNanos();
    int seen = client.registers(address, 1)[0];
    while (seen != value && System.nanoTime() < end) {
      seen = client.registers(address, 1)[0];
    }
    assertEquals(value, seen);
  }

  private static List<String> run(String... command) throws Exception {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(process.waitFor(60, TimeUnit.SECONDS), () -> String.join(" ", command));
    assertEquals(0, process.exitValue(), () -> String.join(" ", command) + "\n" + out);
    return out.lines().toList();
  }
}
