package io.strapline.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The uncertainties of {@code eval} against the law of propagation worked out by hand (GUM 5.1.2,
 * rectangular sources 4.3.7): half-width / root 3, squared, times the squared sensitivity, summed.
 */
class EvalUncertaintyTest {

  private static final double AREA = Math.PI;

  @TempDir private Path folder;

  private String[] eval(String point, String... more) throws IOException {
    String text =
        """
        plant: Small
        points:
          LT-1:
            mounting: { reference-height: 10 m%s
            source: { simulated: { signal: distance, process:
              { draw-to: 1 m, fill-to: 4 m, fill-rate: 1 %s/min, draw-rate: 1 %s/min } } }
        """
            .formatted(
                point,
                point.contains("vessel:") ? "m3" : "m",
                point.contains("vessel:") ? "m3" : "m");
    String file = Files.writeString(folder.resolve("plant.yaml"), text).toString();
    String[] all = new String[3 + more.length];
    all[0] = "eval";
    all[1] = file;
    all[2] = "LT-1";
    System.arraycopy(more, 0, all, 3, more.length);
    return all;
  }

  private JsonNode json(String point, String level) throws IOException {
    CommandLineRun run = CommandLineRun.of(eval(point, "--level", level, "--json"));
    assertEquals(ExitCodes.OK, run.code(), run.err());
    return new ObjectMapper().readTree(run.out());
  }

  private static final String SILO =
      """
       }
          vessel: { upright-cylinder: { diameter: 2 m, height: 8 m } }
          material: { density: 800 kg/m3 }
      """;

  private static double root(double... squares) {
    double sum = 0;
    for (double square : squares) {
      sum += square * square / 3;
    }
    return Math.sqrt(sum);
  }

  @Test
  void levelVolumeAndMassFollowFromTheErrors() throws IOException {
    JsonNode json =
        json(
            SILO
                + "    accuracy: { transmitter: 6 mm, reference-height: 2 mm, surface: 1 cm,"
                + " vessel: 0.2 %, density: 1.5 %, coverage-factor: 3 }",
            "4m");
    double level = root(0.006, 0.002, 0.01);
    double volume = 4 * AREA;
    double ofVolume = Math.hypot(level * AREA, root(0.002 * volume));
    double ofMass = Math.hypot(800 * ofVolume, root(0.015 * 800 * volume));
    assertEquals(3 * level, json.path("level_u_m").asDouble(), 1e-12);
    assertEquals(3 * ofVolume, json.path("volume_u_m3").asDouble(), 1e-9);
    assertEquals(3 * ofMass, json.path("mass_u_kg").asDouble(), 1e-6);
    assertEquals(3, json.path("coverage_factor").asDouble());
  }

  /** 0.1 % of 8 m and half of 1/1600 of it; along the level, whatever the angle of the beam. */
  @Test
  void errorsOfALoopAreOfItsSpan() throws IOException {
    JsonNode json =
        json(
            ", beam-angle: 60 deg"
                + SILO
                + "    range: { measures: level, at-4mA: 0 m, at-20mA: 8 m }\n"
                + "    accuracy: { loop: 0.1 %, loop-counts: 1600 }",
            "4m");
    assertEquals(2 * root(0.008, 0.0025), json.path("level_u_m").asDouble(), 1e-12);
  }

  /** Along a beam 60 deg off plumb a metre of distance is half a metre of level. */
  @Test
  void errorsOfADistanceGoWithTheCosineOfTheBeam() throws IOException {
    JsonNode json =
        json(
            ", beam-angle: 60 deg"
                + SILO
                + "    range: { measures: distance, at-4mA: 20 m, at-20mA: 4 m }\n"
                + "    accuracy: { transmitter: 1 cm, loop: 0.1 % }",
            "4m");
    assertEquals(2 * root(0.005, 0.008), json.path("level_u_m").asDouble(), 1e-12);
  }

  @Test
  void aPositionHasAnUncertaintyOfItsLevelOnly() throws IOException {
    JsonNode json = json(" }\n    accuracy: { transmitter: 5 mm }", "4m");
    assertEquals(2 * root(0.005), json.path("level_u_m").asDouble(), 1e-12);
    assertTrue(json.path("volume_u_m3").isNull());
    assertTrue(json.path("mass_u_kg").isNull());
  }

  @Test
  void withoutErrorsThereIsNoUncertainty() throws IOException {
    JsonNode json = json(SILO, "4m");
    assertTrue(json.has("level_u_m") && json.path("level_u_m").isNull());
    assertTrue(json.path("coverage_factor").isNull());
  }

  @Test
  void theTextNamesTheSourcesByTheirShareAndTheDoubts() throws IOException {
    String point = SILO + "    accuracy: { transmitter: 3 cm, surface: 4 cm }";
    String middle = CommandLineRun.of(eval(point, "--level", "4m")).out();
    assertTrue(middle.contains("k = 2; surface 64 %, transmitter 36 %"), middle);
    assertTrue(middle.contains("mass +/-"), middle);
    assertFalse(middle.contains("doubtful"), middle);
    String full = CommandLineRun.of(eval(point, "--level", "7.99m")).out();
    assertTrue(full.contains("doubtful"), full);
  }

  @Test
  void aBadValueHasNoUncertainty() {
    CommandLineRun run =
        CommandLineRun.of("eval", CommandLineRun.DEMO, "LT-101", "--current", "3.5mA", "--json");
    assertTrue(run.out().contains("\"level_u_m\":null"), run.out());
  }
}
