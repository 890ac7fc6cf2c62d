package io.strapline.bridge.source.modbus;

import static io.strapline.bridge.source.modbus.ScriptedDevice.hex;
import static io.strapline.bridge.source.modbus.ScriptedDevice.right;
import static io.strapline.bridge.source.modbus.ScriptedDevice.with;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.SourceSettings.ModbusDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A device that misbehaves in every way must never get a wrong number taken as good. */
@Timeout(60)
class DeviceLinkIT {

  private static ModbusDevice device(ScriptedDevice device, double timeoutSeconds) {
    return new ModbusDevice("127.0.0.1", device.port(), 1, 1, timeoutSeconds, 1);
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 4})
  void registersArriveAsTheyAre(int function) throws IOException {
    try (ScriptedDevice device =
        new ScriptedDevice((n, request, out) -> out.write(right(request)))) {
      DeviceLink link = new DeviceLink(device(device, 5));
      assertArrayEquals(hex("FFFE FFFF"), link.read(function, 65_534, 2));
      byte[] most = link.read(function, 1000, 125);
      assertEquals(250, most.length);
      assertEquals(1124, ByteBuffer.wrap(most).getShort(248));
      assertEquals(1, device.connections());
      link.disconnect();
    }
  }

  @Test
  void aLateAnswerIsNeverTakenForTheNextOne() throws Exception {
    CountDownLatch gaveUp = new CountDownLatch(1);
    CountDownLatch answered = new CountDownLatch(1);
    ScriptedDevice.Script lateOnce =
        (number, request, out) -> {
          if (number == 1) {
            gaveUp.await(20, TimeUnit.SECONDS);
            out.write(right(request));
            answered.countDown();
          } else {
            out.write(right(request));
          }
        };
    try (ScriptedDevice device = new ScriptedDevice(lateOnce)) {
      DeviceLink link = new DeviceLink(device(device, 0.3));
      assertThrows(IOException.class, () -> link.read(3, 1000, 2));
      gaveUp.countDown();
      assertTrue(answered.await(20, TimeUnit.SECONDS));
      for (int address : new int[] {2000, 2100, 2200}) {
        assertEquals(address, ByteBuffer.wrap(patiently(link, address)).getShort(0));
      }
      link.disconnect();
    }
  }

  // A busy machine may need longer than the short time-out; a wrong number must never come.
  private static byte[] patiently(DeviceLink link, int address) throws IOException {
    IOException last = new IOException("not tried");
    for (int i = 0; i < 20; i++) {
      try {
        return link.read(3, address, 2);
      } catch (IOException slow) {
        last = slow;
      }
    }
    throw last;
  }

  private static Named<UnaryOperator<byte[]>> wrong(String name, UnaryOperator<byte[]> answer) {
    return Named.of(name, answer);
  }

  /** Answers to a read of two registers that must not be believed. */
  static Stream<Named<UnaryOperator<byte[]>>> wrongAnswers() {
    return Stream.of(
        wrong("transaction of the one before", r -> with(right(r), 1, r[1] - 1)),
        wrong("transaction, high byte", r -> with(right(r), 0, 0x55)),
        wrong("protocol 7", r -> with(right(r), 3, 7)),
        wrong("other unit", r -> with(right(r), 6, 9)),
        wrong("function 04 for 03", r -> with(right(r), 7, 4)),
        wrong("function of a write", r -> with(right(r), 7, 6)),
        wrong("unknown function", r -> with(right(r), 7, 0x41)),
        wrong("one register", r -> shortened(r, 1)),
        wrong("no register", r -> shortened(r, 0)),
        wrong("three registers", r -> shortened(r, 3)),
        wrong("byte count without data", r -> with(shortened(r, 1), 8, 4)),
        wrong("byte count too small", r -> with(right(r), 8, 2)),
        wrong("byte count odd", r -> with(right(r), 8, 3)),
        wrong("length 0", r -> with(right(r), 5, 0)),
        wrong("length 2", r -> with(right(r), 5, 2)),
        wrong("length 1000", r -> with(with(right(r), 4, 3), 5, 0xE8)),
        wrong("length 65535", r -> with(with(right(r), 4, 0xFF), 5, 0xFF)),
        wrong("exception with another transaction", r -> exception(with(r, 1, r[1] + 1))),
        wrong("exception of another unit", r -> exception(with(r, 6, 9))),
        wrong("exception of another function", r -> exception(with(r, 7, 4))),
        wrong(
            "text",
            r ->
                "HTTP/1.1 400 Bad Request\r\n\r\n"
                    .getBytes(java.nio.charset.StandardCharsets.US_ASCII)),
        wrong("all ones", r -> hex("FF".repeat(40))),
        wrong("all zeros", r -> new byte[40]));
  }

  private static byte[] shortened(byte[] request, int count) {
    return right(with(request, 11, count));
  }

  private static byte[] exception(byte[] request) {
    byte[] answer = Arrays.copyOf(request, 9);
    answer[5] = 3;
    answer[7] = (byte) (request[7] | 0x80);
    answer[8] = 2;
    return answer;
  }

  @ParameterizedTest
  @MethodSource("wrongAnswers")
  void anAnswerThatDoesNotFitIsNotTakenAndTheNextReadIsRight(UnaryOperator<byte[]> wrong)
      throws IOException {
    ScriptedDevice.Script script =
        (number, request, out) -> out.write(number == 2 ? wrong.apply(request) : right(request));
    try (ScriptedDevice device = new ScriptedDevice(script)) {
      DeviceLink link = new DeviceLink(device(device, 1));
      assertEquals(500, ByteBuffer.wrap(link.read(3, 500, 2)).getShort());
      IOException refused = assertThrows(IOException.class, () -> link.read(3, 600, 2));
      assertFalse(refused instanceof RefusedException, refused.toString());
      assertEquals(700, ByteBuffer.wrap(link.read(3, 700, 2)).getShort());
      assertEquals(2, device.connections(), "a new connection after a wrong answer");
      link.disconnect();
    }
  }

  @Test
  void aSecondAnswerIsNotTakenForTheNextRequest() throws IOException {
    ScriptedDevice.Script twice =
        (number, request, out) -> {
          out.write(right(request));
          if (number == 1) {
            out.write(right(request));
          }
        };
    try (ScriptedDevice device = new ScriptedDevice(twice)) {
      DeviceLink link = new DeviceLink(device(device, 5));
      // Whether both answers are there at the first read or the second comes later, one read fails
      // and none is wrong.
      for (int address : new int[] {500, 600, 700}) {
        assertEquals(address, ByteBuffer.wrap(patiently(link, address)).getShort());
      }
      assertEquals(2, device.connections());
      link.disconnect();
    }
  }

  @Test
  void aTimeOutIsForTheWholeAnswerAndNotForEachByte() throws Exception {
    CountDownLatch over = new CountDownLatch(1);
    ScriptedDevice.Script dribble =
        (number, request, out) -> {
          for (byte one : right(request)) {
            out.write(one);
            over.await(100, TimeUnit.MILLISECONDS);
          }
        };
    try (ScriptedDevice device = new ScriptedDevice(dribble)) {
      // 13 bytes take 1.2 s; no byte takes longer than the time-out of 0.4 s.
      DeviceLink link = new DeviceLink(device(device, 0.4));
      assertThrows(IOException.class, () -> link.read(3, 500, 2));
      over.countDown();
    }
  }

  @Test
  void aDeviceThatNeverAnswersOrHangsUpIsAnError() throws IOException {
    try (ScriptedDevice mute = new ScriptedDevice((n, request, out) -> out.flush());
        ScriptedDevice rude = new ScriptedDevice((n, request, out) -> out.close())) {
      assertThrows(IOException.class, () -> new DeviceLink(device(mute, 0.2)).read(3, 1, 1));
      assertThrows(IOException.class, () -> new DeviceLink(device(rude, 5)).read(3, 1, 1));
      assertEquals(1, mute.requests(), "one request, one try");
    }
  }

  @Test
  void aRefusalKeepsTheConnection() throws IOException {
    ScriptedDevice.Script script =
        (number, request, out) -> out.write(number == 1 ? exception(request) : right(request));
    try (ScriptedDevice device = new ScriptedDevice(script)) {
      DeviceLink link = new DeviceLink(device(device, 5));
      RefusedException refused = assertThrows(RefusedException.class, () -> link.read(3, 500, 2));
      assertEquals("device answers exception 2", refused.getMessage());
      assertEquals(600, ByteBuffer.wrap(link.read(3, 600, 2)).getShort());
      assertEquals(1, device.connections());
      link.disconnect();
    }
  }

  @Test
  void abortEndsAReadThatIsGoingOn() throws Exception {
    CountDownLatch asked = new CountDownLatch(1);
    try (ScriptedDevice mute = new ScriptedDevice((n, request, out) -> asked.countDown())) {
      DeviceLink link = new DeviceLink(device(mute, 3600));
      FutureTask<byte[]> reading = new FutureTask<>(() -> link.read(3, 1, 1));
      Thread reader = new Thread(reading, "reader");
      reader.setDaemon(true);
      reader.start();
      assertTrue(asked.await(20, TimeUnit.SECONDS));
      link.abort();
      assertThrows(ExecutionException.class, () -> reading.get(20, TimeUnit.SECONDS));
      assertThrows(IOException.class, () -> link.read(3, 1, 1));
    }
  }

  @Test
  void moreThan65535RequestsKeepTheirNumbersApart() throws IOException {
    try (ScriptedDevice device =
        new ScriptedDevice((n, request, out) -> out.write(right(request)))) {
      DeviceLink link = new DeviceLink(device(device, 30));
      for (int i = 0; i < 66_000; i++) {
        int address = i % 60_000;
        assertEquals(address, ByteBuffer.wrap(link.read(4, address, 1)).getShort() & 0xFFFF);
      }
      assertEquals(List.of(1, 66_000), List.of(device.connections(), device.requests()));
      link.disconnect();
    }
  }
}
