package io.strapline.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The mass of a material that packs under its own weight, in a cylinder of pi square metres. */
class EvalDensityTest {

  @TempDir private Path folder;

  private CommandLineRun eval(String material, String... more) throws IOException {
    String text =
        """
        plant: Small
        points:
          LT-1:
            mounting: { reference-height: 10 m }
            vessel: { upright-cylinder: { diameter: 2 m, height: 8 m } }
            material: { %s }
            accuracy: { transmitter: 5 mm }
            source: { simulated: { signal: distance, process:
              { draw-to: 1 m, fill-to: 4 m, fill-rate: 1 m3/min, draw-rate: 1 m3/min } } }
        """
            .formatted(material);
    String file = Files.writeString(folder.resolve("plant.yaml"), text).toString();
    String[] all = new String[5 + more.length];
    all[0] = "eval";
    all[1] = file;
    all[2] = "LT-1";
    all[3] = "--level";
    all[4] = "6m";
    System.arraycopy(more, 0, all, 5, more.length);
    return CommandLineRun.of(all);
  }

  private double mass(String material) throws IOException {
    CommandLineRun run = eval(material, "--json");
    assertEquals(ExitCodes.OK, run.code(), run.err());
    return new ObjectMapper().readTree(run.out()).path("mass_kg").asDouble();
  }

  /** By hand: the integral of 1200 - 300 exp(-z / 2) over 6 m, 1200 x 6 - 600 (1 - exp(-3)). */
  @Test
  void aPackingIsIntegratedOverTheDepth() throws IOException {
    double expected = Math.PI * (1200 * 6 - 600 * (1 - Math.exp(-3)));
    assertEquals(
        expected,
        mass("packing: { surface: 900 kg/m3, deep: 1200 kg/m3, depth-constant: 2 m }"),
        1e-8 * expected);
  }

  /** By hand: 4 m at 1000 kg/m3 in the mean, 2 m at 1100 kg/m3. */
  @Test
  void densitiesByDepthAreIntegratedOverTheDepth() throws IOException {
    double expected = Math.PI * (4 * 1000 + 2 * 1100);
    assertEquals(
        expected,
        mass(
            "density-by-depth: [ { depth: 0 m, density: 900 kg/m3 },"
                + " { depth: 4 m, density: 1100 kg/m3 } ]"),
        1e-8 * expected);
  }

  @Test
  void theStepTellsTheDensitiesAndNoUncertaintyOfTheMassIsGiven() throws IOException {
    String packing = "packing: { surface: 900 kg/m3, deep: 1200 kg/m3, depth-constant: 2 m }";
    String out = eval(packing).out();
    assertTrue(out.contains("900.0 kg/m3 at the surface, 1185.1 kg/m3 at the bottom"), out);
    assertTrue(out.contains("mean 1105.0 kg/m3"), out);
    String json = eval(packing, "--json").out();
    assertTrue(json.contains("\"mass_u_kg\":null"), json);
  }
}
