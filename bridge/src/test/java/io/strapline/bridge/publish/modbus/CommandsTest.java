package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.testing.LogLines;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.Sample;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Two silos in blocks 1 and 2, each with a high alarm (bit 1) and the bad-signal alarm (bit 4). The
 * alarms of LT-101 may be acknowledged and reset, those of LT-102 only acknowledged.
 */
class CommandsTest {

  private static final String BY = " Operator[name=192.0.2.10, from=Modbus, comment=]";

  private final RecordedOperations operations = new RecordedOperations();
  private final int[] published = {0};
  private final Answers answers = answers();

  private Answers answers() {
    MeasuringPoint one = MeasuringPoint.of(TestPlants.silo("LT-101"), TestPlants.START);
    one.accept(Sample.level(TestPlants.START, 9.5), TestPlants.START);
    MeasuringPoint two = MeasuringPoint.of(TestPlants.silo("LT-102"), TestPlants.START);
    PlantSettings plant =
        TestPlants.plant(
            TestPlants.modbus()
                .with(TestServer.access(List.of(), Set.of("LT-101", "LT-102"), Set.of("LT-101"))),
            TestPlants.config(TestPlants.silo("LT-101"), 1),
            TestPlants.config(TestPlants.silo("LT-102"), 2));
    Commands commands =
        Commands.of(plant, TestPlants.store(one, two), operations, () -> published[0]++);
    return new Answers(() -> TestImages.counting(300), commands, TestServer.IDENTITY);
  }

  private String ask(String pdu) throws GoneException {
    return TestServer.pdu(answers, TestPeer.WRITER, pdu);
  }

  @Test
  void aRegisterAcknowledgesEveryAlarmOfItsMask() throws GoneException {
    // 168 is A8h, 268 is 010Ch; high is bit 1, bad signal bit 4.
    assertEquals("06 00 A8 00 12", ask("06 00 A8 00 12"));
    assertEquals("06 01 0C 00 02", ask("06 01 0C 00 02"));
    assertEquals(
        List.of(
            "acknowledge LT-101 HIGH" + BY,
            "acknowledge LT-101 BAD_SIGNAL" + BY,
            "acknowledge LT-102 HIGH" + BY),
        operations.asked());
    assertEquals(2, published[0], "the image is renewed before the answer");
  }

  @Test
  void bothRegistersOfAPointAreOneCommand() throws GoneException {
    assertEquals("10 00 A8 00 02", ask("10 00 A8 00 02 04 00 02 00 10"));
    assertEquals(
        List.of("acknowledge LT-101 HIGH" + BY, "reset LT-101 BAD_SIGNAL" + BY),
        operations.asked());
  }

  @ParameterizedTest
  @CsvSource({
    "05 00 79 FF 00, acknowledge LT-101 HIGH",
    "05 00 7C FF 00, acknowledge LT-101 BAD_SIGNAL",
    "05 00 7E FF 00, reset LT-101 HIGH",
    "0F 00 78 00 05 01 02, acknowledge LT-101 HIGH",
    "0F 00 78 00 0A 02 40 00, reset LT-101 HIGH",
    "16 00 A8 FF FF 00 02, ''",
    "16 00 A8 00 00 00 02, acknowledge LT-101 HIGH",
    "17 00 00 00 01 00 A9 00 01 02 00 02, reset LT-101 HIGH",
    "05 00 79 00 00, ''",
    "06 00 A8 00 00, ''",
    "0F 00 78 00 0A 02 00 00, ''"
  })
  void coilsMasksAndZerosOrderWhatTheyName(String pdu, String expected) throws GoneException {
    String answer = ask(pdu);
    assertEquals(pdu.substring(0, 2), answer.substring(0, 2));
    List<String> orders = expected.isEmpty() ? List.of() : List.of(expected + BY);
    assertEquals(orders, operations.asked());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "06 00 00 00 01", // plant block
        "06 00 A7 00 02", // beside the command registers
        "06 00 AA 00 02",
        "06 01 0D 00 02", // LT-102 may not be reset
        "10 01 0C 00 02 04 00 02 00 00", // nor in one command with what it may
        "10 00 A7 00 02 04 00 00 00 02",
        "10 00 A9 00 02 04 00 02 00 00",
        "05 00 77 FF 00",
        "05 00 82 FF 00",
        "0F 00 77 00 05 01 04",
        "0F 00 E1 00 0A 02 00 00", // into the coils that reset LT-102
        "06 01 F4 00 02", // no such block
        "06 FF FF 00 02",
        "10 FF FF 00 02 04 00 02 00 02",
        "17 00 00 00 01 00 A7 00 01 02 00 02"
      })
  void whatIsNotListedIsNoAddressAndNothingIsExecuted(String pdu) throws GoneException {
    assertTrue(ask(pdu).endsWith(" 02"), pdu);
    assertEquals(List.of(), operations.asked());
    assertEquals(0, published[0]);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "06 00 A8 00 01", // high-high is not configured
        "06 00 A8 00 03",
        "06 00 A8 00 20", // no alarm at all
        "06 00 A8 80 02",
        "10 00 A8 00 02 04 00 02 00 01", // the second register alone is wrong
        "05 00 78 FF 00",
        "0F 00 78 00 0A 02 42 01",
        "16 00 A8 00 00 FF FF"
      })
  void anAlarmThatThePointHasNotIsRefusedWith04AndNothingIsExecuted(String pdu)
      throws GoneException {
    // Section 7: 03 is not for a value that the application does not expect.
    assertTrue(ask(pdu).endsWith(" 04"), pdu);
    assertEquals(List.of(), operations.asked());
  }

  @Test
  void everyExecutedCommandHasItsLineInTheLog() throws GoneException {
    try (LogLines log = new LogLines(WriteLog.class)) {
      ask("06 00 A8 00 02");
      ask("06 00 A8 00 00");
      assertEquals(
          List.of(
              "INFO Modbus write by 192.0.2.10, function 06, registers 168 to 168, value 0002:"
                  + " LT-101 acknowledge HIGH UNACK -> UNACK NOTHING_TO_DO",
              "INFO Modbus write by 192.0.2.10, function 06, registers 168 to 168, value 0000:"
                  + " nothing ordered"),
          log.lines());
    }
  }

  @Test
  void refusedCommandsAreLoggedButCannotFloodTheLog() throws GoneException {
    try (LogLines log = new LogLines(WriteLog.class)) {
      for (int i = 0; i < 1000; i++) {
        ask("06 00 00 00 01");
      }
      assertEquals(
          "WARN Modbus write by 192.0.2.10, function 06, registers 0 to 0, value 0001: refused,"
              + " ILLEGAL_DATA_ADDRESS; nothing was executed",
          log.lines().get(0));
      assertTrue(log.lines().size() < 100, () -> log.lines().size() + " lines");
    }
  }

  @Test
  void withoutWritesInTheConfigurationNothingIsWritable() throws GoneException {
    PlantSettings plant =
        TestPlants.plant(TestPlants.modbus(), TestPlants.config(TestPlants.silo("LT-101"), 1));
    MeasuringPoint point = MeasuringPoint.of(TestPlants.silo("LT-101"), TestPlants.START);
    Commands none = Commands.of(plant, TestPlants.store(point), operations, () -> {});
    Answers answers = new Answers(() -> TestImages.counting(300), none, TestServer.IDENTITY);
    assertEquals("86 02", TestServer.pdu(answers, TestPeer.WRITER, "06 00 A8 00 02"));
    assertEquals(List.of(), operations.asked());
  }
}
