package io.strapline.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.strapline.bridge.app.PlantRun;
import io.strapline.bridge.app.StandardParts;
import io.strapline.bridge.config.PlantReader;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.model.RealClock;
import io.strapline.bridge.testing.Clients;
import io.strapline.bridge.testing.Clients.ModbusLevel;
import io.strapline.bridge.testing.Eventually;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** One current, converted on the command line and served by the running bridge. */
@Timeout(120)
class EvalAgreementIT {

  private static final Map<String, String> NODES =
      Map.of(
          "distance_m", "Distance",
          "ullage_m", "Ullage",
          "level_m", "Level",
          "percent", "Percent",
          "volume_m3", "Volume",
          "free_volume_m3", "FreeVolume",
          "mass_kg", "Mass",
          "current_mA", "LoopCurrent");

  @TempDir private Path folder;

  @Test
  void evalOpcUaAndModbusAgreeToTheLastDigitThatEachCanCarry() throws Exception {
    Path file = plant();
    CommandLineRun eval =
        CommandLineRun.of("eval", file.toString(), "LT-1", "--current", "12.34567mA", "--json");
    JsonNode figures = new ObjectMapper().readTree(eval.out());
    PlantSettings plant = PlantReader.read(file).plant();
    try (PlantRun run = PlantRun.of(plant, RealClock.startNow(), new StandardParts())) {
      run.start();
      try (Clients clients = Clients.connect(run.endpoints().get(0), run.endpoints().get(1))) {
        Eventually.holds(
            "the sample is served", () -> clients.opcUa("LT-1.Level").statusCode().isGood());
        NODES.forEach(
            (key, node) ->
                assertEquals(
                    figures.get(key).doubleValue(),
                    Objects.requireNonNull(clients.opcUa("LT-1." + node).value().value()),
                    key));
        double level = figures.get("level_m").doubleValue();
        Eventually.holds("the registers follow", () -> clients.modbus(1).asDouble() == level);
        ModbusLevel registers = clients.modbus(1);
        assertEquals((float) level, registers.asFloat());
        assertEquals(Math.round(level * 1000), registers.asMillimetres());
      }
    }
  }

  private Path plant() throws Exception {
    Files.writeString(folder.resolve("one.csv"), "time,current\n2026-01-05T08:00:00Z,12.34567\n");
    return Files.writeString(
        folder.resolve("plant.yaml"),
        """
        plant: One sample
        opc-ua: { port: 0, anonymous-read: true }
        modbus: { port: 0 }
        points:
          LT-1:
            modbus-block: 1
            mounting: { reference-height: 22 m, beam-angle: 4 deg }
            vessel:
              upright-cylinder:
                diameter: 6 m
                height: 18 m
                bottom: { cone: { height: 3.2 m, outlet-diameter: 0.4 m } }
            material: { density: 1.35 t/m3 }
            range: { measures: distance, at-4mA: 22 m, at-20mA: 1 m }
            silence: { last-usable-after: 1 h, bad-after: 2 h }
            source:
              replay: { signal: current, file: one.csv, time: { column: time },
                value: { column: current, unit: mA } }
        """);
  }
}
