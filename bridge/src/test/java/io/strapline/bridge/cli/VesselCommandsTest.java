package io.strapline.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.strapline.bridge.testing.CheckVessels;
import io.strapline.bridge.testing.CheckVessels.Known;
import io.strapline.level.table.CapacityTable;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The commands give the volumes of the check files, one row of each vessel. */
class VesselCommandsTest {

  private static final double LEAST_STEP_METRES = 1e-3;

  /** A table prints heights to the micrometre and volumes to a tenth of a millilitre. */
  private static final double PRINTED = 1e-7;

  @TempDir private Path folder;

  static List<Known> rows() {
    Map<String, Known> byVessel = new LinkedHashMap<>();
    CheckVessels.all().stream()
        .filter(row -> row.heightMetres() >= LEAST_STEP_METRES)
        .forEach(row -> byVessel.putIfAbsent(row.id().replaceFirst("-[0-9]+$", ""), row));
    return List.copyOf(byVessel.values());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void evalAndTableGiveTheVolumeOfTheReference(Known known) throws Exception {
    String file = Files.writeString(folder.resolve("plant.yaml"), known.plant()).toString();
    String height = known.heightMetres() + "m";

    CommandLineRun eval = CommandLineRun.of("eval", file, "LT-1", "--level", height, "--json");
    assertEquals(ExitCodes.OK, eval.code(), eval.err());
    JsonNode json = new ObjectMapper().readTree(eval.out());
    // The level goes through a distance from 50 m and back: some 1e-14 m.
    double slack = known.tolerance() + 1e-11;
    assertEquals(known.cubicMetres(), json.path("volume_m3").asDouble(), slack);

    CommandLineRun table = CommandLineRun.of("table", file, "LT-1", "--step", height);
    assertEquals(ExitCodes.OK, table.code(), table.err());
    double printed = Math.rint(known.heightMetres() * 1e6) / 1e6;
    double read = CapacityTable.read(table.out(), "out").volumeCubicMetres(printed);
    assertEquals(known.cubicMetres(), read, known.tolerance() + PRINTED);
  }
}
