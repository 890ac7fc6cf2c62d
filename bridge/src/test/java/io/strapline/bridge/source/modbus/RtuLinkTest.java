package io.strapline.bridge.source.modbus;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.strapline.bridge.config.DeviceLine;
import io.strapline.bridge.config.ModbusLines;
import io.strapline.bridge.config.ModbusSettings.WordOrder;
import io.strapline.bridge.config.SourceSettings.ModbusDevice;
import io.strapline.bridge.config.SourceSettings.ModbusRegister;
import io.strapline.bridge.config.SourceSettings.RegisterType;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.bridge.modbus.Crc16;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Queue;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Units that misbehave in every way must never get a wrong number taken as good. */
@Timeout(60)
class RtuLinkTest {

  private static final DeviceLine LINE =
      new DeviceLine.Tcp("127.0.0.1", 1, ModbusLines.Framing.RTU);
  private static final ModbusDevice UNIT_17 = new ModbusDevice(LINE, 17, 1, 0.2, 1);

  private final Queue<byte[]> arriving = new ArrayDeque<>();
  private int opened;
  private int sent;

  /** What is answered to the n-th request, from 1, in portions. */
  private Function<Integer, List<byte[]>> script = number -> List.of();

  private final RtuLink link =
      new RtuLink(
          LINE,
          (line, timeout) -> {
            opened++;
            arriving.clear();
            return new Channel();
          });

  private final class Channel implements RtuChannel {
    @Override
    public void send(byte[] frame) {
      sent++;
      arriving.addAll(script.apply(sent));
    }

    @Override
    public int receive(byte[] buffer) {
      byte[] portion = arriving.poll();
      if (portion == null) {
        return 0;
      }
      System.arraycopy(portion, 0, buffer, 0, portion.length);
      return portion.length;
    }

    @Override
    public void drop() {
      arriving.clear();
    }

    @Override
    public void close() {}
  }

  private static ReadGroup group(int address, int count) {
    ModbusRegister register =
        new ModbusRegister(3, address, RegisterType.UINT16, WordOrder.ABCD, 1);
    return new ReadGroup(
        3, address, count, List.of(new ReadGroup.Item("LT-1", Signal.LEVEL, register)));
  }

  private static byte[] frame(String bare) {
    byte[] bytes = ScriptedDevice.hex(bare);
    ByteBuffer out = ByteBuffer.allocate(bytes.length + 2).put(bytes);
    Crc16.append(out, 0);
    return out.array();
  }

  @Test
  void thePublishedExchangeIsRead() throws IOException {
    // RTU-03-RSP-11 of modbus_frames.csv: unit 17, registers 108 to 110 are 555, 0, 100.
    script = number -> List.of(ScriptedDevice.hex("11 03 06 02 2B 00 00 00 64 C8 BA"));
    assertArrayEquals(ScriptedDevice.hex("022B00000064"), link.read(UNIT_17, group(0x6B, 3)));
    assertEquals(1, opened);
  }

  @Test
  void anAnswerMayComeByteByByte() throws IOException {
    byte[] whole = ScriptedDevice.hex("11 03 06 02 2B 00 00 00 64 C8 BA");
    script =
        number -> {
          Queue<byte[]> bytes = new ArrayDeque<>();
          for (byte each : whole) {
            bytes.add(new byte[] {each});
          }
          return List.copyOf(bytes);
        };
    assertArrayEquals(ScriptedDevice.hex("022B00000064"), link.read(UNIT_17, group(0x6B, 3)));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 125})
  void anEchoOfTheRequestIsLeftOut(int count) throws IOException {
    String request = String.format(java.util.Locale.ROOT, "11 03 00 6B 00 %02X", count);
    String answer =
        String.format(java.util.Locale.ROOT, "11 03 %02X", 2 * count) + "00 2A".repeat(count);
    script = number -> List.of(frame(request), frame(answer));
    assertEquals(42, ByteBuffer.wrap(link.read(UNIT_17, group(0x6B, count))).getShort());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "12 03 04 00 01 00 02", // another unit
        "11 04 04 00 01 00 02", // another function
        "11 03 02 00 01", // one register
        "11 03 06 00 01 00 02 00 03", // three
        "11 03 04 00 01 00 02 00", // a spare byte
        "11 06 00 01 00 02",
        "11 84 02", // exception of another function
        "12 83 02", // exception of another unit
        "11 03 04 00 01", // cut off
        "11",
        "FF FF FF FF FF FF FF",
        "00 00 00 00 00 00 00"
      })
  void anAnswerThatDoesNotFitIsNotTakenAndTheNextReadIsRight(String bare) throws IOException {
    script = number -> List.of(frame(number == 1 ? bare : "11 03 04 00 07 00 08"));
    IOException refused = assertThrows(IOException.class, () -> link.read(UNIT_17, group(0x6B, 2)));
    assertFalse(refused instanceof RefusedException, refused.toString());
    assertArrayEquals(ScriptedDevice.hex("00070008"), link.read(UNIT_17, group(0x6B, 2)));
    assertEquals(2, opened, "a new connection");
  }

  @Test
  void aWrongChecksumIsNotTaken() {
    byte[] answer = frame("11 03 04 00 01 00 02");
    for (int i = 0; i < answer.length; i++) {
      byte[] wrong = answer.clone();
      wrong[i] ^= 0x10;
      script = number -> List.of(wrong);
      assertThrows(IOException.class, () -> link.read(UNIT_17, group(0x6B, 2)), "byte " + i);
    }
  }

  @Test
  void aRefusalKeepsTheLine() throws IOException {
    script = number -> List.of(frame(number == 1 ? "11 83 02" : "11 03 04 00 07 00 08"));
    RefusedException refused =
        assertThrows(RefusedException.class, () -> link.read(UNIT_17, group(0x6B, 2)));
    assertEquals("device answers exception 2", refused.getMessage());
    link.read(UNIT_17, group(0x6B, 2));
    assertEquals(1, opened);
  }

  @Test
  void whatLiesThereBeforeARequestIsDropped() throws IOException {
    script = number -> List.of(frame("11 03 04 00 07 00 08"));
    link.read(UNIT_17, group(0x6B, 2));
    arriving.add(frame("11 03 04 00 63 00 63"));
    assertArrayEquals(ScriptedDevice.hex("00070008"), link.read(UNIT_17, group(0x6B, 2)));
  }

  @Test
  void silenceIsAnErrorAfterOneTry() {
    assertThrows(IOException.class, () -> link.read(UNIT_17, group(0x6B, 2)));
    assertEquals(1, sent);
  }

  @Test
  void anAbortedLinkReadsNoMore() {
    link.abort();
    assertThrows(IOException.class, () -> link.read(UNIT_17, group(0x6B, 2)));
    assertEquals(0, opened);
  }
}
