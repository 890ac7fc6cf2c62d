package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Device identification after section 6.21 of the Application Protocol V1.1b3. */
class IdentityTest {

  private static final int CONFORMITY = 0x83;

  private static byte[] ask(Identity identity, int code, int object) throws GoneException {
    TestMemory none = new TestMemory(0, -1);
    Answers answers = new Answers(none, none, identity);
    byte[] request = {0x2B, 0x0E, (byte) code, (byte) object};
    return TestServer.pdu(answers, TestPeer.READER, request);
  }

  private static Map<Integer, String> objects(byte[] answer) {
    ByteBuffer body = ByteBuffer.wrap(answer, 7, answer.length - 7);
    Map<Integer, String> objects = new LinkedHashMap<>();
    for (int i = 0; i < answer[6]; i++) {
      int id = body.get() & 0xFF;
      byte[] value = new byte[body.get() & 0xFF];
      body.get(value);
      objects.put(id, new String(value, StandardCharsets.US_ASCII));
    }
    assertEquals(0, body.remaining(), "nothing behind the last object");
    return objects;
  }

  @Test
  void thePublishedRequestGetsTheThreeBasicObjects() throws GoneException {
    // FC2B-PDU-REQ of modbus_frames.csv; the response printed there contradicts itself.
    byte[] answer = ask(TestServer.IDENTITY, 1, 0);
    assertEquals("2B 0E 01 83 00 00 03", Bytes.text(Arrays.copyOf(answer, 7)));
    assertEquals(Map.of(0, "Strapline", 1, "strapline-bridge", 2, "1.2.3"), objects(answer));
  }

  @Test
  void regularAddsNamesAndExtendedOurOwnObjects() throws GoneException {
    assertEquals(
        List.of(0, 1, 2, 4, 5, 6), List.copyOf(objects(ask(TestServer.IDENTITY, 2, 0)).keySet()));
    Map<Integer, String> all = objects(ask(TestServer.IDENTITY, 3, 0));
    assertEquals(List.of(0, 1, 2, 4, 5, 6, 0x80), List.copyOf(all.keySet()));
    assertEquals("Kestrel Quay", all.get(6));
    assertEquals("word order ABCD", all.get(0x80));
  }

  @ParameterizedTest
  @CsvSource({"1, 2, 1", "2, 4, 3", "2, 3, 6", "1, 4, 3", "3, 128, 1", "3, 255, 7"})
  void aStreamBeginsAtItsObjectOrAnewWhenThereIsNone(int code, int from, int count)
      throws GoneException {
    byte[] answer = ask(TestServer.IDENTITY, code, from);
    assertEquals(count, objects(answer).size());
  }

  @ParameterizedTest
  @CsvSource({"0, Strapline", "2, 1.2.3", "6, Kestrel Quay", "128, word order ABCD"})
  void singleObjectsAreReadByTheirNumber(int object, String text) throws GoneException {
    byte[] answer = ask(TestServer.IDENTITY, 4, object);
    assertEquals("2B 0E 04 83 00 00 01", Bytes.text(Arrays.copyOf(answer, 7)));
    assertEquals(Map.of(object, text), objects(answer));
  }

  @Test
  void whatDoesNotFitOneAnswerFollowsInTheNext() throws GoneException {
    Identity wordy = new Identity("v".repeat(180), "p".repeat(500), "ABCD");
    List<Integer> read = new ArrayList<>();
    int next = 0;
    int more = 0xFF;
    for (int i = 0; i < 10 && more == 0xFF; i++) {
      byte[] answer = ask(wordy, 3, next);
      assertTrue(answer.length <= 253, () -> answer.length + " bytes");
      assertEquals(CONFORMITY, answer[3] & 0xFF);
      read.addAll(objects(answer).keySet());
      more = answer[4] & 0xFF;
      next = answer[5] & 0xFF;
    }
    assertEquals(List.of(0, 1, 2, 4, 5, 6, 0x80), read);
  }
}
