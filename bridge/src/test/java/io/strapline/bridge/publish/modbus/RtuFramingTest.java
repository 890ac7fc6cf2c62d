package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.SerialLine;
import io.strapline.bridge.config.SerialLine.Parity;
import io.strapline.bridge.modbus.Crc16;
import io.strapline.bridge.modbus.RtuLength;
import io.strapline.bridge.modbus.RtuTiming;
import io.strapline.bridge.publish.modbus.CheckTable.Row;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Serial frames in a stream, checksums, lengths and silences, against the published frames. */
class RtuFramingTest {

  private static List<Row> rtuRows() {
    return CheckTable.rows("modbus_frames.csv").stream()
        .filter(row -> "RTU".equals(row.get("transport")))
        .toList();
  }

  private static Framing framing(Answers answers) {
    return new RtuFraming(Set.of(17), answers);
  }

  static byte[] withChecksum(String frame) {
    byte[] bytes = Bytes.of(frame);
    ByteBuffer out = ByteBuffer.allocate(bytes.length + 2).put(bytes);
    Crc16.append(out, 0);
    return out.array();
  }

  @Test
  void everyPublishedSerialFrameHasItsChecksumAndItsLength() {
    for (Row row : rtuRows()) {
      byte[] frame = Bytes.of(row.get("frame_hex"));
      ByteBuffer bytes = ByteBuffer.wrap(frame);
      assertTrue(Crc16.isRight(bytes, 0, frame.length), row.toString());
      byte[] bare = Arrays.copyOf(frame, frame.length - 2);
      assertEquals(Bytes.text(frame), Bytes.text(withChecksum(Bytes.text(bare))));
      // The queue's answer counts its bytes in two bytes: nobody here needs it.
      if (!row.get("id").equals("FC18-RTU-RSP")) {
        int length =
            "request".equals(row.get("direction"))
                ? RtuLength.ofRequest(bytes, 0)
                : RtuLength.ofResponse(bytes, 0);
        assertEquals(frame.length, length, row.toString());
      }
    }
    assertEquals(48, rtuRows().size());
  }

  static List<Row> exchanges() {
    return rtuRows().stream()
        .filter(row -> row.get("id").endsWith("RTU-REQ"))
        .filter(row -> row.get("function_hex").matches("0[1-6F]|1[067]"))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("exchanges")
  void publishedRequestsGetThePublishedAnswers(Row request) {
    boolean writes = !request.get("function_hex").matches("0[1-4]");
    TestMemory memory =
        request.get("function_hex").equals("17")
            ? TestMemories.ofReadWrite()
            : TestMemories.ofTheSpecification();
    Answers answers =
        writes ? TestServer.answers(memory) : TestServer.answers(TestImages::ofTheSpecification);
    byte[] answer =
        TestServer.frame(framing(answers), TestPeer.WRITER, Bytes.of(request.get("frame_hex")));
    String id = request.get("id").replace("-REQ", "-RSP");
    Row expected = rtuRows().stream().filter(r -> id.equals(r.get("id"))).findFirst().orElseThrow();
    assertEquals(expected.get("frame_hex"), Bytes.text(answer), request.get("source"));
  }

  @Test
  void elevenExchangesApply() {
    assertEquals(11, exchanges().size());
  }

  private static Row negative(String id) {
    return CheckTable.rows("modbus_negative.csv").stream()
        .filter(row -> id.equals(row.get("id")))
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest
  @ValueSource(strings = {"RTU-CRC", "RTU-CRC-SWAP", "RTU-WRONG-CRC-UNIT1"})
  void aWrongChecksumBreaksTheStream(String id) {
    byte[] frame = Bytes.of(negative(id).get("request_hex"));
    Framing framing = framing(TestServer.answers(() -> TestImages.counting(200)));
    assertEquals(Framing.Frame.BROKEN, framing.look(ByteBuffer.wrap(frame)));
  }

  @Test
  void aBroadcastIsExecutedAndNotAnswered() {
    TestMemory memory = new TestMemory(100, -1);
    byte[] request = Bytes.of(negative("RTU-BCAST-W").get("request_hex"));
    assertEquals(
        0, TestServer.frame(framing(TestServer.answers(memory)), TestPeer.WRITER, request).length);
    assertEquals(3, memory.register(1));
  }

  @Test
  void anotherUnitBehindTheSameAddressGetsException0B() {
    Framing framing = framing(TestServer.answers(() -> TestImages.counting(200)));
    byte[] answer = TestServer.frame(framing, TestPeer.READER, withChecksum("12 03 00 6B 00 03"));
    assertEquals(Bytes.text(withChecksum("12 83 0B")), Bytes.text(answer));
  }

  @ParameterizedTest
  @ValueSource(strings = {"11 41", "11 41 01 02 03", "11 00 00", "11 83 02"})
  void anUnknownFunctionEndsWhereTheChecksumFits(String frame) {
    Framing framing = framing(TestServer.answers(() -> TestImages.counting(200)));
    byte[] whole = withChecksum(frame);
    for (int i = 0; i < whole.length; i++) {
      assertEquals(Framing.Frame.PARTIAL, framing.look(ByteBuffer.wrap(whole, 0, i)));
    }
    int code = (Bytes.of(frame)[1] & 0xFF) | 0x80;
    String refusal = "11 " + Bytes.text(new byte[] {(byte) code}) + " 01";
    assertEquals(
        Bytes.text(withChecksum(refusal)),
        Bytes.text(TestServer.frame(framing, TestPeer.READER, whole)));
  }

  @Test
  void framesArePartialUntilTheirLastByte() {
    Framing framing = framing(TestServer.answers(new TestMemory(1000, -1)));
    for (Row row : exchanges()) {
      byte[] whole = Bytes.of(row.get("frame_hex"));
      for (int i = 0; i < whole.length; i++) {
        assertEquals(
            Framing.Frame.PARTIAL, framing.look(ByteBuffer.wrap(whole, 0, i)), row.toString());
      }
      assertEquals(Framing.Frame.WHOLE, framing.look(ByteBuffer.wrap(whole)));
    }
  }

  @Test
  void lengthsBeyond256BytesAreNoFrames() {
    Framing framing = framing(TestServer.answers(new TestMemory(1000, -1)));
    // Byte count 255 of function 16 would make 264 bytes.
    byte[] head = Bytes.of("11 10 01 F4 00 7F FF");
    assertEquals(Framing.Frame.BROKEN, framing.look(ByteBuffer.wrap(head)));
    byte[] unknown = new byte[256];
    unknown[1] = 0x41;
    assertEquals(Framing.Frame.BROKEN, framing.look(ByteBuffer.wrap(unknown)));
  }

  @Test
  void nothingIsAnsweredToAPeerThatHasGone() {
    TestMemory memory = new TestMemory(100, -1);
    ByteBuffer out = ByteBuffer.allocate(Framing.MAX_FRAME);
    ByteBuffer in = ByteBuffer.wrap(withChecksum("11 06 00 01 00 03"));
    assertFalse(framing(TestServer.answers(memory)).answer(in, out, TestPeer.GONE));
    assertEquals(0, out.position());
    assertEquals(List.of(), memory.writes());
  }

  @Test
  void silencesAreThoseOfTheSerialLineGuide() {
    int[] bauds = {1200, 2400, 4800, 9600, 19_200};
    double[] ends = {32.0833, 16.0417, 8.0208, 4.0104, 2.0052};
    double[] torn = {13.7500, 6.8750, 3.4375, 1.7188, 0.8594};
    for (int i = 0; i < bauds.length; i++) {
      // As printed in modbus_limits.csv.
      Row row = limits("t3.5 at " + bauds[i] + " bit/s");
      assertEquals(Double.parseDouble(row.get("min")), ends[i]);
      assertTrue(row.get("note").startsWith("t1.5 = "), row.toString());
      RtuTiming timing = RtuTiming.of(line(bauds[i], OptionalDouble.empty()));
      assertEquals(ends[i], timing.endNanos() / 1e6, 1e-4);
      assertEquals(torn[i], timing.tornNanos() / 1e6, 1e-4);
    }
    // Fixed values above 19200 bit/s: 1.750 ms and 750 us.
    assertEquals(
        new RtuTiming(1_750_000, 750_000), RtuTiming.of(line(115_200, OptionalDouble.empty())));
    assertEquals(
        new RtuTiming(20_000_000, 20_000_000), RtuTiming.of(line(9600, OptionalDouble.of(0.02))));
  }

  private static Row limits(String name) {
    return CheckTable.rows("modbus_limits.csv").stream()
        .filter(row -> name.equals(row.get("name")))
        .findFirst()
        .orElseThrow();
  }

  private static SerialLine line(int baud, OptionalDouble silence) {
    return new SerialLine("/dev/null", baud, Parity.EVEN, 1, silence);
  }
}
