package io.strapline.bridge.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is doubtful does not stop the bridge, and is told. */
class WarningsTest {

  @TempDir private Path folder;

  private List<String> warnings(String replaced, String by) throws Exception {
    String text = Samples.text(Samples.EVERY_KEY);
    assertTrue(text.contains(replaced), replaced);
    PlantFile read = PlantReader.read(Samples.write(folder, text.replace(replaced, by)));
    return read.warnings().stream().map(ConfigProblem::toString).toList();
  }

  private void assertOne(String expected, List<String> warnings) {
    assertEquals(1, warnings.size(), () -> String.join("\n", warnings));
    assertTrue(warnings.get(0).contains(expected), () -> warnings.get(0));
  }

  /** Reference height 13 m, beam 5 deg: 2.1 m of dead zone hide what is above 10.908 m. */
  @Test
  void anAlarmThatTheDeadZoneHides() throws Exception {
    assertOne(
        "points.LT-1.alarms.high-high.at: 11 m: cannot come: the dead zone hides every level above"
            + " 10.908 m",
        warnings("dead-zone: 0.5 m", "dead-zone: 2.1 m"));
  }

  /** 12 m along the beam are 11.954 m down: every level below 1.046 m is beyond the far limit. */
  @Test
  void anAlarmBeyondTheFarLimit() throws Exception {
    assertOne(
        "points.LT-1.alarms.low-low.at: 1 m: cannot come: the far limit hides every level below"
            + " 1.046 m",
        warnings("far-limit: 14 m", "far-limit: 12 m"));
  }

  @Test
  void aRangeShorterThanTheVessel() throws Exception {
    assertOne(
        "points.LT-2.range: is shorter than the vessel: it cannot show levels above 6.500 m",
        warnings("at-20mA: 7 m", "at-20mA: 6.5 m"));
    assertOne(
        "points.LT-2.range: is shorter than the vessel: it cannot show levels below 0.500 m",
        warnings("at-4mA: 0 m", "at-4mA: 0.5 m"));
  }

  @Test
  void aSourceSlowerThanItsAgeLimit() throws Exception {
    assertOne(
        "points.LT-1.silence: the source gives a sample every 12.0 s, and its value counts as old"
            + " after 10.0 s",
        warnings("interval: 500 ms", "interval: 12 s"));
  }

  @Test
  void rawCountsThatNothingUses() throws Exception {
    assertOne(
        "points.LT-1.raw-counts: is not used",
        warnings(
            "    silence:",
            "    raw-counts: { encoding: number, at-4mA: 1, at-20mA: 5 }\n    silence:"));
  }

  @Test
  void modbusBeyondThisMachine() throws Exception {
    String text = Samples.text(Samples.EVERY_KEY);
    String modbus = text.substring(text.indexOf("\nmodbus:"), text.indexOf("\npoints:"));
    assertOne(
        "modbus.listen: 192.0.2.1: Modbus TCP knows no users",
        warnings(
            modbus,
            modbus.replace("127.0.0.1\n", "192.0.2.1\n").replaceAll("  clients: .*\n", "")));
  }

  @Test
  void modbusBeyondThisMachineForListedClientsIsNoWarning() throws Exception {
    assertEquals(
        List.of(), warnings("listen: 127.0.0.1\n  port: 5020", "listen: 192.0.2.1\n  port: 5020"));
  }
}
