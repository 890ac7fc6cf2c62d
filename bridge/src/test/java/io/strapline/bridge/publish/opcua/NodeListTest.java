package io.strapline.bridge.publish.opcua;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.OpcUaSettings;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class NodeListTest {

  private static final Path DOCUMENT = Path.of("..", "docs", "node-list.md");

  @Test
  void documentHoldsEveryVariableOfAPointThatComputesEverything() throws IOException {
    List<String> table =
        Files.readAllLines(DOCUMENT, StandardCharsets.UTF_8).stream()
            .filter(line -> line.startsWith("| `") && line.split("\\|", -1).length == 6)
            .toList();
    List<String> expected =
        NodeList.of(plant(TestPlant.point("", "", FullPoint.settings("TAG")))).rows().stream()
            .map(NodeListTest::line)
            .toList();
    assertEquals(expected, table);
  }

  @Test
  void documentHoldsEveryCondition() throws IOException {
    List<String> table =
        Files.readAllLines(DOCUMENT, StandardCharsets.UTF_8).stream()
            .filter(line -> line.startsWith("| `") && line.split("\\|", -1).length == 5)
            .toList();
    List<NodeList.Condition> conditions =
        NodeList.of(plant(TestPlant.point("", "", FullPoint.settings("TAG")))).conditions();
    assertEquals(conditions.size(), table.size());
    for (int i = 0; i < table.size(); i++) {
      NodeList.Condition condition = conditions.get(i);
      String line = table.get(i);
      assertTrue(line.startsWith("| `" + condition.identifier() + "` | " + condition.type()), line);
      assertTrue(line.endsWith(": " + condition.description() + " |"), line);
    }
  }

  private static String line(NodeList.Row row) {
    return "| `"
        + row.identifier()
        + "` | "
        + row.dataType()
        + " | "
        + row.unit()
        + " | "
        + row.description()
        + " |";
  }

  @Test
  void givesNodeIdsWithTheUriOfTheNamespace() {
    NodeList.Row row = NodeList.of(plant(point("LT-101"))).rows().get(1);
    assertEquals("nsu=urn:strapline:bridge:points;s=LT-101.Distance", row.nodeId());
  }

  @Test
  void nothingIsWritable() {
    NodeList list = NodeList.of(plant(TestPlant.point("", "", FullPoint.settings("LT-101"))));
    assertTrue(list.rows().stream().allMatch(row -> row.access().equals("read")));
  }

  @Test
  void refusesTagsThatShareANode() {
    var clash =
        assertThrows(
            IllegalArgumentException.class,
            () -> NodeList.of(plant(point("LT-101"), point("LT-101.Level"))));
    assertTrue(String.valueOf(clash.getMessage()).contains("LT-101.Level"), clash.getMessage());
    assertThrows(IllegalArgumentException.class, () -> NodeList.of(plant(point("Plant"))));
  }

  private static PointConfig point(String tag) {
    return TestPlant.point(
        "", "Silos", PointSettings.builder(tag).mounting(Mounting.plumb(5)).build());
  }

  private static PlantSettings plant(PointConfig... points) {
    OpcUaSettings opcUa = new OpcUaSettings(true, "127.0.0.1", 0, true, List.of());
    return TestPlant.settings(Path.of("data"), opcUa, List.of(points));
  }
}
