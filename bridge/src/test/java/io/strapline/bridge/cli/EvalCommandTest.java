package io.strapline.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** One-off conversions, against numbers worked by hand from the geometry. */
class EvalCommandTest {

  /** Crown 1.0 D, knuckle 0.1 D, in D^3. */
  private static final double HEAD_VOLUME = 0.09896599511808334;

  private static JsonNode json(String... arguments) throws IOException {
    List<String> all = new ArrayList<>(List.of("eval", CommandLineRun.DEMO));
    all.addAll(List.of(arguments));
    all.add("--json");
    CommandLineRun run = CommandLineRun.of(all.toArray(String[]::new));
    assertEquals(ExitCodes.OK, run.code(), run.err());
    return new ObjectMapper().readTree(run.out());
  }

  private static CommandLineRun text(String... arguments) {
    List<String> all = new ArrayList<>(List.of("eval", CommandLineRun.DEMO));
    all.addAll(List.of(arguments));
    return CommandLineRun.of(all.toArray(String[]::new));
  }

  /**
   * 12 mA is the middle of 21.96 to 0.7 m: 11.33 m along a beam 4 deg off plumb, 21.9 m up. Cone pi
   * h / 12 (D2 + D d + d2), then a cylinder of 6 m; 1350 kg/m3.
   */
  @Test
  void aCurrentBecomesLevelVolumeAndMass() throws IOException {
    double ullage = 11.33 * Math.cos(Math.toRadians(4));
    double level = 21.9 - ullage;
    double cone = Math.PI * 3.2 / 12 * (36 + 6 * 0.4 + 0.16);
    double volume = cone + Math.PI * 9 * (level - 3.2);
    double capacity = cone + Math.PI * 9 * 18;
    JsonNode json = json("LT-101", "--current", "12.0mA");
    assertEquals(11.33, json.path("distance_m").asDouble(), 1e-9);
    assertEquals(ullage, json.path("ullage_m").asDouble(), 1e-9);
    assertEquals(level, json.path("level_m").asDouble(), 1e-9);
    assertEquals(50, json.path("percent").asDouble(), 1e-9);
    assertEquals(volume, json.path("volume_m3").asDouble(), 1e-9);
    assertEquals(capacity - volume, json.path("free_volume_m3").asDouble(), 1e-9);
    assertEquals(volume * 1350, json.path("mass_kg").asDouble(), 1e-6);
    assertEquals(12, json.path("current_mA").asDouble(), 1e-9);
    assertEquals("NORMAL", json.path("band").asText());
    assertEquals("GOOD", json.path("quality").asText());
    assertEquals("NONE", json.path("cause").asText());
    assertEquals("NORMAL", json.path("status").asText());
  }

  /**
   * Half full by symmetry: a lying cylinder of 2.6 m, 9 m and two flanges of 40 mm long, with two
   * heads of 0.09897 D^3 (head_constants.csv of the library's tests, HD-KLO: 40-digit integration),
   * filled to its axis.
   */
  @Test
  void aVolumeBecomesALevel() throws IOException {
    double heads = 2 * HEAD_VOLUME * Math.pow(2.6, 3);
    String half = Double.toString((Math.PI * 1.3 * 1.3 * 9.08 + heads) / 2);
    JsonNode json = json("LT-201", "--volume", half + "m3");
    assertEquals(1.3, json.path("level_m").asDouble(), 1e-9);
    assertEquals(12, json.path("current_mA").asDouble(), 1e-7);
    assertTrue(json.path("band").isNull());
  }

  @Test
  void aDistanceOnAPointWithoutAVesselIsAPosition() throws IOException {
    JsonNode json = json("ZT-401", "--distance", "7.3m");
    assertEquals(52.7, json.path("level_m").asDouble(), 1e-9);
    assertTrue(json.path("volume_m3").isNull());
    assertTrue(json.path("mass_kg").isNull());
  }

  /** NE 43 (open PLC engineering course, module 14, 3.1): 3.6 mA and below is a failure. */
  @Test
  void aFailureCurrentGivesNoNumberAtAll() throws IOException {
    JsonNode json = json("LT-101", "--current", "3.6mA");
    assertEquals("FAILURE_LOW", json.path("band").asText());
    assertEquals("BAD", json.path("quality").asText());
    assertEquals("LOOP_FAULT_LOW", json.path("cause").asText());
    assertEquals("FAILURE", json.path("status").asText());
    assertTrue(json.path("level_m").isNull());
    assertTrue(json.path("volume_m3").isNull());
    CommandLineRun run = text("LT-101", "--current", "3.6mA");
    assertTrue(run.out().contains("BAD"), run.out());
    assertFalse(run.out().contains("m3"), run.out());
  }

  @Test
  void aLevelAboveTheVesselIsUncertain() throws IOException {
    JsonNode json = json("LT-101", "--level", "21.3m");
    assertEquals("UNCERTAIN", json.path("quality").asText());
    assertEquals("OUTSIDE_VESSEL", json.path("cause").asText());
  }

  @Test
  void theDerivationShowsEveryStep() {
    CommandLineRun run = text("LT-101", "--current", "12mA");
    assertEquals(ExitCodes.OK, run.code());
    assertEquals("LT-101  Cement silo 1", run.lines().get(0));
    for (String step :
        List.of(
            "21.960 m + (12.000 mA - 4 mA) / 16 mA * (0.700 m - 21.960 m)",
            "11.330 m * cos(4 deg)",
            "21.900 m - 11.302 m",
            "volume * 1350 kg/m3")) {
      assertTrue(run.out().contains(step), run.out());
    }
  }

  @Test
  void valuesWithoutUnitOrSenseAreUsageErrors() {
    String[][] wrong = {
      {"LT-101", "--current", "12"},
      {"LT-101", "--level", "2 kg"},
      {"LT-101", "--level", "NaN m"},
      {"LT-201", "--volume", "52 m3"},
      {"LT-201", "--volume", "-1 m3"},
      {"ZT-401", "--volume", "1 m3"},
      {"LT-999", "--level", "1 m"},
      {"LT-101"},
      {"LT-101", "--level", "1 m", "--current", "5 mA"},
    };
    for (String[] arguments : wrong) {
      CommandLineRun run = text(arguments);
      assertEquals(ExitCodes.USAGE, run.code(), String.join(" ", arguments));
      assertEquals("", run.out());
      assertFalse(run.err().isBlank());
    }
  }
}
