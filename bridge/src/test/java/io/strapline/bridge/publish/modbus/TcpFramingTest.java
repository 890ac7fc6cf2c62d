package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.publish.modbus.CheckTable.Row;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Frames in, frames out, without sockets. */
class TcpFramingTest {

  /** Requests of served functions whose answer is printed in the same file. */
  static List<Row> publishedExchanges() {
    List<Row> rows = CheckTable.rows("modbus_frames.csv");
    return rows.stream()
        .filter(row -> row.get("id").endsWith("-REQ"))
        .filter(row -> Set.of("PDU", "TCP").contains(row.get("transport")))
        .filter(row -> row.get("function_hex").matches("0[1-6F]|1[067]"))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("publishedExchanges")
  void publishedRequestsGetThePublishedAnswers(Row request) {
    byte[] frame = tcp(request);
    boolean writes = !request.get("function_hex").matches("0[1-4]");
    Answers answers =
        writes
            ? TestServer.answers(memoryFor(request))
            : TestServer.answers(TestImages::ofTheSpecification);
    assertEquals(
        Bytes.text(tcp(answerTo(request))),
        Bytes.text(TestServer.frame(TestServer.tcp(answers), TestPeer.WRITER, frame)),
        request.get("source"));
  }

  @Test
  void twentyThreePublishedExchangesApply() {
    // PDU and TCP: functions 01 to 04 and the example of section 7 twice, the guide's once, and
    // the six functions that write twice.
    assertEquals(11 + 12, publishedExchanges().size());
  }

  private static TestMemory memoryFor(Row request) {
    return request.get("function_hex").equals("17")
        ? TestMemories.ofReadWrite()
        : TestMemories.ofTheSpecification();
  }

  private static Row answerTo(Row request) {
    String id = request.get("id").replace("-REQ", "-RSP");
    return CheckTable.rows("modbus_frames.csv").stream()
        .filter(row -> id.equals(row.get("id")))
        .findFirst()
        .orElseThrow();
  }

  private static byte[] tcp(Row row) {
    byte[] bytes = Bytes.of(row.get("frame_hex"));
    return "TCP".equals(row.get("transport")) ? bytes : Bytes.frame(7, 255, bytes);
  }

  /** Rows about PDUs that only read; the framing rows need a socket. */
  static List<Row> faultyRequests() {
    return CheckTable.rows("modbus_negative.csv").stream()
        .filter(row -> "PDU".equals(row.get("transport")))
        .filter(row -> !row.get("request_hex").matches("(05|0F|10|17).*"))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("faultyRequests")
  void boundaryRequestsAreAnsweredAsTheSpecificationSays(Row row) {
    int size = row.get("request_hex").matches("0[12].*") ? 2000 : mapSize(row.get("expected"));
    byte[] pdu = Bytes.of(row.get("request_hex"));
    String answer = Bytes.text(pduOf(answer(TestImages.counting(size), Bytes.frame(1, 1, pdu))));
    // "83 03 (per-function figures) or ..." and "03 FA <250 data bytes> ..." begin with bytes.
    String expected = row.get("expected").replaceAll(" [(<].*", "");
    assertTrue(answer.startsWith(expected), () -> row + " got " + answer);
    assertEquals(dataBytes(row.get("expected")), pduOf(Bytes.of(answer), 0).length - 2);
  }

  @Test
  void elevenFaultyRequestsApply() {
    assertEquals(11, faultyRequests().size());
  }

  private static int mapSize(String expected) {
    return expected.contains("125 registers") ? 125 : 100;
  }

  private static int dataBytes(String expected) {
    return expected.contains("<") ? Integer.parseInt(expected.replaceAll(".*<(\\d+).*", "$1")) : 0;
  }

  @Test
  void quantitiesReachExactlyToTheLimitsOfTheSpecification() {
    for (Row row : CheckTable.rows("modbus_limits.csv")) {
      if (row.get("function_hex").matches("0[1-4]")) {
        int function = Integer.parseInt(row.get("function_hex"), 16);
        int max = Integer.parseInt(row.get("max"));
        assertEquals(function, functionOf(read(function, 0, Integer.parseInt(row.get("min")))));
        assertEquals(function, functionOf(read(function, 0, max)));
        assertException(3, read(function, 0, max + 1));
        assertException(3, read(function, 0, 0));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "05 00 01 FF 00",
        "05 00 AC 12 34",
        "06 00 01 00 03",
        "0F 00 13 00 0A 02 CD 01",
        "10 00 01 00 02 04 00 0A 01 02",
        "16 00 04 00 F2 00 25",
        "17 00 03 00 06 00 0E 00 03 06 00 FF 00 FF 00 FF",
        "07",
        "08 00 00 A5 37",
        "0B",
        "0C",
        "11",
        "14 07 05 00 04 00 01 00 02",
        "18 00 05",
        "2B 0D 00 00",
        "41",
        "41 00",
        "00",
        "83 00"
      })
  void whatMayNotBeWrittenAndEveryUnknownFunctionIsRefusedWithException01(String pdu) {
    byte[] answer = pduOf(answer(TestImages.counting(2000), Bytes.frame(1, 1, Bytes.of(pdu))));
    assertEquals((byte) (Bytes.of(pdu)[0] | 0x80), answer[0]);
    assertException(1, answer);
  }

  @ParameterizedTest
  @CsvSource({"0", "1", "17", "255"})
  void servedUnitsAreAnsweredWithTheUnitAsked(int unit) {
    byte[] answer = answer(TestImages.counting(100), Bytes.frame(9, unit, Bytes.of("0300000001")));
    assertEquals(unit, answer[6] & 0xFF);
    assertEquals("03 02 00 00", Bytes.text(pduOf(answer)));
  }

  @ParameterizedTest
  @CsvSource({"2", "7", "247", "254"})
  void otherUnitsGetException0B(int unit) {
    byte[] answer = answer(TestImages.counting(100), Bytes.frame(9, unit, Bytes.of("0300000001")));
    assertEquals(unit, answer[6] & 0xFF);
    assertException(0x0B, pduOf(answer));
  }

  @Test
  void aSpareByteIsAWrongLength() {
    assertException(3, pduOf(answer(TestImages.counting(9), frame("03 00 00 00 01 00"))));
    assertException(
        3, pduOf(answer(TestImages.counting(9), frame("03 00 00 00 01" + "0".repeat(496)))));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "03",
        "03 00",
        "04 00 00",
        "01 00 00 00",
        "02 00 00 00",
        "05 00 00",
        "06",
        "0F 00 00 00 01",
        "10 00 00 00 01",
        "16 00 00 00 00 00",
        "17 00 00 00 01 00 00 00 01",
        "2B"
      })
  void aFrameTooShortForItsFunctionIsNotAnswered(String pdu) {
    ByteBuffer out = ByteBuffer.allocate(Framing.MAX_FRAME);
    Framing requests = requests(() -> TestImages.counting(9));
    assertFalse(requests.answer(ByteBuffer.wrap(frame(pdu)), out, TestPeer.WRITER));
    assertEquals(0, out.position());
  }

  @Test
  void aRangeThatCutsAValueIsAnIllegalAddress() {
    AddressSpace space = new AddressSpace().map(0, 10).value(2, 2).value(4, 4);
    RegisterImage image = RegisterImage.of(space, new byte[20], new byte[2]);
    assertException(2, read(image, 3, 0, 3));
    assertException(2, read(image, 3, 3, 1));
    assertException(2, read(image, 4, 2, 4));
    assertEquals(3, functionOf(read(image, 3, 2, 2)));
    assertEquals(3, functionOf(read(image, 3, 0, 4)));
    assertEquals(3, functionOf(read(image, 3, 2, 6)));
  }

  @ParameterizedTest
  @CsvSource({"32767", "32768", "65534", "65535"})
  void addressesAbove32767AreNoNegativeNumbers(int address) {
    RegisterImage whole = TestImages.counting(65536);
    byte[] answer = read(whole, 3, address, 1);
    assertEquals(
        address, ByteBuffer.wrap(answer).getShort(2) & 0xFFFF, "the register holds its address");
    assertEquals(1, functionOf(read(whole, 1, address, 1)));
  }

  @Test
  void aRangePastTheLastAddressDoesNotWrap() {
    RegisterImage whole = TestImages.counting(65536);
    assertException(2, read(whole, 3, 65535, 2));
    assertException(2, read(whole, 2, 65530, 7));
    assertEquals(3, functionOf(read(whole, 3, 65534, 2)));
    assertEquals(2, functionOf(read(whole, 2, 65530, 6)));
  }

  @Test
  void anythingThrownInsideBecomesException04() {
    for (Throwable failure : List.of(new IllegalStateException("x"), new AssertionError("x"))) {
      Framing requests = requests(() -> sneak(failure));
      for (int i = 0; i < 3; i++) {
        assertException(4, pduOf(answer(requests, frame("03 00 00 00 01"))));
      }
    }
  }

  @Test
  void oneRequestReadsTheImageOnce() {
    int[] reads = {0};
    Framing requests =
        requests(
            () -> {
              reads[0]++;
              return TestImages.counting(200);
            });
    answer(requests, frame("03 00 00 00 7D"));
    assertEquals(1, reads[0]);
  }

  private static RegisterImage sneak(Throwable failure) {
    if (failure instanceof Error error) {
      throw error;
    }
    throw (RuntimeException) failure;
  }

  private static byte[] frame(String pdu) {
    return Bytes.frame(1, 1, Bytes.of(pdu));
  }

  private static byte[] read(int function, int address, int quantity) {
    return read(TestImages.counting(2000), function, address, quantity);
  }

  private static byte[] read(RegisterImage image, int function, int address, int quantity) {
    byte[] pdu =
        ByteBuffer.allocate(5)
            .put((byte) function)
            .putShort((short) address)
            .putShort((short) quantity)
            .array();
    return pduOf(answer(image, Bytes.frame(1, 1, pdu)));
  }

  private static byte[] answer(RegisterImage image, byte[] frame) {
    return answer(requests(() -> image), frame);
  }

  private static byte[] answer(Framing requests, byte[] frame) {
    byte[] answer = TestServer.frame(requests, TestPeer.READER, frame);
    assertEquals(answer.length - 6, ByteBuffer.wrap(answer).getShort(4), "length of the header");
    assertEquals(0, ByteBuffer.wrap(answer).getShort(2), "protocol of the header");
    assertEquals(ByteBuffer.wrap(frame).getShort(0), ByteBuffer.wrap(answer).getShort(0));
    return answer;
  }

  private static Framing requests(Supplier<RegisterImage> image) {
    return TestServer.tcp(TestServer.answers(image));
  }

  private static byte[] pduOf(byte[] frame) {
    return pduOf(frame, 7);
  }

  private static byte[] pduOf(byte[] frame, int from) {
    return Arrays.copyOfRange(frame, from, frame.length);
  }

  private static int functionOf(byte[] pdu) {
    return pdu[0] & 0xFF;
  }

  private static void assertException(int code, byte[] pdu) {
    assertEquals(2, pdu.length, () -> Bytes.text(pdu));
    assertTrue((pdu[0] & 0x80) != 0, () -> Bytes.text(pdu));
    assertEquals(code, pdu[1], () -> Bytes.text(pdu));
  }
}
