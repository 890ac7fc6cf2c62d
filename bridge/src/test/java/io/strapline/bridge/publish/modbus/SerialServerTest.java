package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.ModbusLines;
import io.strapline.bridge.config.SerialLine;
import io.strapline.bridge.config.SerialLine.Parity;
import io.strapline.bridge.modbus.BurstReader;
import io.strapline.bridge.modbus.RtuTiming;
import io.strapline.bridge.modbus.Wire;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Queue;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Unit 17 on a line that a test speaks on, burst by burst. */
@Timeout(60)
class SerialServerTest {

  private static final long SEED = 20261125;
  private static final String READ = "11 03 00 05 00 01";
  private static final String ANSWER = "11 03 02 00 05";

  private final SerialLine line =
      new SerialLine("test line", 115_200, Parity.EVEN, 1, OptionalDouble.empty());
  private final TestMemory memory = new TestMemory(200, -1);
  private final List<AutoCloseable> open = new ArrayList<>();

  SerialServerTest() {
    memory.set(5, 5);
  }

  @AfterEach
  void closeAll() throws Exception {
    for (AutoCloseable each : open) {
      each.close();
    }
  }

  private TestWire serve(boolean writes, boolean echoes) throws IOException {
    TestWire wire = new TestWire(echoes);
    SerialServer server =
        new SerialServer(
            new ModbusLines.Served(line, 17, writes), TestServer.answers(memory), any -> wire);
    server.start();
    open.add(server);
    return wire;
  }

  private static byte[] frame(String bare) {
    return RtuFramingTest.withChecksum(bare);
  }

  private static String hear(TestWire wire) throws InterruptedException {
    return Bytes.text(wire.hear(20_000));
  }

  /** Sends something that must not be answered, then a poll that must be. */
  private static void assertSilent(TestWire wire, byte[]... bursts) throws InterruptedException {
    for (byte[] burst : bursts) {
      wire.say(burst);
    }
    wire.say(frame(READ));
    assertEquals(Bytes.text(frame(ANSWER)), hear(wire), "the first answer is that of the poll");
  }

  @Test
  void itsOwnUnitIsAnswered() throws Exception {
    assertSilent(serve(false, false));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "11 03 00 6B 00 03 76 88", // RTU-CRC of modbus_negative.csv
        "11 03 00 6B 00 03 87 76", // RTU-CRC-SWAP
        "01 03 00 6B 00 03 76 87", // RTU-WRONG-CRC-UNIT1
        "12 03 00 6B 00 03 76 B4", // RTU-OTHER
        "00 06 00 01 00 03 99 DA", // RTU-BCAST-W
        "11",
        "11 03",
        "11 03 00 6B 00",
        "FF",
        "00 00 00 00 00 00 00 00",
        "11 03 06 02 2B 00 00 00 64 C8 BA", // an answer of unit 17: heard, not asked
        "12 03 06 02 2B 00 00 00 64 8C 9E"
      })
  void nothingIsAnsweredToWhatIsBrokenOrForOthers(String bytes) throws Exception {
    assertSilent(serve(true, false), Bytes.of(bytes));
  }

  @Test
  void aBroadcastIsExecutedWhereTheMasterMayWriteAndNowhereElse() throws Exception {
    byte[] broadcast = Bytes.of("00 06 00 01 00 03 99 DA");
    assertSilent(serve(false, false), broadcast);
    assertEquals(List.of(), memory.writes());
    assertSilent(serve(true, false), broadcast);
    assertEquals(3, memory.register(1));
  }

  @ParameterizedTest
  @ValueSource(strings = {"41", "08 00 00 A5 37", "07", "0B", "11", "18 00 05", "64 01 02 03"})
  void unknownFunctionsGetException01(String pdu) throws Exception {
    TestWire wire = serve(true, false);
    wire.say(frame("11 " + pdu));
    String code = Bytes.text(new byte[] {(byte) (Bytes.of(pdu)[0] | 0x80)});
    assertEquals(Bytes.text(frame("11 " + code + " 01")), hear(wire));
  }

  @ParameterizedTest
  @ValueSource(strings = {"00 00 00 7F", "00 00 00 00", "00 00 00 7E", "00 00 FF FF"})
  void wrongQuantitiesGetException03(String range) throws Exception {
    TestWire wire = serve(true, false);
    wire.say(frame("11 03 " + range));
    assertEquals(Bytes.text(frame("11 83 03")), hear(wire));
  }

  @Test
  void framesThatAreTooLongForTheLineAreLeftAndTheNextPollIsAnswered() throws Exception {
    TestWire wire = serve(true, false);
    byte[] oversize = new byte[264];
    byte[] head = Bytes.of("11 10 00 00 00 7F FF");
    System.arraycopy(head, 0, oversize, 0, head.length);
    assertSilent(wire, java.util.Arrays.copyOf(oversize, 256), oversize);
    assertEquals(List.of(), memory.writes());
  }

  @Test
  void anotherUnitsExchangeInOnePortionWithOurRequestIsTakenApart() throws Exception {
    TestWire wire = serve(false, false);
    ByteArrayOutputStream burst = new ByteArrayOutputStream();
    burst.write(frame("12 03 00 6B 00 03"));
    burst.write(frame("12 03 06 02 2B 00 00 00 64"));
    burst.write(frame(READ));
    wire.say(burst.toByteArray());
    assertEquals(Bytes.text(frame(ANSWER)), hear(wire));
  }

  @Test
  void ofTwoRequestsInOnePortionTheMasterWaitsForTheLast() throws Exception {
    TestWire wire = serve(true, false);
    ByteArrayOutputStream burst = new ByteArrayOutputStream();
    burst.write(frame("11 06 00 01 BE EF"));
    burst.write(frame(READ));
    wire.say(burst.toByteArray());
    assertEquals(Bytes.text(frame(ANSWER)), hear(wire));
    assertEquals(List.of(), memory.writes(), "the first was given up by its master");
  }

  @Test
  void noiseInFrontOfARequestSpoilsItAndTheNextIsAnswered() throws Exception {
    byte[] noisy = new byte[10];
    System.arraycopy(frame(READ), 0, noisy, 2, 8);
    assertSilent(serve(false, false), noisy);
  }

  @Test
  void aLineThatEchoesNeverMakesAnAnswerARequest() throws Exception {
    TestWire wire = serve(true, true);
    for (int i = 1; i <= 5; i++) {
      wire.say(frame("11 06 00 01 00 0" + i));
      assertEquals(Bytes.text(frame("11 06 00 01 00 0" + i)), hear(wire));
      wire.say(frame(READ));
      assertEquals(Bytes.text(frame(ANSWER)), hear(wire));
    }
    assertEquals(5, memory.writes().size(), "each once");
  }

  @Test
  void onALineWithoutEchoARepeatedCommandIsACommand() throws Exception {
    TestWire wire = serve(true, false);
    assertSilent(wire);
    assertSilent(wire);
    for (int i = 0; i < 3; i++) {
      wire.say(frame("11 06 00 01 00 03"));
      assertEquals(Bytes.text(frame("11 06 00 01 00 03")), hear(wire));
    }
    assertEquals(3, memory.writes().size());
  }

  @Test
  void writesOfAMasterThatMayNotGetException01() throws Exception {
    TestWire wire = serve(false, false);
    wire.say(frame("11 06 00 01 00 03"));
    assertEquals(Bytes.text(frame("11 86 01")), hear(wire));
    assertEquals(List.of(), memory.writes());
  }

  @Test
  void noiseOfEverySortLeavesTheServerAnswering() throws Exception {
    TestWire wire = serve(true, false);
    Random random = new Random(SEED);
    for (int round = 0; round < 300; round++) {
      byte[] noise = new byte[1 + random.nextInt(300)];
      random.nextBytes(noise);
      wire.say(noise);
    }
    assertSilent(wire);
    assertEquals(List.of(), memory.writes(), "seed " + SEED);
  }

  @Test
  void aLineThatIsLostIsOpenedAgain() throws Exception {
    Queue<TestWire> wires =
        new ArrayDeque<>(List.of(new TestWire(false), new TestWire(false), new TestWire(false)));
    List<TestWire> opened = new java.util.concurrent.CopyOnWriteArrayList<>();
    Wire.Opener opener =
        any -> {
          TestWire next = wires.remove();
          opened.add(next);
          return next;
        };
    SerialServer server =
        new SerialServer(
            new ModbusLines.Served(line, 17, false), TestServer.answers(memory), opener);
    server.start();
    open.add(server);
    assertSilent(opened.get(0));
    opened.get(0).unplug();
    io.strapline.bridge.testing.Eventually.holds("opened again", () -> opened.size() == 2);
    assertSilent(opened.get(1));
  }

  /** Gives one byte a read, with a number of empty looks in front of each. */
  private static final class SlowWire implements Wire {
    private final Queue<Integer> bytes = new ArrayDeque<>();
    private final int emptyLooks;
    private int looks;

    SlowWire(byte[] sent, int emptyLooks) {
      for (byte each : sent) {
        bytes.add((int) each);
      }
      this.emptyLooks = emptyLooks;
    }

    @Override
    public int read(byte[] buffer) {
      looks = 0;
      buffer[0] = bytes.remove().byteValue();
      return 1;
    }

    @Override
    public int available() {
      return bytes.isEmpty() || looks++ < emptyLooks ? 0 : 1;
    }

    @Override
    public void write(byte[] sent) {}

    @Override
    public void close() {}
  }

  @Test
  void aFrameWithoutAHoleIsReadWholeAndOneWithAHoleIsDropped() throws IOException {
    // End after an hour, torn after a nanosecond or after an hour: only looks make a silence.
    byte[] frame = frame(READ);
    long millisecond = 1_000_000;
    RtuTiming strict = new RtuTiming(20 * millisecond, 1);
    RtuTiming patient = new RtuTiming(20 * millisecond, 20 * millisecond);
    assertEquals(8, new BurstReader(strict).next(new SlowWire(frame, 0)).length);
    assertEquals(0, new BurstReader(strict).next(new SlowWire(frame, 2)).length);
    assertEquals(8, new BurstReader(patient).next(new SlowWire(frame, 2)).length);
    assertTrue(new BurstReader(patient).next(new SlowWire(new byte[3000], 0)).length == 0);
  }
}
