package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.publish.modbus.CheckTable.Row;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** PDUs in, PDUs out, over 1000 registers and coils of which number 601 cannot be written. */
class AnswersTest {

  private static final long SEED = 20261125;

  private final TestMemory memory = new TestMemory(1000, 601);
  private final Answers answers = TestServer.answers(memory);

  private String ask(String pdu) throws GoneException {
    return TestServer.pdu(answers, TestPeer.WRITER, pdu);
  }

  static List<Row> serverCases() {
    return CheckTable.rows("server_cases.csv");
  }

  @ParameterizedTest
  @MethodSource("serverCases")
  void everyCaseIsAnsweredAsTheSpecificationSays(Row row) throws GoneException {
    byte[] before = image();
    assertEquals(row.get("expected"), ask(row.get("pdu_hex")), row.toString());
    boolean refused = (Bytes.of(row.get("expected"))[0] & 0x80) != 0;
    assertEquals(refused, memory.writes().isEmpty() && Arrays.equals(before, image()) && refused);
  }

  private byte[] image() {
    ByteBuffer all = ByteBuffer.allocate(2000);
    memory.get().putRegisters(0, 1000, all);
    return all.array();
  }

  @Test
  void fiftyFiveCasesApply() {
    assertEquals(55, serverCases().size());
  }

  /** Rows about the functions that write; data bytes are filled in. */
  static List<Row> faultyWrites() {
    return CheckTable.rows("modbus_negative.csv").stream()
        .filter(row -> "PDU".equals(row.get("transport")))
        .filter(row -> row.get("request_hex").matches("(05|0F|10|17).*"))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("faultyWrites")
  void faultyWritesOfThePublishedTableAreRefusedAndWriteNothing(Row row) throws GoneException {
    String request = row.get("request_hex");
    if (request.contains("<")) {
      int data = Integer.parseInt(request.replaceAll(".*<(\\d+).*", "$1"));
      request = request.replaceAll(" <.*", "") + " 00".repeat(data);
    }
    assertEquals(row.get("expected"), ask(request), row.toString());
    assertEquals(List.of(), memory.writes());
  }

  @Test
  void fiveFaultyWritesApply() {
    assertEquals(5, faultyWrites().size());
  }

  @Test
  void quantitiesThatAreWrittenReachExactlyToTheLimitsOfTheSpecification() throws GoneException {
    Answers large = TestServer.answers(new TestMemory(4000, -1));
    assertEquals(1968, limit("0F", "Write Multiple Coils"));
    assertEquals(123, limit("10", "Write Multiple Registers"));
    assertEquals(121, limit("17", "Read/Write Multiple Registers (write part)"));
    assertEquals(125, limit("17", "Read/Write Multiple Registers (read part)"));
    for (int count : new int[] {1, 1968}) {
      assertEquals(0x0F, answerTo(large, coils(count)));
    }
    assertEquals(0x8F, answerTo(large, coils(1969)));
    for (int count : new int[] {1, 123}) {
      assertEquals(0x10, answerTo(large, registers(count)));
    }
    assertEquals(0x90, answerTo(large, registers(124)));
    assertEquals(0x17, answerTo(large, readWrite(125, 121)));
    assertEquals(0x97, answerTo(large, readWrite(126, 121)));
    assertEquals(0x97, answerTo(large, readWrite(125, 122)));
  }

  private static int limit(String function, String name) {
    return CheckTable.rows("modbus_limits.csv").stream()
        .filter(row -> row.get("function_hex").equals(function) && row.get("name").equals(name))
        .map(row -> Integer.parseInt(row.get("max")))
        .findFirst()
        .orElseThrow();
  }

  private static int answerTo(Answers answers, byte[] pdu) throws GoneException {
    return TestServer.pdu(answers, TestPeer.WRITER, pdu)[0] & 0xFF;
  }

  private static byte[] coils(int count) {
    int bytes = (count + 7) / 8;
    return ByteBuffer.allocate(6 + bytes)
        .put((byte) 0x0F)
        .putShort((short) 0)
        .putShort((short) count)
        .put((byte) bytes)
        .array();
  }

  private static byte[] registers(int count) {
    return ByteBuffer.allocate(6 + 2 * count)
        .put((byte) 0x10)
        .putShort((short) 0)
        .putShort((short) count)
        .put((byte) (2 * count))
        .array();
  }

  private static byte[] readWrite(int read, int write) {
    return ByteBuffer.allocate(10 + 2 * write)
        .put((byte) 0x17)
        .putShort((short) 0)
        .putShort((short) read)
        .putShort((short) 0)
        .putShort((short) write)
        .put((byte) (2 * write))
        .array();
  }

  @Test
  void theExceptionCodesAreThoseOfSection7() {
    for (ExceptionCode code : ExceptionCode.values()) {
      Row row =
          CheckTable.rows("modbus_exceptions.csv").stream()
              .filter(r -> Integer.parseInt(r.get("code_hex"), 16) == code.code())
              .findFirst()
              .orElseThrow();
      assertEquals(row.get("name"), code.name().replace('_', ' '));
    }
    assertEquals(5, ExceptionCode.values().length);
  }

  @Test
  void theDocumentedExampleOfAMaskGivesItsResult() throws GoneException {
    // Section 6.16: 12h AND F2h OR (25h AND NOT F2h) is 17h.
    assertEquals(0x17, WriteFunctions.masked(0x12, 0xF2, 0x25));
    TestMemory held = TestMemories.ofTheSpecification();
    TestServer.pdu(TestServer.answers(held), TestPeer.WRITER, "16 00 04 00 F2 00 25");
    assertEquals(0x17, held.register(4));
  }

  @ParameterizedTest
  @CsvSource({
    "0000, 0000, FFFF, FFFF",
    "FFFF, 0000, 0000, 0000",
    "A5A5, FFFF, 0000, A5A5",
    "A5A5, FFFF, FFFF, A5A5",
    "00FF, 0F0F, F0F0, F0FF"
  })
  void masksSelectBetweenTheHeldAndTheGivenBits(String held, String and, String or, String made) {
    // By hand: a bit of AND that is 1 keeps the held bit, one that is 0 takes the bit of OR.
    assertEquals(hex(made), WriteFunctions.masked(hex(held), hex(and), hex(or)));
  }

  private static int hex(String text) {
    return Integer.parseInt(text, 16);
  }

  @Test
  void whatWasWrittenIsRead() throws GoneException {
    ask("0F 00 13 00 0A 02 CD 01");
    assertEquals("01 02 CD 01", ask("01 00 13 00 0A"));
    ask("10 00 01 00 02 04 00 0A 01 02");
    assertEquals("03 04 00 0A 01 02", ask("03 00 01 00 02"));
    ask("05 00 AC FF 00");
    assertTrue(memory.coil(0xAC));
    ask("05 00 AC 00 00");
    assertFalse(memory.coil(0xAC));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "05 00 01 FF 00",
        "06 00 01 00 03",
        "0F 00 13 00 0A 02 CD 01",
        "10 00 01 00 02 04 00 0A 01 02",
        "16 00 04 00 F2 00 25",
        "17 00 03 00 06 00 0E 00 03 06 00 FF 00 FF 00 FF",
        // Built wrongly, but whoever may not write gets 01 whatever it sends.
        "10 00 01 00 02 03 00 0A 01",
        "05"
      })
  void whoMayNotWriteGetsException01AndWritesNothing(String pdu) throws GoneException {
    String refusal = String.format(Locale.ROOT, "%02X 01", (Bytes.of(pdu)[0] & 0xFF) | 0x80);
    assertEquals(refusal, TestServer.pdu(answers, TestPeer.READER, pdu));
    assertEquals(List.of(), memory.writes());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "05 00 01 FF 00",
        "06 00 01 00 03",
        "0F 00 13 00 0A 02 CD 01",
        "10 00 01 00 02 04 00 0A 01 02",
        "16 00 04 00 F2 00 25",
        "17 00 03 00 06 00 0E 00 03 06 00 FF 00 FF 00 FF"
      })
  void aCommandOfAPeerThatHasGoneIsNotExecuted(String pdu) {
    ByteBuffer out = ByteBuffer.allocate(Framing.MAX_FRAME);
    ByteBuffer request = ByteBuffer.wrap(Bytes.of(pdu));
    assertThrows(GoneException.class, () -> answers.put(request, out, TestPeer.GONE));
    assertEquals(0, out.position());
    assertEquals(List.of(), memory.writes());
  }

  @Test
  void randomPdusAreAnsweredOnceAndNeverTooLong() throws GoneException {
    Random random = new Random(SEED);
    List<Integer> served = Stream.of(Function.values()).map(Function::code).toList();
    for (int round = 0; round < 100_000; round++) {
      byte[] pdu = new byte[1 + random.nextInt(round % 10 == 0 ? 253 : 14)];
      random.nextBytes(pdu);
      if (round % 2 == 0) {
        pdu[0] = (byte) served.get(random.nextInt(served.size())).intValue();
      }
      byte[] answer = TestServer.pdu(answers, TestPeer.WRITER, pdu);
      String what = "seed " + SEED + ", round " + round + ", " + Bytes.text(pdu);
      assertTrue(answer.length >= 2 && answer.length <= 253, what);
      assertEquals(pdu[0] & 0x7F, answer[0] & 0x7F, what);
      assertTrue(answer.length > 2 || answer[1] != 4, () -> Objects.requireNonNull(what));
    }
  }
}
