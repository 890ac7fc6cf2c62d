package io.strapline.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command that an integrator runs first. */
class CheckCommandTest {

  @TempDir private Path folder;

  private Path plant(String rangeTop) throws IOException {
    return Files.writeString(
        folder.resolve("plant.yaml"),
        """
        plant: Small
        opc-ua: { port: 0 }
        modbus: { enabled: false }
        points:
          LT-1:
            mounting: { reference-height: 6 m }
            vessel: { sphere: { diameter: 5 m } }
            range: { measures: level, at-4mA: 0 m, at-20mA: %s }
            source: { simulated: { signal: current, process:
              { draw-to: 1 m, fill-to: 4 m, fill-rate: 1 m3/min, draw-rate: 1 m3/min } } }
        """
            .formatted(rangeTop));
  }

  @Test
  void theDemonstrationPlantIsSound() {
    CommandLineRun run = CommandLineRun.of("check", CommandLineRun.DEMO);
    assertEquals(ExitCodes.OK, run.code(), run.err());
    assertEquals("Kestrel Quay: 8 measuring points, no problem, no warning", run.lines().get(0));
    assertTrue(run.out().contains("opc.tcp://127.0.0.1:4840"), run.out());
    assertTrue(run.out().contains("127.0.0.1:5020"), run.out());
    assertEquals(8, run.lines().stream().filter(line -> line.contains("simulated")).count());
  }

  @Test
  void aWarningIsPrintedAndOnlyStrictFailsOnIt() throws IOException {
    String file = plant("4 m").toString();
    CommandLineRun run = CommandLineRun.of("check", file);
    assertEquals(ExitCodes.OK, run.code());
    assertTrue(run.lines().get(0).startsWith("warning: " + file + ":8:12 points.LT-1.range: "));
    assertTrue(run.out().contains("1 warning"), run.out());
    assertEquals(ExitCodes.CONFIGURATION, CommandLineRun.of("check", "--strict", file).code());
  }

  @Test
  void theDelayOfConditioningIsToldForValuesAndForAlarms() throws IOException {
    String conditioned =
        Files.readString(plant("5 m"))
            .replace("    source:", "    signal: { median: 5, average: 4, lag: 3 s }\n    source:")
            .replace("signal: current,", "signal: current, interval: 2 s,");
    Files.writeString(folder.resolve("plant.yaml"), conditioned);
    CommandLineRun run = CommandLineRun.of("check", folder.resolve("plant.yaml").toString());
    // By hand: median (5 - 1) / 2 samples of 2 s, average (4 - 1) / 2 samples of 2 s, lag 3 s.
    assertTrue(run.out().contains("value 10.0, alarm 4.0 s"), run.out() + run.err());
  }

  @Test
  void aServerThatIsOffOrTakesAFreePortIsToldSo() throws IOException {
    CommandLineRun run = CommandLineRun.of("check", plant("5 m").toString());
    assertTrue(
        run.out().contains("opc.tcp://127.0.0.1:(a free port), trusted client certificates only"),
        run.out());
    assertTrue(run.out().contains("Modbus TCP  off"), run.out());
  }

  @Test
  void problemsGoToTheErrorStreamWithTheirCount() throws IOException {
    String file = plant("5").toString();
    CommandLineRun run = CommandLineRun.of("check", file);
    assertEquals(ExitCodes.CONFIGURATION, run.code());
    assertEquals("", run.out());
    assertEquals(
        file
            + ":8:53 points.LT-1.range.at-20mA: 5: is a number without a unit;"
            + " write a length such as 6 m\n1 problem\n",
        run.err().replace("\r\n", "\n"));
  }

  @Test
  void aFileThatIsNotThereIsAConfigurationProblem() {
    CommandLineRun run = CommandLineRun.of("check", "nowhere.yaml");
    assertEquals(ExitCodes.CONFIGURATION, run.code());
    assertTrue(run.err().startsWith("nowhere.yaml: does not exist"), run.err());
  }

  @Test
  void aWrongCommandLineTellsWhereTheHelpIs() {
    for (String[] wrong : new String[][] {{"check"}, {"check", "a", "b"}, {"check", "--no"}}) {
      CommandLineRun run = CommandLineRun.of(wrong);
      assertEquals(ExitCodes.USAGE, run.code());
      assertTrue(run.err().contains("strapline check --help"), run.err());
    }
    CommandLineRun none = CommandLineRun.of();
    assertEquals(ExitCodes.USAGE, none.code());
    assertTrue(none.err().contains("check"), none.err());
  }

  @Test
  void everyCommandHasHelpWithAnExample() {
    for (String command : Main.commandLine().getSubcommands().keySet()) {
      CommandLineRun run = CommandLineRun.of("help", command);
      assertEquals(ExitCodes.OK, run.code());
      assertTrue(command.equals("help") || run.out().contains("Example"), run.out());
    }
  }
}
